/** The database cleared or lost under a running app and between two starts: said at once, and what is in memory written back. */
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CANARY, type Entry, type Everything, isInternal, STORES } from '../../app/store/schema.ts';
import { createStore, type Store } from '../../app/store/store.ts';
import { car, draft, freshName, frozenRecords, inOrder } from './records.ts';

const opened: Store[] = [];
let outside: Map<string, string>;
beforeEach(() => {
  outside = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => outside.get(key) ?? null,
    setItem: (key: string, value: string) => outside.set(key, value),
    removeItem: (key: string) => outside.delete(key),
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  for (const store of opened.splice(0)) store.close();
});

const entriesOf = (all: Everything): Entry[] =>
  STORES.flatMap((name) => all[name].map((record) => [name, record] as Entry));

/** A store and the screens' memory of it. */
async function app(name: string, { remembers = true } = {}) {
  const store = createStore(name);
  opened.push(store);
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

const asked = <T>(request: IDBRequest<T>) =>
  new Promise<T>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
/** What another hand does to the database, past the app's code. */
async function beside(name: string, change: (transaction: IDBTransaction) => void): Promise<void> {
  const database = await asked(indexedDB.open(name));
  const transaction = database.transaction([...database.objectStoreNames], 'readwrite');
  change(transaction);
  await new Promise((done) => {
    transaction.oncomplete = done;
  });
  database.close();
}
const clear = (name: string) =>
  beside(name, (transaction) => {
    for (const store of transaction.objectStoreNames) transaction.objectStore(store).clear();
  });
const onDisk = async (name: string): Promise<Everything> => {
  const all: Record<string, Entry[1][]> = {};
  await beside(name, (transaction) => {
    for (const store of STORES) {
      transaction.objectStore(store).getAll().onsuccess = ({ target }) => {
        all[store] = (target as IDBRequest<Entry[1][]>).result.filter(({ id }) => !isInternal(id));
      };
    }
  });
  return inOrder(all as unknown as Everything);
};
const one = draft('a', '1');
const two = draft('b', '2');

describe('records cleared under a running app', () => {
  it('are written back with the next write, and it is said', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    const states: string[] = [];
    store.saveState.subscribe((state) => states.push(state));
    await keep(['drafts', two]);
    expect(states).toEqual(['saved', 'saving', 'not-saved', 'saved']);
    expect(await onDisk(name)).toEqual(inOrder(memory()));
    expect(store.loss.value).toEqual({ kind: 'put-back', records: 14 });
    store.lossSeen();
    expect(store.loss.value).toBeUndefined();
  });

  it('are written back at once when the database is deleted: no write has to come', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    const told = vi.fn();
    store.onOutsideChange(told);
    const states: string[] = [];
    store.saveState.subscribe((state) => states.push(state));
    await asked(indexedDB.deleteDatabase(name));
    await vi.waitFor(() => expect(store.loss.value).toEqual({ kind: 'put-back', records: 13 }));
    expect(states).toEqual(['saved', 'not-saved', 'saved']);
    expect(await onDisk(name)).toEqual(inOrder(memory()));
    expect(told).toHaveBeenCalledTimes(1);
  });

  it('are written back when the browser closes the connection over it', async () => {
    const name = freshName();
    const begin = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    const database = begin.mock.contexts[0] as unknown as IDBDatabase;
    await clear(name);
    database.close();
    // As fake-indexeddb's events are made, which are not Node's.
    const phases = { NONE: 0, CAPTURING_PHASE: 1, AT_TARGET: 2, BUBBLING_PHASE: 3, eventPhase: 0 };
    const event = { ...phases, type: 'close', initialized: true, dispatched: false, eventPath: [] };
    database.dispatchEvent(event as unknown as Event);
    await vi.waitFor(() => expect(store.loss.value).toEqual({ kind: 'put-back', records: 13 }));
    expect(await onDisk(name)).toEqual(inOrder(memory()));
  });

  it('are written back when a page that is left had to write without waiting', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    void keep(['drafts', two]);
    await expect(store.flush()).rejects.toThrow('has cleared the records');
    await vi.waitFor(() => expect(store.saveState.value).toBe('saved'));
    expect(await onDisk(name)).toEqual(inOrder(memory()));
  });

  it('do not leave the screen by a load, and are all in the file that is saved now', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    await expect(store.load()).rejects.toThrow('has cleared the records');
    const { stores } = JSON.parse(await store.exportAll(memory()));
    expect(inOrder(stores)).toEqual(inOrder(memory()));
  });

  it('of a database from before the count are known by what it held', async () => {
    const name = freshName();
    await (await app(name)).keep(...entriesOf(frozenRecords));
    await beside(name, (transaction) => transaction.objectStore('preferences').delete(CANARY));
    outside.clear();
    const { store, keep, memory } = await app(name);
    expect(store.loss.value).toBeUndefined();
    await clear(name);
    await keep(['drafts', two]);
    expect(await onDisk(name)).toEqual(inOrder(memory()));
    expect(inOrder(memory()).cars).toEqual([car]);
  });

  it('join what another tab has begun anew, and take nothing from it', async () => {
    const name = freshName();
    const old = await app(name);
    await old.keep(['cars', car], ['drafts', one]);
    await clear(name);
    const fresh = await app(name);
    await fresh.keep(['drafts', draft('a', '1 and on')]);
    await old.keep(['drafts', two]);
    const { cars, drafts } = await onDisk(name);
    expect([cars, drafts]).toEqual([[car], [draft('a', '1 and on'), two]]);
    await fresh.keep(['drafts', draft('c', '3')]);
    expect(fresh.store.saveState.value).toBe('saved');
    expect((await onDisk(name)).drafts).toHaveLength(3);
  });

  it('are not said to be saved, and no orphan is written, where nothing is in memory to write back', async () => {
    const name = freshName();
    const { store, keep } = await app(name, { remembers: false });
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    void keep(['drafts', two]);
    await vi.waitFor(() => expect(store.saveMessage.value).toContain('has cleared the records'));
    expect(store.saveState.value).toBe('not-saved');
    expect((await onDisk(name)).drafts).toEqual([]);
  });

  it('stay "not saved" while they cannot be written back, and are there in the end', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementationOnce(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    const saved = keep(['drafts', two]);
    await vi.waitFor(() => expect(store.saveMessage.value).toContain('no room left'));
    expect(store.saveState.value).toBe('not-saved');
    put.mockRestore();
    store.retry();
    await saved;
    expect(await onDisk(name)).toEqual(inOrder(memory()));
  });
});

/** What a phone or a browser does to a write, each as the platform shows it: what is called, and what that throws. */
const faults = {
  'no room': ['put', 'QuotaExceededError'],
  'a throw in the middle': ['put', 'DataError'],
  'an abort': ['put', 'AbortError'],
  'a dead connection': ['transaction', 'InvalidStateError'],
  'a database that does not open': ['open', 'UnknownError'],
} as const;
/** Faults that are still to come. */
let armed: (typeof faults)[keyof typeof faults][] = [];
function arm(): void {
  const { put } = IDBObjectStore.prototype;
  const { transaction } = IDBDatabase.prototype;
  const { open } = IDBFactory.prototype;
  const strike = (method: string): string | undefined => {
    const at = armed.findIndex(([of]) => of === method);
    return at < 0 ? undefined : armed.splice(at, 1)[0]?.[1];
  };
  const thrown = (error: string) => new DOMException('as the phone says', error);
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    const error = strike('put');
    if (error === 'AbortError') this.transaction.abort();
    if (error) throw thrown(error);
    return put.apply(this, args);
  });
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    // fake-indexeddb begins some of its own, without options.
    const error = args[2] && strike('transaction');
    if (error) throw thrown(error);
    return transaction.apply(this, args);
  });
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, ...args) {
    const error = strike('open');
    if (error) throw thrown(error);
    return open.apply(this, args);
  });
}
const away = {
  stays: async () => undefined,
  cleared: clear,
  deleted: (name: string) => asked(indexedDB.deleteDatabase(name)),
};

it('whatever happens to the writes, and in any order: what is said to be saved is on the disk, all of it', () => {
  arm();
  return fc.assert(
    fc.asyncProperty(
      fc.array(
        fc.record({
          away: fc.constantFrom(...(Object.keys(away) as (keyof typeof away)[])),
          faults: fc.array(fc.constantFrom(...(Object.keys(faults) as (keyof typeof faults)[])), { maxLength: 3 }),
          flush: fc.boolean(),
          entry: fc.constantFrom(...entriesOf(frozenRecords)),
        }),
        { minLength: 1, maxLength: 5 },
      ),
      async (steps) => {
        const name = freshName();
        const { store, keep, memory } = await app(name);
        for (const step of steps) {
          await away[step.away](name);
          armed = step.faults.map((fault) => faults[fault]);
          void keep(step.entry);
          if (step.flush) await store.flush().catch(() => undefined);
          for (let tries = 0; store.saveState.value !== 'saved'; tries += 1) {
            if (tries > 1000) throw new Error(`never saved: ${store.saveMessage.value}`);
            await new Promise((wait) => setTimeout(wait, 2));
            store.retry();
          }
          armed = [];
          expect(await onDisk(name)).toEqual(inOrder(memory()));
        }
        store.close();
      },
    ),
    { numRuns: 60 },
  );
});

describe('at the start', () => {
  it('a database that is gone is said, with when all was last in a file', async () => {
    const name = freshName();
    const first = await app(name);
    await first.keep(['cars', car], ['preferences', { id: 'backup', value: { at: '2026-06-01T08:00:00.000Z' } }]);
    first.store.close();
    await asked(indexedDB.deleteDatabase(name));
    const { store, keep } = await app(name);
    const loss = { kind: 'gone', backup: '2026-06-01T08:00:00.000Z' };
    expect(store.loss.value).toEqual(loss);
    // Until somebody has seen it.
    await keep(['drafts', one]);
    const next = await app(name);
    expect(next.store.loss.value).toEqual(loss);
    next.store.lossSeen();
    expect((await app(name)).store.loss.value).toBeUndefined();
  });

  it('an older state of it is said, with by how many writes', async () => {
    const name = freshName();
    const { keep } = await app(name);
    await keep(['drafts', one]);
    const database = await asked(indexedDB.open(name));
    const mark = await asked(database.transaction('preferences').objectStore('preferences').get(CANARY));
    database.close();
    for (const text of ['12', '12.', '12.5']) await keep(['drafts', draft('a', text)]);
    await beside(name, (transaction) => transaction.objectStore('preferences').put(mark));
    expect((await app(name)).store.loss.value).toEqual({ kind: 'behind', writes: 3 });
  });

  it('nothing is said of a new profile, of one that is whole, nor of a restore and its undo', async () => {
    const name = freshName();
    const first = await app(name);
    expect(first.store.loss.value).toBeUndefined();
    await first.keep(...entriesOf(frozenRecords));
    const other = freshName();
    const { store } = await app(other);
    await store.restore(await first.store.exportAll());
    await store.undoRestore();
    for (const one of [name, other, other]) expect((await app(one)).store.loss.value).toBeUndefined();
  });

  it.each(['throws', 'is not there'])('a place outside that %s costs this check and nothing else', async (how) => {
    const throws = () => {
      throw new DOMException('denied', 'SecurityError');
    };
    const refusing = { getItem: throws, setItem: throws, removeItem: throws };
    vi.stubGlobal('localStorage', how === 'throws' ? refusing : undefined);
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(['cars', car]);
    await clear(name);
    await keep(['drafts', one]);
    expect(store.loss.value).toEqual({ kind: 'put-back', records: 2 });
    expect(await onDisk(name)).toEqual(inOrder(memory()));
    store.lossSeen();
  });

  it.each(['{', '7', '{"database":7}', '{"kind":"other"}'])('nonsense outside (%s) is nothing', async (text) => {
    const name = freshName();
    for (const key of ['writes', 'loss', 'backup']) outside.set(`${name}-${key}`, text);
    const { store, keep } = await app(name);
    await keep(['cars', car]);
    expect(store.loss.value).toBeUndefined();
  });
});

it('which database it is goes into no file, and comes in from none', async () => {
  const { store, keep } = await app(freshName());
  await keep(['cars', car]);
  const text = await store.exportAll();
  expect(text).not.toContain(CANARY);
  expect((await store.load()).preferences).toEqual([]);
});
