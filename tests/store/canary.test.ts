/** The database cleared or lost under a running app and between two starts: said at once, and what is in memory written back. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CANARY } from '../../app/store/schema.ts';
import { app, asked, beside, clear, entriesOf, onDisk, standIn } from './app.ts';
import { closeAll } from './opened.ts';
import { car, draft, freshName, frozenRecords, inOrder, storesOf } from './records.ts';

let outside: Map<string, string>;
beforeEach(() => {
  outside = standIn();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  closeAll();
});

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
    const opened = begin.mock.contexts as unknown as IDBDatabase[];
    const database = opened.find((one) => one.name === name)!;
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
    const stores = await storesOf(await store.exportAll(memory()));
    expect(inOrder(stores)).toEqual(inOrder(memory()));
  });

  it('are missed by a file of all, which is not made of what is left, and written back', async () => {
    const name = freshName();
    const { store, keep, memory } = await app(name);
    await keep(...entriesOf(frozenRecords));
    await clear(name);
    await expect(store.exportAll()).rejects.toThrow('has cleared the records');
    await vi.waitFor(() => expect(store.loss.value).toEqual({ kind: 'put-back', records: 13 }));
    expect(await onDisk(name)).toEqual(inOrder(memory()));
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
