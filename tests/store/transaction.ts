/** A transaction on lists in memory, that knows as much as a merge asks of one. */
import type { Everything, StoreName, Transaction } from '../../app/store/schema.ts';

/** @param asked is told of each store that is asked, by id or by range */
export function transactionOn(all: Everything, asked: (store: StoreName) => void = () => undefined) {
  const objectStore = (name: StoreName) => {
    const sorted = [...all[name]].sort((a, b) => (a.id < b.id ? -1 : 1));
    asked(name);
    return {
      get: async (id: string) => sorted.find((one) => one.id === id),
      getAll: async (range: { lower: string; upper: string }, most: number) =>
        sorted.filter(({ id }) => id >= range.lower && id <= range.upper).slice(0, most),
    };
  };
  return { objectStore } as unknown as Transaction<'readonly'>;
}
globalThis.IDBKeyRange ??= { bound: (lower: string, upper: string) => ({ lower, upper }) } as never;
