/** What the store offers of backups: how far a restore is, who is told of it, and what happens where its code cannot begin. */
import { effect } from '@preact/signals';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { makeShop } from '../tools/shop.ts';
import { entriesOf, standIn } from './app.ts';
import { open } from './opened.ts';
import { draft, freshName, inOrder, oneText } from './records.ts';

const shop = makeShop({ cars: 12, visits: 4, open: 3 });
const COUNT = Object.values(shop).flat().length;

beforeEach(() => {
  standIn();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

it('tells how far a restore is, from its first moment to its end, and then no more', async () => {
  const store = open();
  const told: (string | undefined)[] = [];
  const end = effect(() => {
    const at = store.restoring.value;
    told.push(at && `${at.through} of ${at.all}`);
  });
  expect(told).toEqual([undefined]);
  const restoring = store.restore(await oneText(shop));
  expect(told).toEqual([undefined, '0 of 0']);
  await restoring;
  end();
  expect(COUNT).toBeGreaterThan(100);
  expect(told.at(-1)).toBeUndefined();
  const through = told.slice(2, -1).map((text) => Number.parseInt(text ?? '', 10));
  expect(told.slice(2, -1).every((text) => text?.endsWith(`of ${COUNT}`))).toBe(true);
  expect(through.at(-1)).toBe(COUNT);
  expect(through).toEqual([...through].sort((a, b) => a - b));
});

it('tells the screens once of what came in, and of an undo; of a file that is refused nothing', async () => {
  const store = open();
  await store.load();
  const changed = vi.fn();
  store.onOutsideChange(changed);
  const refused = store.restore('no backup');
  expect(store.restoring.value).toEqual({ through: 0, all: 0 });
  await expect(refused).rejects.toMatchObject({ name: 'InputError' });
  expect(store.restoring.value).toBeUndefined();
  await expect(store.inspect('no backup')).rejects.toMatchObject({ name: 'InputError' });
  expect(changed).not.toHaveBeenCalled();
  expect(store.saveState.value, 'nothing of what is here is in doubt').toBe('saved');
  await store.restore(await oneText(shop));
  expect(changed).toHaveBeenCalledTimes(1);
  expect(await store.undoes()).toBe('restore');
  await store.undoRestore();
  expect(changed).toHaveBeenCalledTimes(2);
});

it('tells the screens where a restore was cut off, as a part of it may be in, and knows how far it came', async () => {
  const name = freshName();
  const store = open(name);
  await store.put('drafts', draft('mine', '1'));
  const changed = vi.fn();
  store.onOutsideChange(changed);
  const { put } = IDBObjectStore.prototype;
  let left = COUNT - 5;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    if (this.transaction.db.name === name && left-- <= 0) throw new DOMException('no room', 'QuotaExceededError');
    return put.apply(this, args);
  });
  await expect(store.restore(await oneText(shop))).rejects.toThrow('no room left');
  vi.restoreAllMocks();
  expect(store.restoring.value).toBeUndefined();
  expect(changed).toHaveBeenCalledTimes(1);
  expect(store.cutOff.value).toMatchObject({ kind: 'restore', all: COUNT });
  await store.leaveCutOff();
  expect(store.cutOff.value).toBeUndefined();
  await store.undoRestore();
  expect((await store.load()).drafts).toEqual([draft('mine', '1')]);
});

it('waits for nothing where what is beside the database cannot be opened, and tries anew the next time', async () => {
  const name = freshName();
  const store = open(name);
  await store.putAll(entriesOf(shop));
  const opening = vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('not now', 'UnknownError');
  });
  await expect(store.undoes()).rejects.toThrow('not now');
  await expect(store.lookForCutOff()).resolves.toBeUndefined();
  expect(store.cutOff.value).toBeUndefined();
  opening.mockRestore();
  expect(await store.undoes()).toBeUndefined();
  expect((await store.inspect(await oneText(shop))).changes).toMatchObject({ added: 0, same: COUNT });
  expect(inOrder(await store.load())).toEqual(inOrder(shop));
});

it('lets go of what is beside the database when it is closed', async () => {
  const name = freshName();
  const store = open(name);
  await store.restore(await oneText(shop));
  const closed: string[] = [];
  const { close } = IDBDatabase.prototype;
  vi.spyOn(IDBDatabase.prototype, 'close').mockImplementation(function (this: IDBDatabase) {
    closed.push(this.name);
    close.apply(this);
  });
  store.close();
  await vi.waitFor(() => expect(closed).toContain(`${name}-beside`));
});
