/** Everything that a transaction over all stores sees, without what serves only the undo of a restore. */
import { type Everything, STORES, type Transaction, UNDO } from './schema.ts';

export async function readAll(transaction: Transaction<'readonly'> | Transaction<'readwrite'>): Promise<Everything> {
  const lists = await Promise.all(STORES.map(async (store) => [store, await transaction.objectStore(store).getAll()]));
  // Each list stands under the name of its store: see `Schema`.
  const all = Object.fromEntries(lists) as Everything;
  return { ...all, preferences: all.preferences.filter(({ id }) => id !== UNDO) };
}
