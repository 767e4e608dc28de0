/** Everything that a transaction over all stores sees, without what the app keeps for itself. */
import { type Everything, isInternal, STORES, type Transaction } from './schema.ts';

export async function readAll(transaction: Transaction<'readonly'> | Transaction<'readwrite'>): Promise<Everything> {
  const lists = await Promise.all(STORES.map(async (store) => [store, await transaction.objectStore(store).getAll()]));
  // Each list stands under the name of its store: see `Schema`.
  const all = Object.fromEntries(lists) as Everything;
  return { ...all, preferences: all.preferences.filter(({ id }) => !isInternal(id)) };
}
