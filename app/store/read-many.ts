/** Records by their ids, as few requests as can be: those of a piece of a file mostly lie together. */
import type { RecordOf, StoreName, Transaction } from './schema.ts';

type Some = Transaction<'readonly'> | Transaction<'readwrite'>;
type Found = ReadonlyMap<string, RecordOf<StoreName>>;

/** What is not there is not in the answer. */
export async function readMany(transaction: Some, name: StoreName, ids: readonly string[]): Promise<Found> {
  const store = transaction.objectStore(name);
  // As the database orders them: by their UTF-16 units.
  const sorted = [...ids].sort();
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return new Map();
  const most = 2 * sorted.length + 20;
  const near = sorted.length > 4 ? await store.getAll(IDBKeyRange.bound(first, last), most) : undefined;
  const found =
    near && near.length < most ? near : (await Promise.all(sorted.map((id) => store.get(id)))).filter((one) => !!one);
  return new Map(found.map((record) => [record.id, record]));
}
