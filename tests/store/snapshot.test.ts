/** Copies of all records beside the database: of what one is made, when, which of them stay, and which is offered. */
import 'fake-indexeddb/auto';
import { signal } from '@preact/signals';
import { afterEach, expect, it } from 'vitest';
import type { Canary } from '../../app/store/canary.ts';
import { type Connection, connect } from '../../app/store/connection.ts';
import type { Ground } from '../../app/store/ground.ts';
import type { Loss, UnderWay } from '../../app/store/outside.ts';
import { keepDaily, keepSnapshot, snapshotIn } from '../../app/store/snapshot.ts';
import { inMemory } from './ground.ts';
import { car, draft, freshName, frozenRecords, storesOf } from './records.ts';

const HOUR = 3_600_000;
const START = Date.parse('2026-03-01T08:00:00.000Z');
const connections: Connection[] = [];
afterEach(() => {
  for (const connection of connections.splice(0)) connection.close();
});

/** A phone whose clock, count of writes and losses are in the test's hand. */
function phone() {
  const { files, beside } = inMemory();
  const is = { hour: 0, writes: 1, underWay: undefined as UnderWay | undefined };
  const loss = signal<Loss | undefined>(undefined);
  const none = () => undefined;
  const connection = connect(freshName(), { blocked: none, blocking: none, cut: none });
  connections.push(connection);
  const canary = { look: async () => undefined, loss, last: () => ({ database: 'd', writes: is.writes }) };
  const ground = {
    ...{ connection, beside, canary: canary as unknown as Canary },
    way: { underWay: async () => is.underWay } as Ground['way'],
    settle: async () => undefined,
    now: () => new Date(START + is.hour * HOUR).toISOString(),
  };
  async function put(store: 'cars' | 'visits' | 'drafts' | 'preferences', record: object): Promise<void> {
    await connection.withStore([store], 'readwrite', async (transaction) => {
      await transaction.objectStore(store).put(record as never);
    });
    is.writes += 1;
  }
  const copies = (): readonly string[] => [...files.keys()].filter((name) => name.startsWith('snapshot-')).sort();
  return { ground, beside, files, is, loss, put, copies };
}

it.each([
  ['cars', car],
  ['visits', frozenRecords.visits[0]],
  ['drafts', draft('a', '1')],
] as const)('is made of a phone that has but one of its %s', async (store, record) => {
  const { ground, beside, put } = phone();
  await put(store, record as object);
  await keepSnapshot(ground);
  const copy = await snapshotIn(beside);
  expect(copy?.made).toBe('2026-03-01T08:00:00.000Z');
  expect((await storesOf(copy?.file as Blob))[store]).toEqual([record]);
});

it('is none of a phone that has but settings', async () => {
  const { ground, beside, files, put } = phone();
  await put('preferences', { id: 'theme', value: 'dark' });
  await keepSnapshot(ground);
  await keepDaily(ground);
  expect([...files.keys()]).toEqual([]);
  expect(await snapshotIn(beside)).toBeUndefined();
});

it('of those before, the largest stays beside the newest, and nothing else that is kept there is touched', async () => {
  const { ground, beside, files, is, put, copies } = phone();
  files.set('last', new Blob(['x'.repeat(100_000)]));
  files.set('step-9', new Blob(['x'.repeat(100_000)]));
  files.set('another', new Blob(['x'.repeat(100_000)]));
  await put('drafts', draft('a', '1'));
  await keepSnapshot(ground);
  // As a phone that held much before it was lost.
  const [name = ''] = copies();
  const large = new Blob([await (files.get(name) as Blob).text(), ' '.repeat(50_000)]);
  files.set(name, large);
  for (const hour of [1, 2, 3]) {
    is.hour = hour;
    await put('drafts', draft(`b${hour}`, '1'));
    await keepSnapshot(ground);
    const kept = copies();
    expect(kept).toHaveLength(2);
    expect(kept[0]).toBe(name);
    expect((await snapshotIn(beside))?.made).toBe(ground.now());
  }
  // Each of these is larger than the one before, which is no longer needed then.
  files.delete(name);
  is.hour = 4;
  await put('drafts', draft('c', '1'));
  await keepSnapshot(ground);
  const [third, fourth] = await Promise.all(copies().map((one) => storesOf(files.get(one) as Blob)));
  expect([third?.drafts.length, fourth?.drafts.length]).toEqual([4, 5]);
  expect([...files.keys()].filter((one) => !one.startsWith('snapshot-')).sort()).toEqual(['another', 'last', 'step-9']);
});

it('of those before, one that was never closed is none and goes', async () => {
  const { ground, beside, files, put, copies } = phone();
  await put('drafts', draft('a', '1'));
  files.set('snapshot-2026-01-01', new Blob());
  const { read } = beside;
  // As the files of a page are read.
  beside.read = async (name) => ((await read(name))?.size === 0 ? undefined : read(name));
  await keepSnapshot(ground);
  expect(copies()).toHaveLength(1);
  expect((await snapshotIn(beside))?.made).toBe(ground.now());
});

it('made twice at one moment of one state is one copy', async () => {
  const { ground, put, copies } = phone();
  await put('drafts', draft('a', '1'));
  await keepSnapshot(ground);
  const before = copies();
  await keepSnapshot(ground);
  expect(copies()).toEqual(before);
  expect(before).toHaveLength(1);
  // As a file is named on every system.
  expect(before[0]).toMatch(/^[\w-]+$/);
});

it('made twice at one moment stays beside one of before that is larger', async () => {
  const { ground, beside, files, put } = phone();
  await put('drafts', draft('a', '1'));
  files.set('snapshot-2026-01-01', new Blob([`{"made":"2026-01-01"}\n${'x'.repeat(50_000)}`]));
  await keepSnapshot(ground);
  await keepSnapshot(ground);
  expect((await snapshotIn(beside))?.made).toBe(ground.now());
});

it.each([
  [19.99, false],
  [20, true],
])('of a day: %f hours after the last it is made anew: %s', async (hour, isNew) => {
  const { ground, beside, is, put } = phone();
  await put('drafts', draft('a', '1'));
  await keepDaily(ground);
  await put('drafts', draft('a', '2'));
  is.hour = hour;
  await keepDaily(ground);
  expect((await snapshotIn(beside))?.made === ground.now()).toBe(isNew);
});

it('of a day: none where nothing was written since, after a loss, or while a restore is cut off', async () => {
  const { ground, beside, is, loss, put, copies } = phone();
  await put('drafts', draft('a', '1'));
  const madeAt = async () => (await snapshotIn(beside))?.made;
  is.underWay = { at: '2026-03-01T07:00:00.000Z', kind: 'restore', all: 3 };
  await keepDaily(ground);
  expect(copies()).toEqual([]);
  is.underWay = undefined;
  loss.value = { kind: 'gone' };
  await keepDaily(ground);
  expect(copies()).toEqual([]);
  loss.value = undefined;
  await keepDaily(ground);
  expect(await madeAt()).toBe('2026-03-01T08:00:00.000Z');
  is.hour = 30;
  await keepDaily(ground);
  expect(await madeAt()).toBe('2026-03-01T08:00:00.000Z');
  is.writes += 1;
  await keepDaily(ground);
  expect(await madeAt()).toBe('2026-03-02T14:00:00.000Z');
});
