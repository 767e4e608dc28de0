import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { STORES } from '../../app/store/schema.ts';
import { createStore, type Store } from '../../app/store/store.ts';
import { open } from './opened.ts';
import { car, draft, freshName, frozenRecords, inOrder } from './records.ts';

// Here each call of the browser's database is counted: the log is `torn-log.spec.ts`'s.
vi.mock('../../app/store/fresh-log.ts', () => ({ freshLog: async () => undefined }));

afterEach(() => {
  vi.restoreAllMocks();
});

/** Makes the next calls of a method fail as a phone would make them fail. */
function failing(target: object, method: string, error: () => DOMException, times: number) {
  const spy = vi.spyOn(target as Record<string, () => never>, method);
  for (let n = 0; n < times; n += 1) {
    spy.mockImplementationOnce(() => {
      throw error();
    });
  }
  return spy;
}
const deadConnection = () => new DOMException('The database connection is closing.', 'InvalidStateError');
const noRoom = () => new DOMException('no room', 'QuotaExceededError');

/** As fake-indexeddb's events are made, which are not Node's. */
const phases = { NONE: 0, CAPTURING_PHASE: 1, AT_TARGET: 2, BUBBLING_PHASE: 3, eventPhase: 0 };
const closeEvent = () =>
  ({ ...phases, type: 'close', initialized: true, dispatched: false, eventPath: [] }) as unknown as Event;

describe('when the connection dies', () => {
  it('opens again and loses nothing', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    const dying = failing(IDBDatabase.prototype, 'transaction', deadConnection, 1);
    const opening = vi.spyOn(IDBFactory.prototype, 'open');
    await store.putAll(frozenRecords.readings.map((record) => ['readings', record] as const));
    expect(dying).toHaveBeenCalledTimes(2);
    expect(opening).toHaveBeenCalledTimes(1);
    expect(store.saveState.value).toBe('saved');
    expect(inOrder(await open(name).load()).readings).toEqual(inOrder(frozenRecords).readings);
  });

  it('opens again after the browser closed it by itself', async () => {
    const name = freshName();
    const begin = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const store = open(name);
    await store.load();
    const database = begin.mock.contexts[0] as unknown as IDBDatabase;
    database.close();
    database.dispatchEvent(closeEvent());
    const opening = vi.spyOn(IDBFactory.prototype, 'open');
    await store.put('cars', car);
    expect(opening).toHaveBeenCalledTimes(1);
    expect((await open(name).load()).cars).toEqual([car]);
  });

  it('reads again, too', async () => {
    const store = open();
    await store.put('cars', car);
    failing(IDBDatabase.prototype, 'transaction', deadConnection, 1);
    expect((await store.load()).cars).toEqual([car]);
  });

  it('says "not saved", keeps the records and writes them later, newest last', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    failing(IDBDatabase.prototype, 'transaction', deadConnection, 2);
    const first = store.put('drafts', draft('a', '1'));
    await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'));
    expect(store.saveMessage.value).toContain('InvalidStateError');
    // What waits is laid over what is loaded: the screen keeps it.
    expect((await store.load()).drafts).toEqual([draft('a', '1')]);
    const take = vi.fn();
    await store.loadAll(take);
    expect(take.mock.calls).toMatchObject([[{ drafts: [draft('a', '1')] }]]);
    expect(store.saveMessage.value, 'a load that goes well has not saved anything').toContain('InvalidStateError');
    const second = store.put('drafts', draft('a', '12'));
    await Promise.all([first, second]);
    expect(store.saveState.value).toBe('saved');
    expect(store.saveMessage.value).toBe('');
    expect((await open(name).load()).drafts).toEqual([draft('a', '12')]);
  });

  it('tries again by itself', async () => {
    const store = open();
    await store.load();
    failing(IDBDatabase.prototype, 'transaction', deadConnection, 2);
    await store.put('cars', car);
    expect(store.saveState.value).toBe('saved');
    expect((await store.load()).cars).toEqual([car]);
  });

  it('names a full phone and does not hammer it', async () => {
    const store = open();
    await store.load();
    const put = failing(IDBObjectStore.prototype, 'put', noRoom, 1);
    const saved = store.put('cars', car);
    await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'));
    expect(store.saveMessage.value).toMatch(/no room left on this phone/);
    expect(put).toHaveBeenCalledTimes(1);
    store.retry();
    await saved;
    expect(store.saveState.value).toBe('saved');
  });

  it('does not write an old text over a newer one when a flush overtakes a failed write', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    const original = IDBObjectStore.prototype.put;
    const writes: Promise<void>[] = [];
    let failed = false;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, record) {
      const request = original.call(this, record);
      if (!failed) {
        failed = true;
        // The first write is under way: a newer text comes, the page hides, and then the first write fails.
        writes.push(store.put('drafts', draft('a', '12')), store.flush());
        this.transaction.abort();
      }
      return request;
    });
    writes.push(store.put('drafts', draft('a', '1')));
    await vi.waitFor(() => expect(writes).toHaveLength(3));
    await Promise.all(writes);
    await store.flush();
    expect(store.saveState.value).toBe('saved');
    expect((await open(name).load()).drafts).toEqual([draft('a', '12')]);
  });
});

describe('several tabs', () => {
  it('tells the others that the records changed', async () => {
    const name = freshName();
    const [here, there] = [open(name), open(name)];
    const changed = vi.fn();
    there.onOutsideChange(changed);
    await here.put('cars', car);
    await vi.waitFor(() => expect(changed).toHaveBeenCalled());
    expect((await there.load()).cars).toEqual([car]);
  });

  it('steps aside for a newer schema: writes what waits, then says so and writes no more', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    const last = store.put('drafts', draft('a', '1'));
    const newer = await new Promise<IDBDatabase>((resolve, reject) => {
      const request = indexedDB.open(name, 99);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    await last;
    void store.put('drafts', draft('b', '2'));
    await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'));
    expect(store.saveMessage.value).toMatch(/newer Cornerwright is open in another tab/);
    const kept = await new Promise((resolve) => {
      const request = newer.transaction('drafts').objectStore('drafts').getAllKeys();
      request.onsuccess = () => resolve(request.result);
    });
    expect(kept).toEqual(['a']);
    newer.close();
  });

  it.each([
    ['all at once', (store: Store) => store.load()],
    ['part by part', (store: Store) => store.loadAll(() => undefined)],
  ])('waits for one that holds an older schema, says so, and no more once it is read %s', async (_, load) => {
    const name = freshName();
    const older = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open(name, 1);
      request.onsuccess = () => resolve(request.result);
    });
    const { open: opens } = IDBFactory.prototype;
    // As if this app's schema were the next one.
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, of, version) {
      const request = opens.call(this, of, of === name ? 2 : version);
      if (of === name) {
        request.addEventListener('upgradeneeded', () => {
          for (const one of STORES) request.result.createObjectStore(one, { keyPath: 'id' });
        });
      }
      return request;
    });
    const store = open(name);
    const loading = load(store);
    await vi.waitFor(() => expect(store.saveMessage.value).toContain('still runs an older Cornerwright'), {
      interval: 2,
    });
    older.close();
    await loading;
    expect([store.saveState.value, store.saveMessage.value]).toEqual(['saved', '']);
  });

  it('opens the database that it always had, where it is given no other name', async () => {
    const opening = vi.spyOn(IDBFactory.prototype, 'open');
    // A name of its own would be an empty phone after an update.
    expect(await open('cornerwright').load()).toEqual(await createStore().load());
    expect(opening.mock.calls.map(([name]) => name).filter((name) => !name.endsWith('-log'))).toEqual([
      'cornerwright',
      'cornerwright',
    ]);
  });

  it('refuses a database of a newer version in plain words', async () => {
    const name = freshName();
    await new Promise<void>((resolve) => {
      const request = indexedDB.open(name, 99);
      request.onsuccess = () => {
        request.result.close();
        resolve();
      };
    });
    await expect(open(name).load()).rejects.toThrow('written by a newer Cornerwright');
  });
});
