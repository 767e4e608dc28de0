/**
 * First load. The records as the screens see them: one signal, loaded once, changed only here and always
 * together with the database. Everything else on the screens is derived from it.
 */
import { computed, signal } from '@preact/signals';
import type { DraftRecord } from '../../core/records/stored.ts';
import { type Entry, type Everything, now, store } from '../store/index.ts';

export type Records = Everything;

export const records = signal<Records>({ cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] });
export const loading = signal<'loading' | 'ready' | 'failed'>('loading');
export const loadError = signal('');

/**
 * Reads everything from the database; nothing is written before this has ended.
 * @param whenEmpty what a new profile starts with
 */
export async function loadRecords(whenEmpty: () => Promise<void>): Promise<void> {
  try {
    records.value = await store.load();
    // A new profile without it is still a working one; one that has lost its records is no new one.
    if (records.value.cars.length === 0 && !store.loss.value) await whenEmpty().catch(() => undefined);
    loading.value = 'ready';
  } catch (error) {
    loadError.value = error instanceof Error ? error.message : String(error);
    loading.value = 'failed';
  }
}

/** Changes made here since the app opened: a load that they overtook is done again. */
let changes = 0;

/** Another tab wrote, or a backup was restored. */
export async function reloadRecords(): Promise<void> {
  const before = changes;
  const all = await store.load();
  if (changes === before) records.value = all;
  else await reloadRecords();
}

/** Shows the records at once and hands them to the database in one transaction. */
export function keep(...entries: readonly Entry[]): void {
  let next: Records = records.value;
  for (const [name, record] of entries) next = { ...next, [name]: upsert<{ readonly id: string }>(next[name], record) };
  records.value = next;
  changes += 1;
  // The store keeps what could not be written and shows it in its save state; there is nothing to add here.
  void store.putAll(entries).catch(() => undefined);
}

/** Drafts are the one thing that is thrown away: what they held is in a record by then. */
export function dropDraft(id: string): void {
  if (!records.value.drafts.some((draft) => draft.id === id)) return;
  changes += 1;
  records.value = { ...records.value, drafts: records.value.drafts.filter((draft) => draft.id !== id) };
  void store.remove('drafts', id).catch(() => undefined);
}

const draftsById = computed(() => new Map(records.value.drafts.map((draft) => [draft.id, draft])));

export function draft(id: string): DraftRecord | undefined {
  return draftsById.value.get(id);
}

/** Keeps what is being typed, as it is typed. */
export function keepDraft(id: string, texts: Readonly<Record<string, string>>, cursor: string | undefined): void {
  // What another phone had typed there stays with it.
  const versions = draft(id)?.versions;
  const record: DraftRecord = {
    ...{ id, texts: { ...texts }, changed: now() },
    ...(cursor && { cursor }),
    ...(versions && { versions }),
  };
  keep(['drafts', record]);
}

function upsert<T extends { readonly id: string }>(list: readonly T[], record: T): readonly T[] {
  const at = list.findIndex((one) => one.id === record.id);
  return at < 0 ? [...list, record] : list.map((one, index) => (index === at ? record : one));
}
