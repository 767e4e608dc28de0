/**
 * First load. The records as the screens see them: one signal, loaded at the start, changed only here and always
 * together with the database. Everything else on the screens is derived from it.
 */
import { signal } from '@preact/signals';
import type { DraftRecord } from '../../core/records/stored.ts';
import {
  byId,
  ClearedError,
  type Entry,
  type Everything,
  now,
  store,
  type Wanted,
  withRecords,
} from '../store/index.ts';

export type Records = Everything;

export const records = signal<Records>({ cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] });
/** `some`: the cars that the first screen shows are here whole, the others are on their way. */
export const loading = signal<'loading' | 'some' | 'ready' | 'failed'>('loading');
export const loadError = signal('');
/** Failed, as the browser has cleared the records while they were read: what was read by then is all that there is. */
export const cleared = signal(false);

/**
 * Reads the cars of the first rows, which are then shown, and after them everything; nothing is written before the first
 * of it is here.
 * @param first the cars that were shown first the last time, as far as that is known
 * @param whenEmpty what a new profile starts with
 */
export async function loadRecords(first: Wanted, whenEmpty: () => Promise<void>): Promise<void> {
  try {
    if (first.cars.length > 0) {
      // None of them there, or not to be read: what there is tells the whole.
      const some = await store.loadSome(first).catch(() => undefined);
      if (some && some.cars.length > 0) {
        records.value = some;
        loading.value = 'some';
      }
    }
    await readRest(PAUSES.first);
    // A new profile without it is still a working one; one that has lost its records is no new one.
    if (records.value.cars.length === 0 && !store.loss.value) await whenEmpty().catch(() => undefined);
    loading.value = 'ready';
  } catch (error) {
    loadError.value = error instanceof Error ? error.message : String(error);
    cleared.value = error instanceof ClearedError;
    loading.value = 'failed';
  }
}

/** Before what could not be read is tried again, ms; it doubles up to the second. */
const PAUSES = { first: 1_000, longest: 30_000 };

/**
 * The first rows are right and may have been written on, so they stay where the rest cannot be read; unless there is no rest
 * any more, as the browser has cleared it: that is said, and what was read by then can be saved to a file.
 */
async function readRest(pause: number): Promise<void> {
  try {
    await reloadRecords();
  } catch (error) {
    if (loading.value !== 'some' || error instanceof ClearedError) throw error;
    await new Promise((done) => setTimeout(done, pause));
    await readRest(Math.min(2 * pause, PAUSES.longest));
  }
}

let reading: Promise<void> | undefined;
let isOld = false;

/** Everything again: another tab wrote, or a backup was restored. Asked for while it reads, it reads once more after. */
export function reloadRecords(): Promise<void> {
  isOld = true;
  reading ??= readAgain();
  return reading;
}

async function readAgain(): Promise<void> {
  try {
    while (isOld) {
      isOld = false;
      await store.loadAll((all) => {
        records.value = all;
      });
    }
  } finally {
    reading = undefined;
  }
}

/** Cars that are asked for before all are here. */
export async function loadSoon(wanted: Wanted): Promise<void> {
  const some = await store.loadSome(wanted);
  if (loading.value === 'some') addAbsent(some);
}

/** A car as the database has it: another window may have written what was not heard of here. */
export async function lookAgain(carId: string): Promise<void> {
  addAbsent(await store.loadSome({ cars: [carId], visits: [] }));
}

/** What is here already stays as it is: it may have been changed since. */
function addAbsent(some: Records): void {
  const absent = <T extends { readonly id: string }>(here: readonly T[], found: readonly T[]): readonly T[] =>
    withRecords(
      here,
      found.filter(({ id }) => !byId(here, id)),
    );
  const { cars, visits, readings, moves } = records.value;
  records.value = {
    ...records.value,
    cars: absent(cars, some.cars),
    visits: absent(visits, some.visits),
    readings: absent(readings, some.readings),
    moves: absent(moves, some.moves),
  };
}

/** Shows the records at once and hands them to the database in one transaction. @returns when they are on the disk */
export function keep(...entries: readonly Entry[]): Promise<void> {
  records.value = laid(records.value, entries);
  // The store keeps what could not be written and shows it in its save state; there is nothing to add here.
  return store.putAll(entries).catch(() => undefined);
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
  records.value = { ...records.value, drafts: records.value.drafts.filter((draft) => draft.id !== id) };
  void store.remove('drafts', id).catch(() => undefined);
}

export function draft(id: string): DraftRecord | undefined {
  return byId(records.value.drafts, id);
}

/** Keeps what is being typed, as it is typed. */
export function keepDraft(id: string, texts: Readonly<Record<string, string>>, cursor: string | undefined): void {
  // What another phone had typed there stays with it.
  const { versions, past } = draft(id) ?? {};
  const record: DraftRecord = {
    ...{ id, texts: { ...texts }, changed: now() },
    ...(cursor && { cursor }),
    ...(versions && { versions }),
    ...(past && { past }),
  };
  keep(['drafts', record]);
}
