/** What a transaction sees, without what the app keeps for itself. */
import { type Everything, isInternal, STORES, type StoreName, type Transaction, UNDO } from './schema.ts';

type Some = Transaction<'readonly'> | Transaction<'readwrite'>;

export async function readAll(transaction: Some): Promise<Everything> {
  return asEverything(await Promise.all(STORES.map((store) => readStore(transaction, store))));
}

export async function readStore(transaction: Some, name: StoreName): Promise<readonly Everything[StoreName][number][]> {
  const store = transaction.objectStore(name);
  if (name !== 'preferences') return store.getAll();
  // What an undo needs may be as large as all the rest: it is stepped over, not read and thrown away.
  const [before, after] = await Promise.all([
    store.getAll(IDBKeyRange.upperBound(UNDO, true)),
    store.getAll(IDBKeyRange.lowerBound(UNDO, true)),
  ]);
  return [...before, ...after].filter(({ id }) => !isInternal(id));
}

/** Each list stands under the name of its store: see `Schema`. @param lists in the order of the stores */
export const asEverything = (lists: readonly (readonly unknown[])[]): Everything =>
  Object.fromEntries(STORES.map((store, n) => [store, lists[n]])) as unknown as Everything;
