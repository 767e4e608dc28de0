/** First load. The records part by part: a few cars whole for the first screen, then everything without a long stop. */
import type { Connection } from './connection.ts';
import { withRecords } from './lists.ts';
import { asEverything, readStore } from './read-all.ts';
import { type Everything, STORES, type StoreName, type Transaction } from './schema.ts';

/** Cars by their own ids, or by those of visits of theirs. */
export interface Wanted {
  readonly cars: readonly string[];
  readonly visits: readonly string[];
}

/** These cars with all that belongs to them, and every draft and preference. What is not there is left out. */
export async function readSome(transaction: Transaction<'readonly'>, wanted: Wanted): Promise<Everything> {
  const [cars, visits] = [transaction.objectStore('cars'), transaction.objectStore('visits')];
  const named = await Promise.all(wanted.visits.map((id) => visits.get(id)));
  const ids = [...new Set([...wanted.cars, ...named.flatMap((visit) => visit?.carId ?? [])])];
  const own = await Promise.all(ids.map((id) => visits.index('carId').getAll(id)));
  const visitIds = own.flat().map(({ id }) => id);
  const ofVisits = (store: 'readings' | 'moves') =>
    Promise.all(visitIds.map((id) => transaction.objectStore(store).index('visitId').getAll(id)));
  const [found, readings, moves, drafts, preferences] = await Promise.all([
    Promise.all(ids.map((id) => cars.get(id))),
    ofVisits('readings'),
    ofVisits('moves'),
    readStore(transaction, 'drafts'),
    readStore(transaction, 'preferences'),
  ]);
  const there = found.filter((car) => car !== undefined);
  return asEverything([there, own.flat(), readings.flat(), moves.flat(), drafts, preferences]);
}

/** Records read at once: some ten milliseconds' work on a slow phone, and few enough transactions. */
const SLICE: Readonly<Record<StoreName, number>> = {
  cars: 150,
  visits: 600,
  readings: 300,
  moves: 600,
  drafts: Number.POSITIVE_INFINITY,
  preferences: Number.POSITIVE_INFINITY,
};

/**
 * Everything, each slice in a transaction of its own: in between fingers are answered and what they do is written.
 * @param look looks with each slice whether it is still the same database: a part must not pass for the whole
 */
export async function readInSlices(connection: Connection, look: Look): Promise<Everything> {
  const lists: (readonly Kept[])[] = [];
  for (const store of STORES) {
    let list: readonly Kept[] = [];
    for await (const part of slicesOf(connection, store, look)) list = withRecords(list, part);
    lists.push(list);
  }
  return asEverything(lists);
}

export type Look = (transaction: Transaction<'readonly'>) => Promise<void>;
type Kept = Everything[StoreName][number];

/** The records of a store, a slice at a time, in the order of their ids. */
export async function* slicesOf(connection: Connection, name: StoreName, look: Look): AsyncGenerator<readonly Kept[]> {
  const size = SLICE[name];
  const slice = (after: string | undefined): Promise<readonly Kept[]> =>
    connection.withStore(STORES, 'readonly', async (transaction) => {
      const rest = after === undefined ? undefined : IDBKeyRange.lowerBound(after, true);
      const isWhole = !Number.isFinite(size);
      const read = isWhole ? readStore(transaction, name) : transaction.objectStore(name).getAll(rest, size);
      const [part] = await Promise.all([read, look(transaction)]);
      return part;
    });
  for (let after: string | undefined; ; ) {
    const part = await slice(after);
    yield part;
    after = part.at(-1)?.id;
    if (part.length < size) return;
  }
}
