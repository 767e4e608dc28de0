/** The database as it is, read and filled past the app's code. */
import type { Page } from 'playwright';
import type { Stores } from '../../../core/records/stored.ts';
import { STORE_NAMES } from '../../../core/records/stored.ts';
import { readStores } from '../../../core/records/stored-schema.ts';
import type { Found } from './ledger.ts';

/** A database as one of `fixtures/databases` tells it. */
export interface Dump {
  readonly schema: number;
  readonly stores: readonly {
    readonly name: string;
    readonly keyPath: string;
    readonly indexes: readonly { readonly name: string; readonly keyPath: string }[];
    readonly records: readonly { readonly id: string }[];
  }[];
}

/** The database as that version of the app left it, in a profile that has none. */
export async function build(page: Page, dump: Dump): Promise<void> {
  await page.evaluate(async (dump) => {
    await new Promise((done, failed) => {
      const request = indexedDB.open('cornerwright', dump.schema);
      request.onerror = failed;
      request.onupgradeneeded = () => {
        for (const { name, keyPath, indexes, records } of dump.stores) {
          const store = request.result.createObjectStore(name, { keyPath });
          for (const index of indexes) store.createIndex(index.name, index.keyPath);
          for (const record of records) store.add(record);
        }
      };
      request.onsuccess = () => {
        request.result.close();
        done(undefined);
      };
    });
  }, dump);
}

/** Records put beside what is there, in one transaction. The app has to have made the database. */
export async function add(page: Page, records: Partial<Stores>): Promise<void> {
  await page.evaluate(async (records) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open('cornerwright');
      request.onsuccess = () => done(request.result);
    });
    const transaction = database.transaction(Object.keys(records), 'readwrite', { durability: 'strict' });
    for (const [store, list] of Object.entries(records)) {
      for (const record of list) transaction.objectStore(store).put(record);
    }
    await new Promise((done) => {
      transaction.oncomplete = done;
    });
    database.close();
  }, records);
}

export async function readAll(page: Page): Promise<Found> {
  const all = await page.evaluate(async (names) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open('cornerwright');
      request.onsuccess = () => done(request.result);
    });
    const transaction = database.transaction([...database.objectStoreNames]);
    const lists = names.map(
      (name) =>
        new Promise<[string, string][]>((done) => {
          const request = transaction.objectStore(name).getAll();
          request.onsuccess = () => done(request.result.map((one) => [`${name} ${one.id}`, JSON.stringify(one)]));
        }),
    );
    const found = (await Promise.all(lists)).flat();
    database.close();
    return found;
  }, STORE_NAMES);
  return new Map(all);
}

/** Records that are no whole ones: against the schema, or without the visit or the reading that they belong to. */
export function halfOf(found: Found): string[] {
  const of = (store: string) =>
    [...found].filter(([key]) => key.startsWith(`${store} `)).map(([, text]) => JSON.parse(text));
  const stores = Object.fromEntries(STORE_NAMES.map((store) => [store, of(store).filter(({ id }) => !isOwn(id))]));
  const { aside } = readStores(stores);
  const orphans = ['visits', 'readings', 'moves'].flatMap((store) =>
    of(store).flatMap((record) => {
      const owners = [
        ['cars', record.carId],
        ['visits', record.visitId],
        ['readings', record.readingId],
      ].filter(([, id]) => id !== undefined);
      const without = owners.filter(([owner, id]) => !found.has(`${owner} ${id}`));
      return without.map(([owner, id]) => `${store} ${record.id} has not its ${owner} ${id}`);
    }),
  );
  return [...aside.map(({ store, id, error }) => `${store} ${id}: ${error.message}`), ...orphans];
}

/** What the app keeps for itself follows no schema of the records. */
const isOwn = (id: string): boolean => /^(undo-restore|canary)$/.test(id);
