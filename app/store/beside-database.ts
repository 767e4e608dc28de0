/** Beside the database, in another one: in parts, as one value of all would be as large as all. */
import { type DBSchema, type IDBPTransaction, openDB } from 'idb';
import type { Beside } from './kept-beside.ts';

interface Schema extends DBSchema {
  /** By name: how many parts. */
  kept: { key: string; value: number };
  parts: { key: [name: string, part: number]; value: ArrayBuffer };
}

/** Bytes. */
const PART = 1_000_000;

export async function besideInDatabase(name: string): Promise<Beside> {
  const database = await openDB<Schema>(name, 1, {
    upgrade(created) {
      created.createObjectStore('kept');
      created.createObjectStore('parts');
    },
    blocking: (_, __, event) => (event.target as IDBDatabase).close(),
  });
  const partsOf = (name: string) => IDBKeyRange.bound([name, 0], [name, Number.POSITIVE_INFINITY]);
  const forget = async (name: string): Promise<void> => {
    const transaction = database.transaction(['kept', 'parts'], 'readwrite', { durability: 'strict' });
    await settled(transaction, [
      transaction.objectStore('kept').delete(name),
      transaction.objectStore('parts').delete(partsOf(name)),
    ]);
  };
  return {
    async keep(name, content) {
      await forget(name);
      const count = Math.max(1, Math.ceil(content.size / PART));
      for (let n = 0; n < count; n += 1) {
        const part = await content.slice(n * PART, (n + 1) * PART).arrayBuffer();
        const transaction = database.transaction(['kept', 'parts'], 'readwrite', { durability: 'strict' });
        // The last of them makes it whole.
        await settled(transaction, [
          transaction.objectStore('parts').put(part, [name, n]),
          n === count - 1 ? transaction.objectStore('kept').put(count, name) : undefined,
        ]);
      }
    },
    async read(name) {
      const count = await database.get('kept', name);
      if (count === undefined) return undefined;
      const parts: Blob[] = [];
      for (let n = 0; n < count; n += 1) parts.push(new Blob([(await database.get('parts', [name, n])) ?? '']));
      return new Blob(parts);
    },
    names: () => database.getAllKeys('kept'),
    forget,
    close: () => database.close(),
  };
}

/** @throws the transaction's own error, which is the cause: a request only says that it was aborted */
async function settled(
  transaction: IDBPTransaction<Schema, ('kept' | 'parts')[], 'readwrite'>,
  requests: readonly (Promise<unknown> | undefined)[],
): Promise<void> {
  try {
    await Promise.all([...requests, transaction.done]);
  } catch (error) {
    throw transaction.error ?? error;
  }
}
