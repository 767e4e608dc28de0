/** A restore or an undo that is cut off in the middle: noticed at the next start, told, and taken back or finished. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Everything } from '../../app/store/schema.ts';
import type { Store } from '../../app/store/store.ts';
import { PIECE } from '../../core/records/backup-lines.ts';
import { makeShop } from '../tools/shop.ts';
import { entriesOf, standIn } from './app.ts';
import { closeAll, open } from './opened.ts';
import { draft, freshName, inOrder } from './records.ts';

const shop = makeShop({ cars: 12, visits: 4, open: 3 });
const COUNT = Object.values(shop).reduce((sum, list) => sum + list.length, 0);

beforeEach(() => {
  standIn();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

async function fileOf(all: Everything): Promise<Blob> {
  const store = open(freshName());
  await store.putAll(entriesOf(all));
  return store.exportAll();
}
const file = await (async () => {
  const made = await fileOf(shop);
  closeAll();
  return made;
})();

/** From the n-th record on the phone has no room, in any database whose name is this. */
function noRoomAfter(records: number, name: string): void {
  const { put } = IDBObjectStore.prototype;
  let left = records;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    if (this.transaction.db.name === name && left-- <= 0) throw new DOMException('no room', 'QuotaExceededError');
    return put.apply(this, args);
  });
}

/** A phone with some work of its own and half of the shop's; the other half is on its way when it stops. */
async function cutOff(name: string, after = 130): Promise<Everything> {
  const first = open(name);
  const mine = makeShop({ cars: 3, visits: 2, open: 0 });
  await first.putAll([...entriesOf({ ...mine, cars: mine.cars.map((car) => ({ ...car, changed: '2019-01-01' })) })]);
  await first.put('drafts', draft('mine', '1'));
  const before = inOrder(await first.load());
  noRoomAfter(after, name);
  await expect(first.restore(file)).rejects.toThrow('no room left');
  vi.restoreAllMocks();
  first.close();
  return before;
}
/** The app at its next start. */
async function started(name: string): Promise<Store> {
  const store = open(name);
  await store.load();
  await store.lookForCutOff();
  return store;
}

describe('a restore that is cut off', () => {
  it('is told at the next start, with how far it came; what came in is whole', async () => {
    const name = freshName();
    await cutOff(name);
    const store = await started(name);
    const cut = store.cutOff.value;
    expect(cut).toMatchObject({ kind: 'restore', all: COUNT });
    expect(cut?.through).toBeGreaterThan(50);
    expect(cut?.through).toBeLessThan(160);
    expect(store.loss.value).toBeUndefined();
    const { cars, visits, readings, moves } = await store.load();
    const has = (list: readonly { readonly id: string }[], id: string) => list.some((one) => one.id === id);
    expect(visits.filter(({ carId }) => !has(cars, carId))).toEqual([]);
    expect(readings.filter(({ visitId }) => !has(visits, visitId))).toEqual([]);
    expect(moves.filter(({ readingId }) => !has(readings, readingId))).toEqual([]);
  });

  it('is told at once where the app goes on', async () => {
    const name = freshName();
    const store = open(name);
    noRoomAfter(130, name);
    await expect(store.restore(file)).rejects.toThrow('no room left');
    expect(store.cutOff.value?.kind).toBe('restore');
    expect(store.restoring.value).toBeUndefined();
  });

  it('is taken back: all is as it was, and can be brought back as far as it came', async () => {
    const name = freshName();
    const before = await cutOff(name);
    const store = await started(name);
    const half = inOrder(await store.load());
    expect(half.visits.length).toBeGreaterThan(before.visits.length);
    expect(await store.undoRestore()).toBe(true);
    expect(inOrder(await store.load())).toEqual(before);
    expect(store.cutOff.value).toBeUndefined();
    expect((await started(name)).cutOff.value).toBeUndefined();
    expect(await store.undoes()).toBe('undo');
    await store.undoRestore();
    expect(inOrder(await store.load())).toEqual(half);
  });

  it('is finished by the same file: all is there, and one undo takes back all of it', async () => {
    const name = freshName();
    const before = await cutOff(name);
    const store = await started(name);
    const report = await store.restore(file);
    expect(report.changes.added).toBeGreaterThan(100);
    expect(report.changes.added).toBeLessThan(COUNT - 60);
    expect(store.cutOff.value).toBeUndefined();
    const after = await store.load();
    for (const list of ['visits', 'readings', 'moves'] as const) expect(after[list]).toHaveLength(shop[list].length);
    expect(await store.undoes()).toBe('restore');
    await store.undoRestore();
    expect(inOrder(await store.load())).toEqual(before);
  });

  it('can be left as it is, and undone later', async () => {
    const name = freshName();
    const before = await cutOff(name);
    const store = await started(name);
    await store.leaveCutOff();
    expect(store.cutOff.value).toBeUndefined();
    await store.put('drafts', draft('since', '2'));
    const next = await started(name);
    expect(next.cutOff.value).toBeUndefined();
    await next.undoRestore();
    expect(inOrder(await next.load())).toEqual(inOrder({ ...before, drafts: [...before.drafts, draft('since', '2')] }));
  });

  it('is nothing to leave where there is none: what was done last can be undone as before', async () => {
    const store = await started(freshName());
    await store.leaveCutOff();
    expect(await store.undoes()).toBeUndefined();
    await store.restore(file);
    await store.undoRestore();
    await store.leaveCutOff();
    expect(await store.undoes()).toBe('undo');
  });

  it('was never one where it was refused, or had nothing to bring', async () => {
    const name = freshName();
    const store = open(name);
    await expect(store.restore('no backup')).rejects.toThrow('backup');
    await store.restore(file);
    await store.restore(file);
    expect((await started(name)).cutOff.value).toBeUndefined();
  });
});

describe('an undo that is cut off', () => {
  it('is told, and goes on where it was: all is as before the restore, and can be brought back', async () => {
    const name = freshName();
    const first = open(name);
    await first.put('drafts', draft('mine', '1'));
    const before = inOrder(await first.load());
    await first.restore(file);
    const after = inOrder(await first.load());
    const remove = IDBObjectStore.prototype.delete;
    let left = 180;
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(function (this: IDBObjectStore, key) {
      if (this.transaction.db.name === name && left-- <= 0) throw new DOMException('no room', 'QuotaExceededError');
      return remove.call(this, key);
    });
    await expect(first.undoRestore()).rejects.toThrow('no room left');
    vi.restoreAllMocks();
    first.close();
    const store = await started(name);
    expect(store.cutOff.value).toMatchObject({ kind: 'undo', all: COUNT });
    expect(await store.undoes(), 'what it goes on to take back').toBe('restore');
    const { visits, readings } = await store.load();
    expect(readings.filter(({ visitId }) => !visits.some(({ id }) => id === visitId))).toEqual([]);
    expect(await store.undoRestore()).toBe(true);
    expect(inOrder(await store.load())).toEqual(before);
    expect(store.cutOff.value).toBeUndefined();
    await store.undoRestore();
    expect(inOrder(await store.load())).toEqual(after);
  });

  it('twice tells how far it came of all, not of what was left at the first time', async () => {
    const larger = makeShop({ cars: 18, visits: 4, open: 3 });
    const all = entriesOf(larger).length;
    expect(all).toBeGreaterThan(PIECE.records + 10);
    const name = freshName();
    const store = open(name);
    await store.restore(await fileOf(larger));
    const remove = IDBObjectStore.prototype.delete;
    let left = PIECE.records + 10;
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(function (this: IDBObjectStore, key) {
      if (this.transaction.db.name === name && left-- <= 0) throw new DOMException('no room', 'QuotaExceededError');
      return remove.call(this, key);
    });
    for (let times = 0; times < 2; times += 1) {
      await expect(store.undoRestore()).rejects.toThrow('no room left');
      expect(store.cutOff.value).toMatchObject({ kind: 'undo', through: PIECE.records, all });
    }
    vi.restoreAllMocks();
    expect(await store.undoRestore()).toBe(true);
    expect((await store.load()).visits).toEqual([]);
  });
});
