/** What an undo would do where an earlier version kept all records as they were, and in which order an undo goes. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Everything } from '../../app/store/schema.ts';
import { undoOf } from '../../app/store/undo.ts';
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
