/**
 * First load. The records as the screens see them: one signal, loaded once, changed only here and always
 * together with the database. Everything else on the screens is derived from it.
 */
import { signal } from '@preact/signals';
import type { DraftRecord } from '../../core/records/stored.ts';
import { byId, type Entry, type Everything, now, store, withRecords } from '../store/index.ts';

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
  records.value = laid(records.value, entries);
  changes += 1;
  // The store keeps what could not be written and shows it in its save state; there is nothing to add here.
  void store.putAll(entries).catch(() => undefined);
}

/** The lists with these records in them; a list of which none is stays the same one. */
function laid(all: Records, entries: readonly Entry[]): Records {
  const lists = [...new Set(entries.map(([name]) => name))].map((name) => {
    const own = entries.filter(([store]) => store === name).map(([, record]) => record);
    return [name, withRecords<{ readonly id: string }>(all[name], own)] as const;
  });
  return { ...all, ...Object.fromEntries(lists) };
}

/** Drafts are the one thing that is thrown away: what they held is in a record by then. */
export function dropDraft(id: string): void {
  if (!draft(id)) return;
  changes += 1;
  records.value = { ...records.value, drafts: records.value.drafts.filter((draft) => draft.id !== id) };
  void store.remove('drafts', id).catch(() => undefined);
}

export function draft(id: string): DraftRecord | undefined {
  return byId(records.value.drafts, id);
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
