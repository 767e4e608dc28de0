/** A start shows a few cars whole, then has everything; what is done in between is kept. */
import 'fake-indexeddb/auto';
import { beforeAll, expect, it, vi } from 'vitest';
import { carState } from '../../app/state/car-state.ts';
import {
  cleared,
  keep,
  keepDraft,
  loadError,
  loading,
  loadRecords,
  loadSoon,
  records,
} from '../../app/state/records.ts';
import { lastSettings, openVisit, visitView } from '../../app/state/visits.ts';
import { byId, ClearedError, type Entry, store } from '../../app/store/index.ts';
import { createStore } from '../../app/store/store.ts';
import type { ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { carId, makeShop, minute, visitId } from '../tools/shop.ts';

const shop = makeShop({ cars: 30, visits: 5, open: 2 });
const first = { cars: [carId(0), carId(7)], visits: [] };
const size = () => Object.values(records.value).reduce((sum, list) => sum + list.length, 0);
const becomes = (state: typeof loading.value) =>
  new Promise<void>((done) => {
    loading.subscribe((now) => {
      if (now === state) done();
    });
  });

beforeAll(async () => {
  const other = createStore();
  await other.putAll(Object.entries(shop).flatMap(([of, list]) => list.map((one: Entry[1]) => [of, one] as Entry)));
  other.close();
});

it('the cars of the first rows stand there as they do when all is read, and no record of another is read for them', async () => {
  const all = loadRecords(first, async () => expect.fail('it is not empty'));
  await becomes('some');
  // Five visits of two readings and three moves each.
  expect(size()).toBe(2 * (1 + 5 * (1 + 2 + 3)));
  const rows = () => first.cars.map((id) => carState(records.value, byId(records.value.cars, id) as never));
  const before = rows();
  expect(before[1]?.verdict, 'one of them is as left').toBeDefined();

  // The open visit goes on, and a car that is asked for comes before its turn.
  const visit = openVisit(records.value, carId(0)) as VisitRecord;
  keepDraft(`reading:${visit.id}`, { 'LF.camber': '-1.2' }, undefined);
  const reading: ReadingRecord = { ...(shop.readings[0] as ReadingRecord), id: 'now', visitId: visit.id };
  keep(['readings', { ...reading, at: minute(9e6) }]);
  await loadSoon({ cars: [], visits: [visitId(11, 3)] });
  const soon = visitView(records.value, visitId(11, 3));
  const settings = lastSettings(records.value, carId(11));

  await all;
  expect(loading.value).toBe('ready');
  expect(size()).toBe(Object.values(shop).reduce((sum, list) => sum + list.length, 2));
  expect(visitView(records.value, visit.id)?.rounds.at(-1)?.record.id).toBe('now');
  expect(records.value.drafts[0]?.texts).toEqual({ 'LF.camber': '-1.2' });
  expect(visitView(records.value, visitId(11, 3))).toEqual(soon);
  expect(lastSettings(records.value, carId(11))).toEqual(settings);
  expect(rows()[1]).toEqual(before[1]);
  await store.flush();
  expect((await store.load()).readings.map(({ id }) => id)).toContain('now');
});

it('where none of the noted cars is there any more, all is read first', async () => {
  loading.value = 'loading';
  const seen: string[] = [];
  const stop = loading.subscribe((now) => seen.push(now));
  await loadRecords({ cars: ['gone'], visits: [] }, async () => expect.fail('it is not empty'));
  stop();
  expect(seen).toEqual(['loading', 'ready']);
  expect(records.value.cars).toHaveLength(30);
});

it('where the rest cannot be read, what is shown stays, and it is tried again', async () => {
  loading.value = 'loading';
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  const read = vi
    .spyOn(store, 'loadAll')
    .mockRejectedValueOnce(new Error('gone'))
    .mockRejectedValueOnce(new Error('gone'));
  const all = loadRecords(first, async () => expect.fail('it is not empty'));
  await vi.waitUntil(() => read.mock.calls.length === 1);
  expect(loading.value).toBe('some');
  const visit = openVisit(records.value, carId(0)) as VisitRecord;
  keepDraft(`reading:${visit.id}`, { 'LF.camber': '-1.3' }, undefined);
  await vi.advanceTimersByTimeAsync(1_000);
  expect(read).toHaveBeenCalledTimes(2);
  expect(loading.value).toBe('some');
  vi.advanceTimersByTime(2_000);
  vi.useRealTimers();
  await all;
  expect(loading.value).toBe('ready');
  expect(records.value.cars).toHaveLength(30);
  expect(records.value.drafts[0]?.texts).toEqual({ 'LF.camber': '-1.3' });
});

it('where the browser has cleared the rest meanwhile, that is said instead of trying for ever', async () => {
  loading.value = 'loading';
  const gone = vi.spyOn(store, 'loadAll').mockClear().mockRejectedValue(new ClearedError());
  await loadRecords(first, async () => expect.fail('it is not empty'));
  expect(loading.value).toBe('failed');
  expect(loadError.value).toContain('cleared');
  // The screen that offers to save what was read by then.
  expect(cleared.value).toBe(true);
  expect(records.value.cars.map(({ id }) => id)).toEqual(first.cars);
  expect(gone).toHaveBeenCalledTimes(1);
  gone.mockRestore();
});
