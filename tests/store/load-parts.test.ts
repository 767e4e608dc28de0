/** Records that come in parts are the same as all at once, and what was done meanwhile is in them. */
import 'fake-indexeddb/auto';
import { afterEach, expect, it, vi } from 'vitest';
import type { Entry, Everything } from '../../app/store/schema.ts';
import type { Store } from '../../app/store/store.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { carId, makeShop, minute, visitId } from '../tools/shop.ts';
import { open } from './opened.ts';
import { draft, freshName, inOrder } from './records.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

async function filled(shop: Everything): Promise<Store> {
  const name = freshName();
  const store = open(name);
  await store.putAll(Object.entries(shop).flatMap(([of, list]) => list.map((one: Entry[1]) => [of, one] as Entry)));
  store.close();
  return open(name);
}
async function whole(store: Store): Promise<Everything> {
  let all: Everything | undefined;
  await store.loadAll((read) => {
    all = read;
  });
  return all as Everything;
}

// More readings and moves than are read at once.
const shop = makeShop({ cars: 40, visits: 10, open: 3 });
const preferences = ['a', 'undo-restore', 'z'].map((id) => ({ id, value: id }));

it('slices are the whole, without what an undo needs', async () => {
  const store = await filled({ ...shop, preferences, drafts: [draft('reading:x', '1')] });
  const all = await whole(store);
  expect(inOrder(all)).toEqual(inOrder(await store.load()));
  expect(all.readings).toHaveLength(shop.readings.length);
  expect(all.preferences.map(({ id }) => id)).toEqual(['a', 'z']);
});

it('what is put and removed while they are read is in them, however early its slice was read', async () => {
  const store = await filled({ ...shop, drafts: [draft('old', '1'), draft('gone', '1')] });
  const reading = { ...(shop.readings[0] as ReadingRecord), id: '0000-first-of-all' };
  const visit = { id: visitId(0, 9), carId: carId(0), opened: minute(1), closed: minute(2) };
  const writes: Promise<void>[] = [];
  const write = (n: number): void => {
    writes.push(
      store.put('readings', { ...reading, id: `${reading.id}-${n}` }),
      store.put('drafts', draft('old', `${n}`)),
    );
    if (n === 3) writes.push(store.remove('drafts', 'gone'), store.put('visits', visit));
  };
  write(0);
  const getAll = IDBObjectStore.prototype.getAll;
  let n = 0;
  vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(function (this: IDBObjectStore, ...args) {
    n += 1;
    if (n < 30) write(n);
    return getAll.apply(this, args);
  });
  const all = await whole(store);
  vi.restoreAllMocks();
  expect(n, 'slices').toBeGreaterThan(6);
  await Promise.all(writes);
  expect(inOrder(all)).toEqual(inOrder(await store.load()));
  expect(all.readings.filter(({ id }) => id.startsWith(reading.id))).toHaveLength(Math.min(n + 1, 30));
  expect(all.drafts).toEqual([draft('old', `${Math.min(n, 29)}`)].map((one) => expect.objectContaining(one)));
  expect(all.visits.find(({ id }) => id === visit.id)).toEqual(visit);
});

it('some cars come whole, by their ids or by a visit of theirs, and nothing of any other is read', async () => {
  const store = await filled({ ...shop, preferences, drafts: [draft('reading:x', '1')] });
  const read = vi.spyOn(IDBObjectStore.prototype, 'getAll');
  const some = await store.loadSome({ cars: [carId(3), 'not-here'], visits: [visitId(5, 2), 'nor-here'] });
  const touched = new Set(read.mock.contexts.map((context) => (context as unknown as IDBObjectStore).name));
  expect([...touched].sort()).toEqual(['drafts', 'preferences']);
  const own = [carId(3), carId(5)];
  const visits = shop.visits.filter((one) => own.includes(one.carId));
  const ofVisits = (one: { readonly visitId: string }) => visits.some(({ id }) => id === one.visitId);
  expect(inOrder(some)).toEqual(
    inOrder({
      cars: shop.cars.filter(({ id }) => own.includes(id)),
      visits,
      readings: shop.readings.filter(ofVisits),
      moves: shop.moves.filter(ofVisits),
      drafts: [draft('reading:x', '1')],
      preferences: preferences.filter(({ id }) => id !== 'undo-restore'),
    }),
  );
});

it('what was put before anything was loaded is written and is in what is loaded', async () => {
  const store = await filled(shop);
  const saved = store.put('drafts', draft('early', '1'));
  const [all] = await Promise.all([whole(store), saved]);
  expect(all.drafts.map(({ id }) => id)).toEqual(['early']);
  expect((await store.load()).drafts.map(({ id }) => id)).toEqual(['early']);
});
