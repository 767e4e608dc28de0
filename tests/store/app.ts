/** A store with the memory of its screens, and another hand on its database, past the app's code. */
import 'fake-indexeddb/auto';
import { vi } from 'vitest';
import { type Entry, type Everything, isInternal, STORES } from '../../app/store/schema.ts';
import { open } from './opened.ts';
import { inOrder } from './records.ts';

/** A localStorage, which Node has not. Returns what is in it. */
export function standIn(): Map<string, string> {
  const outside = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => outside.get(key) ?? null,
    setItem: (key: string, value: string) => outside.set(key, value),
    removeItem: (key: string) => outside.delete(key),
  });
  return outside;
}

export const entriesOf = (all: Everything): Entry[] =>
  STORES.flatMap((name) => all[name].map((record) => [name, record] as Entry));

/** A store and the screens' memory of it. */
export async function app(name: string, { remembers = true } = {}) {
  const store = open(name);
  let memory = await store.load();
  if (remembers) store.remember(() => memory);
  const keep = (...entries: Entry[]) => {
    for (const [store, record] of entries) {
      const others = (memory[store] as readonly Entry[1][]).filter(({ id }) => id !== record.id);
      memory = { ...memory, [store]: [...others, record] };
    }
    return store.putAll(entries);
  };
  return { store, keep, memory: () => memory };
}

export const asked = <T>(request: IDBRequest<T>) =>
  new Promise<T>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
/**
 * What another hand does to the database, past the app's code.
 * @param held its connection, where it has one
 */
export async function beside(
  name: string,
  change: (transaction: IDBTransaction) => void,
  held?: IDBDatabase,
): Promise<void> {
  const database = held ?? (await asked(indexedDB.open(name)));
  const transaction = database.transaction([...database.objectStoreNames], 'readwrite');
  change(transaction);
  await new Promise((done) => {
    transaction.oncomplete = done;
  });
  if (!held) database.close();
}
export const clear = (name: string) =>
  beside(name, (transaction) => {
    for (const store of transaction.objectStoreNames) transaction.objectStore(store).clear();
  });
export const onDisk = async (name: string, held?: IDBDatabase): Promise<Everything> => {
  const all: Record<string, Entry[1][]> = {};
  await beside(
    name,
    (transaction) => {
      for (const store of STORES) {
        transaction.objectStore(store).getAll().onsuccess = ({ target }) => {
          all[store] = (target as IDBRequest<Entry[1][]>).result.filter(({ id }) => !isInternal(id));
        };
      }
    },
    held,
  );
  return inOrder(all as unknown as Everything);
};
