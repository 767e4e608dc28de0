/** Two windows over one database, deaf to each other, that begin a visit of one car. */
import 'fake-indexeddb/auto';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { marked } from '../../core/records/visit-facts.ts';
import { onDisk } from '../store/app.ts';
import { fakeLocks } from '../store/locks.ts';
import { car } from '../store/records.ts';

async function openWindow() {
  vi.resetModules();
  const state = await import('../../app/state/records.ts');
  const { store } = await import('../../app/store/index.ts');
  const { beginVisit } = await import('../../app/state/visit-actions.ts');
  await state.loadRecords({ cars: [], visits: [] }, async () => undefined);
  return { ...state, store, beginVisit };
}
type Window = Awaited<ReturnType<typeof openWindow>>;
let one: Window;
let two: Window;

beforeAll(async () => {
  vi.stubGlobal('navigator', { locks: fakeLocks() });
  vi.stubGlobal('BroadcastChannel', undefined);
  one = await openWindow();
  await one.keep(['cars', car]);
  two = await openWindow();
});
afterAll(() => {
  for (const { store } of [one, two]) store.close();
  vi.unstubAllGlobals();
});
const visits = async () => (await onDisk('cornerwright')).visits;

it('at once: it is one visit, in both', async () => {
  const [a, b, again] = await Promise.all([one.beginVisit(car), two.beginVisit(car), one.beginVisit(car)]);
  expect(b).toEqual(a);
  expect(again).toEqual(a);
  expect(await visits()).toEqual([a]);
  expect(two.records.value.visits).toEqual([a]);
});

it('after the first one was signed off in a window that is not heard: it is a new one, and that one stays signed off', async () => {
  const [visit] = one.records.value.visits;
  const at = '2026-05-01T08:00:00.000Z';
  await one.keep(['visits', marked(visit!, { closed: at }, at)]);
  two.records.value = { ...two.records.value, visits: [] };
  const next = await two.beginVisit(car);
  expect(next.id).not.toBe(visit?.id);
  expect(await visits()).toHaveLength(2);
  expect((await visits()).find(({ id }) => id === visit?.id)?.closed).toBe(at);
});

it('nobody waits for a window that hangs, nor for a database that does not answer', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  await one.keep(...one.records.value.visits.map((visit) => ['visits', { ...visit, closed: 'now' }] as const));
  one.records.value = { ...one.records.value, visits: [] };
  const hangs = navigator.locks.request(`cornerwright-new-visit:${car.id}`, () => new Promise(() => undefined));
  expect(hangs).toBeDefined();
  vi.spyOn(one.store, 'loadSome').mockReturnValue(new Promise(() => undefined));
  const begun = one.beginVisit(car);
  await vi.advanceTimersByTimeAsync(2_000);
  await vi.advanceTimersByTimeAsync(1_000);
  expect((await begun).carId).toBe(car.id);
  vi.useRealTimers();
});
