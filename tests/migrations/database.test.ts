/** Every schema that has shipped opens in the present code with every record in it. */
import 'fake-indexeddb/auto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { SCHEMA_VERSION, STORES } from '../../app/store/schema.ts';
import { createStore } from '../../app/store/store.ts';
import { freshName, frozenRecords, inOrder } from '../store/records.ts';

interface Frozen {
  readonly schema: number;
  readonly stores: readonly FrozenStore[];
}
interface FrozenStore {
  readonly name: string;
  readonly keyPath: string;
  readonly indexes: readonly { readonly name: string; readonly keyPath: string }[];
  readonly records: readonly unknown[];
}

const folder = fileURLToPath(new URL('../../fixtures/databases/', import.meta.url));
const dumps: Frozen[] = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => JSON.parse(readFileSync(folder + file, 'utf8')));

function opened(request: IDBOpenDBRequest): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Builds the database as its dump describes it, without any code of the app. */
async function build(name: string, dump: Frozen): Promise<void> {
  const request = indexedDB.open(name, dump.schema);
  request.onupgradeneeded = () => {
    for (const { name, keyPath, indexes, records } of dump.stores) {
      const store = request.result.createObjectStore(name, { keyPath });
      for (const index of indexes) store.createIndex(index.name, index.keyPath);
      for (const record of records) store.add(record);
    }
  };
  (await opened(request)).close();
}

/** Stores, keys and indexes of a database as it is. */
async function structureOf(name: string): Promise<Omit<FrozenStore, 'records'>[]> {
  const database = await opened(indexedDB.open(name));
  const names = [...database.objectStoreNames];
  const transaction = database.transaction(names);
  const structure = names.map((name) => {
    const store = transaction.objectStore(name);
    const indexes = [...store.indexNames].map((index) => ({
      name: index,
      keyPath: String(store.index(index).keyPath),
    }));
    return { name, keyPath: String(store.keyPath), indexes };
  });
  database.close();
  return structure;
}

const byName = <T extends { readonly name: string }>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => (a.name < b.name ? -1 : 1));
const withoutRecords = ({ name, keyPath, indexes }: FrozenStore) => ({ name, keyPath, indexes: byName(indexes) });

describe('frozen databases', () => {
  const stores: ReturnType<typeof createStore>[] = [];
  afterAll(() => {
    for (const store of stores) store.close();
  });

  it('there is one of every schema, 1 to the present', () => {
    const versions = dumps.map(({ schema }) => schema).sort((a, b) => a - b);
    expect(versions).toEqual(Array.from({ length: SCHEMA_VERSION }, (_, index) => index + 1));
  });

  it.each(dumps)('schema $schema opens with every record', async (dump) => {
    const name = freshName();
    await build(name, dump);
    const store = createStore(name);
    stores.push(store);
    const records = await store.load();
    for (const { name, records: frozen } of dump.stores) {
      expect(frozen.length, `the dump has records in ${name}`).toBeGreaterThan(0);
    }
    expect(inOrder(records)).toEqual(inOrder(frozenRecords));
    const newest = dumps.find(({ schema }) => schema === SCHEMA_VERSION);
    expect(byName(await structureOf(name))).toEqual(byName((newest as Frozen).stores).map(withoutRecords));
  });

  it('a new database has the structure of the newest dump: a changed schema needs a new number', async () => {
    const name = freshName();
    const store = createStore(name);
    stores.push(store);
    await store.load();
    const newest = dumps.find(({ schema }) => schema === SCHEMA_VERSION);
    expect(byName(await structureOf(name))).toEqual(byName((newest as Frozen).stores).map(withoutRecords));
    expect((newest as Frozen).stores.map((one) => one.name).sort()).toEqual([...STORES].sort());
  });
});
