/** What an undo would do where an earlier version kept all records as they were, and in which order an undo goes. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Everything, StoreName } from '../../app/store/schema.ts';
import { markOf, type Step, undoOf } from '../../app/store/undo.ts';
import { READ_ORDER } from '../../core/records/backup-lines.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { standIn } from './app.ts';
import { open } from './opened.ts';
import { car, draft, freshName, frozenRecords, oneText } from './records.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const NONE: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const AT = '2026-06-01T08:00:00.000Z';
const [BEFORE, SINCE] = ['2026-05-01T08:00:00.000Z', '2026-07-01T08:00:00.000Z'];
const carOf = (id: string, changed: string, label = id): CarRecord => ({
  ...{ ...car, id, changed },
  car: { ...car.car, id, label },
});
const visitOf = (id: string, carId: string, opened: string): VisitRecord => ({ id, carId, opened });

async function undoing(records: Partial<Everything>, present: Partial<Everything>) {
  const { at, steps, goes, returns, stays } = await undoOf(
    { at: AT, records: { ...NONE, ...records } },
    { ...NONE, ...present },
  );
  expect(at).toBe(AT);
  expect(steps, 'nothing but what goes or returns').toHaveLength(goes.length + returns.length);
  const ids = (entries: readonly (readonly [string, { readonly id: string }])[]) =>
    entries.map(([store, { id }]) => `${store} ${id}`).sort();
  return { goes: ids(goes), returns, stays: stays.map(({ entry, why }) => [entry[0], entry[1].id, why]) };
}

describe('of all records as they were', () => {
  it('what is as it was is left alone', async () => {
    const nothing = { goes: [], returns: [], stays: [] };
    expect(await undoing(frozenRecords, frozenRecords)).toEqual(nothing);
    expect(await undoing(NONE, NONE)).toEqual(nothing);
  });

  it('what was not there and is of a time before was brought: it goes', async () => {
    const { goes, returns, stays } = await undoing(
      { cars: [carOf('a', BEFORE)] },
      { cars: [carOf('a', BEFORE), carOf('b', BEFORE)], visits: [visitOf('v', 'b', BEFORE)] },
    );
    expect([goes, returns, stays]).toEqual([['cars b', 'visits v'], [], []]);
  });

  it('what was otherwise is put back as it was', async () => {
    const was = carOf('a', BEFORE, 'As it was');
    const { goes, returns, stays } = await undoing(
      { cars: [was] },
      { cars: [carOf('a', BEFORE, 'As it was brought')] },
    );
    expect([goes, returns, stays]).toEqual([[], [['cars', was]], []]);
  });

  it('what has a time since then stays, new or changed, and so does what it names', async () => {
    const { goes, returns, stays } = await undoing(
      { cars: [carOf('a', BEFORE, 'As it was')] },
      {
        cars: [carOf('a', SINCE, 'Changed since'), carOf('b', BEFORE), carOf('c', BEFORE)],
        visits: [visitOf('since', 'b', SINCE)],
      },
    );
    expect([goes, returns]).toEqual([['cars c'], []]);
    expect(stays).toEqual([
      ['cars', 'a', 'changed'],
      ['visits', 'since', 'changed'],
      ['cars', 'b', 'leaned-on'],
    ]);
  });

  it('what is no longer there comes back, a setting as well', async () => {
    const theme = { id: 'theme', value: 'dark' };
    const { goes, returns, stays } = await undoing({ drafts: [draft('a', '1')], preferences: [theme] }, NONE);
    expect([goes, stays]).toEqual([[], []]);
    expect(returns).toEqual([
      ['drafts', draft('a', '1')],
      ['preferences', theme],
    ]);
  });

  it('no setting that is there goes or changes', async () => {
    const { goes, returns, stays } = await undoing(
      { preferences: [{ id: 'theme', value: 'dark' }] },
      {
        preferences: [
          { id: 'theme', value: 'light' },
          { id: 'units', value: {} },
        ],
      },
    );
    expect([goes, returns, stays]).toEqual([[], [], []]);
  });
});

describe('of what a restore brought', () => {
  type Named = readonly [StoreName, Everything[StoreName][number]];
  const named = (store: StoreName, id: string): Named => [store, { id, texts: {} } as never];
  /** What becomes of one that was brought, or brought up to date, where another one is here that it does not know of. */
  async function beside([store, record]: Named, other: Named, before?: Named[1]) {
    const step: Step = { store, id: record.id, after: markOf(record), ...(before && { before }) };
    const present: Everything = { ...NONE, [store]: [record] };
    const both = { ...present, [other[0]]: [...present[other[0]], other[1]] };
    const { goes, returns, stays, steps } = await undoOf({ at: AT, steps: [step] }, both);
    expect(steps).toHaveLength(goes.length + returns.length);
    expect(goes.length + returns.length + stays.length).toBe(1);
    return stays.length > 0 ? stays.map(({ why }) => why)[0] : goes.length > 0 ? 'goes' : 'returns';
  }
  const linked = (store: StoreName, id: string, links: object): Named => [store, { id, ...links } as never];

  it.each<readonly [string, Named, Named]>([
    ['a car by its visit', named('cars', 'c'), linked('visits', 'v', { carId: 'c' })],
    ['a car by its form half typed', named('cars', 'c'), linked('drafts', 'build:c', { texts: {} })],
    ['a visit by its reading', named('visits', 'v'), linked('readings', 'r', { visitId: 'v' })],
    ['a visit by its move', named('visits', 'v'), linked('moves', 'm', { visitId: 'v' })],
    ['a visit by what is half typed', named('visits', 'v'), linked('drafts', 'reading:v', { texts: {} })],
    ['a reading by its move', named('readings', 'r'), linked('moves', 'm', { visitId: 'v', readingId: 'r' })],
    ['a reading by its correction', named('readings', 'r'), linked('readings', 's', { visitId: 'v', replaces: 'r' })],
  ])('%s is kept', async (_, brought, other) => {
    expect(await beside(brought, other)).toBe('leaned-on');
  });

  it.each<readonly [string, Named, Named]>([
    ['a car that a visit of its id does not name', named('cars', 'x'), linked('visits', 'x', { carId: 'another' })],
    ['a visit that a car of its id does not name', named('visits', 'x'), linked('cars', 'x', {})],
    [
      'a reading that a move of its visit does not name',
      named('readings', 'v'),
      linked('moves', 'm', { visitId: 'v' }),
    ],
    ['a reading of the id that a move replaced', named('readings', 'r'), linked('moves', 'm', { replaces: 'r' })],
  ])('%s goes', async (_, brought, other) => {
    expect(await beside(brought, other)).toBe('goes');
  });

  it.each<readonly [string, object, string]>([
    ['was opened since', { opened: SINCE }, 'leaned-on'],
    ['was opened before', { opened: BEFORE }, 'returns'],
    ['was closed since', { opened: BEFORE, closed: SINCE }, 'leaned-on'],
    ['was closed before', { opened: SINCE, closed: BEFORE }, 'returns'],
    ['was made since', { opened: BEFORE, at: SINCE }, 'leaned-on'],
    ['was changed since', { opened: BEFORE, closed: BEFORE, changed: SINCE }, 'leaned-on'],
    ['was changed at that very time', { changed: AT }, 'returns'],
    ['has no time', {}, 'returns'],
  ])('a car that was brought up to date, where a visit of it %s', async (_, times, becomes) => {
    const visit = linked('visits', 'v', { carId: 'c', ...times });
    expect(await beside(named('cars', 'c'), visit, { id: 'c', older: true } as never)).toBe(becomes);
  });

  it('is looked for with a pause for fingers wherever it takes long, one at a time', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    const pauses = vi.spyOn(globalThis, 'setTimeout');
    try {
      // Each look at the clock finds a long time gone by.
      let time = 0;
      vi.spyOn(performance, 'now').mockImplementation(() => (time += 100));
      const cars = ['a', 'b', 'c', 'd'].map((id) => carOf(id, BEFORE));
      const steps = cars.slice(0, 2).map((record): Step => ({ store: 'cars', id: record.id, after: markOf(record) }));
      let ended = false;
      const undoing = undoOf({ at: AT, steps }, { ...NONE, cars }).finally(() => {
        ended = true;
      });
      while (!ended) {
        expect(vi.getTimerCount()).toBeLessThanOrEqual(1);
        await vi.advanceTimersToNextTimerAsync();
      }
      expect((await undoing).goes).toHaveLength(2);
      // Four that are here, two steps, twice, and two that stay.
      expect(pauses).toHaveBeenCalledTimes(4 + 2 + 2 + 2);
    } finally {
      vi.useRealTimers();
    }
  });
});

describe('the undo of a restore', () => {
  it('takes each record away once, what names others before what it names', async () => {
    standIn();
    const name = freshName();
    const store = open(name);
    await store.load();
    await store.restore(await oneText(frozenRecords));
    const gone: string[] = [];
    const own = IDBObjectStore.prototype.delete;
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(function (this: IDBObjectStore, key) {
      if (this.transaction.db.name === name) gone.push(`${this.name} ${key}`);
      return own.apply(this, [key]);
    });
    expect(await store.undoRestore()).toBe(true);
    const expected = READ_ORDER.flatMap((of) =>
      frozenRecords[of].map(({ id }) => `${of} ${id}`).sort((a, b) => (a < b ? -1 : 1)),
    );
    expect(gone).toEqual(expected);
    expect((await store.load()).cars).toEqual([]);
  });

  it('puts each record back once, what is named before what names it', async () => {
    standIn();
    const name = freshName();
    const store = open(name);
    await store.load();
    const older = { ...NONE, cars: [carOf('a', BEFORE)], drafts: [draft('d', '1')] };
    await store.restore(await oneText(older));
    const newer = { ...NONE, cars: [carOf('a', SINCE, 'Newer')], drafts: [{ ...draft('d', '2'), changed: SINCE }] };
    await store.restore(await oneText(newer));
    const put: string[] = [];
    const own = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, value, key) {
      if (this.transaction.db.name === name && this.name !== 'preferences') put.push(`${this.name} ${value.id}`);
      return own.apply(this, key === undefined ? [value] : [value, key]);
    });
    await store.undoRestore();
    expect(put).toEqual(['cars a', 'drafts d']);
    const { cars, drafts } = await store.load();
    expect([cars, drafts]).toEqual([older.cars, older.drafts]);
  });
});
