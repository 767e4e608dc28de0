/** A database cleared while a start reads it part by part: told, and no part is written back as the whole. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CANARY } from '../../app/store/schema.ts';
import type { Store } from '../../app/store/store.ts';
import { carId, makeShop } from '../tools/shop.ts';
import { app, beside, clear, entriesOf, onDisk, standIn } from './app.ts';
import { closeAll, open } from './opened.ts';
import { draft, freshName } from './records.ts';

const shop = makeShop({ cars: 40, visits: 10, open: 3 });
const nothing = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const first = { cars: [carId(0)], visits: [] };

let outside: Map<string, string>;
beforeEach(() => {
  outside = standIn();
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** A database with the shop in it, and a store that has read none of it. */
async function filled({ isCounted = true } = {}): Promise<{ readonly name: string; readonly store: Store }> {
  const name = freshName();
  await (await app(name, { remembers: false })).keep(...entriesOf(shop));
  closeAll();
  if (!isCounted) {
    await beside(name, (transaction) => transaction.objectStore('preferences').delete(CANARY));
    outside.clear();
  }
  const store = open(name);
  return { name, store };
}
async function isTold(store: Store): Promise<void> {
  await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'), 10_000);
  expect(store.saveMessage.value).toContain('has cleared the records');
}

describe.each([true, false])(
  'records that were cleared between the first rows and the rest (counted: %s)',
  (isCounted) => {
    it('are told by the rest, which hands over nothing, and no part is written back', async () => {
      const { name, store } = await filled({ isCounted });
      expect((await store.loadSome(first)).cars).toHaveLength(1);
      await clear(name);
      const take = vi.fn();
      await expect(store.loadAll(take)).rejects.toThrow('has cleared the records');
      expect(take).not.toHaveBeenCalled();
      await isTold(store);
      expect(await onDisk(name)).toEqual(nothing);
    });

    it('are told by a car that is asked for', async () => {
      const { name, store } = await filled({ isCounted });
      await store.loadSome(first);
      await clear(name);
      await expect(store.loadSome({ cars: [carId(5)], visits: [] })).rejects.toThrow('has cleared the records');
      await isTold(store);
      expect(await onDisk(name)).toEqual(nothing);
    });

    it('are told by a write, which waits: no orphan is written', async () => {
      const { name, store } = await filled({ isCounted });
      await store.loadSome(first);
      await clear(name);
      void store.put('drafts', draft('a', '1'));
      await isTold(store);
      expect(await onDisk(name)).toEqual(nothing);
    });

    it('are told by the rest, though a page that was hidden meanwhile has written something', async () => {
      const { name, store } = await filled({ isCounted });
      await store.loadSome(first);
      await clear(name);
      void store.put('drafts', draft('a', '1'));
      await store.flush().catch(() => undefined);
      await isTold(store);
      const take = vi.fn();
      await expect(store.loadAll(take)).rejects.toThrow('has cleared the records');
      store.remember(() => nothing as Parameters<typeof entriesOf>[0]);
      store.retry();
      await expect(store.load()).rejects.toThrow('has cleared the records');
      expect(take).not.toHaveBeenCalled();
      expect(store.loss.value?.kind).not.toBe('put-back');
    });

    it('are told when it happens between two slices', async () => {
      const { name, store } = await filled({ isCounted });
      const getAll = IDBObjectStore.prototype.getAll;
      let cleared: Promise<void> | undefined;
      vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(function (this: IDBObjectStore, ...args) {
        // Waits for the slice that is read now, and comes before the next one.
        if (this.name === 'readings') cleared ??= clear(name);
        return getAll.apply(this, args);
      });
      const take = vi.fn();
      await expect(store.loadAll(take)).rejects.toThrow('has cleared the records');
      expect(cleared).toBeDefined();
      await cleared;
      expect(take).not.toHaveBeenCalled();
      await isTold(store);
      expect(await onDisk(name)).toEqual(nothing);
    });
  },
);

it('records that were cleared before a start are told by the first rows', async () => {
  const { name, store } = await filled();
  await clear(name);
  expect((await store.loadSome(first)).cars).toEqual([]);
  expect(store.loss.value).toEqual({ kind: 'gone' });
  const all = vi.fn();
  await store.loadAll(all);
  expect(all).toHaveBeenCalledWith(nothing);
  expect(store.saveState.value).toBe('saved');
});

it('records that all are here and then cleared are written back whole', async () => {
  const { name, store } = await filled();
  await store.loadSome(first);
  let memory = nothing as Parameters<typeof entriesOf>[0];
  await store.loadAll((all) => {
    memory = all;
  });
  store.remember(() => memory);
  await clear(name);
  await expect(store.loadAll(() => undefined)).rejects.toThrow('has cleared the records');
  await vi.waitFor(() => expect(store.loss.value?.kind).toBe('put-back'), 10_000);
  expect((await onDisk(name)).readings).toHaveLength(shop.readings.length);
  expect(store.saveState.value).toBe('saved');
});
