/** The same reading or move booked twice is one record; another one is another, however alike. */
import { beforeEach, describe, expect, it } from 'vitest';
import { records } from '../../app/state/records.ts';
import { moveId, readingId } from '../../app/state/same-id.ts';
import { entryDraft } from '../../app/state/stage.ts';
import { takeDown } from '../../app/state/visit-actions.ts';
import { type VisitView, visitView } from '../../app/state/visits.ts';
import type { MoveRecord, ReadingRecord } from '../../core/records/stored.ts';
import { readStores } from '../../core/records/stored-schema.ts';
import { frozenRecords } from '../store/records.ts';

const reading = frozenRecords.readings[0] as ReadingRecord;
const made: Omit<MoveRecord, 'id' | 'at'> = {
  ...{ visitId: 'v', readingId: 'r', corner: 'LF', adjuster: 'rod', from: 0, to: 1, outcome: 'done' },
};
let clock = 0;
const booked = (all: readonly MoveRecord[], move: Omit<MoveRecord, 'id' | 'at'>): MoveRecord => {
  clock += 1;
  return { ...move, id: moveId(all, move), at: new Date(clock).toISOString() };
};
const takenBack = (all: readonly MoveRecord[], { id, at: _, ...move }: MoveRecord): MoveRecord =>
  booked(all, { ...move, to: move.from, replaces: id });

describe('a move', () => {
  it('that two windows book, neither of which knows of the other, is one', () => {
    expect(booked([], made).id).toBe(booked([], made).id);
  });

  it('that was just booked is not booked again', () => {
    const first = booked([], made);
    expect(moveId([first], made)).toBe(first.id);
  });

  it('that was taken back can be made again, and taken back again', () => {
    let all = [booked([], made)];
    for (let times = 0; times < 3; times += 1) {
      all = [...all, takenBack(all, all.at(-1)!)];
      all = [...all, booked(all, made)];
    }
    expect(new Set(all.map(({ id }) => id)).size).toBe(7);
  });

  it('that is taken back twice is taken back once', () => {
    const first = booked([], made);
    const back = takenBack([first], first);
    expect(takenBack([first], first).id).toBe(back.id);
    expect(takenBack([first, back], first).id).toBe(back.id);
  });

  it('can be made again once the adjuster was set elsewhere', () => {
    const first = booked([], made);
    const back = booked([first], { ...made, from: 1, to: 0, outcome: 'set-to' });
    const again = booked([first, back], made);
    expect(new Set([first.id, back.id, again.id]).size).toBe(3);
    expect(moveId([first, back, again], made)).toBe(again.id);
  });

  it.each([
    { readingId: 'r2' },
    { corner: 'RF' as const },
    { adjuster: 'cam' },
    { from: 0.5 },
    { to: 2 },
    { to: '1' },
    { outcome: 'set-to' as const },
  ])('with another %j is another', (change) => {
    expect(moveId([], { ...made, ...change })).not.toBe(moveId([], made));
  });
});

describe('a reading', () => {
  const what = { visitId: 'v', typed: { 'LF.camber': '-1.25' } };
  const taken = (more: object): ReadingRecord => ({ ...reading, visitId: 'v', ...more });

  it('of the same digits is one, as long as none was taken between', () => {
    expect(readingId([], what)).toBe(readingId([], what));
    expect(readingId([{ ...reading, visitId: 'other' }], what)).toBe(readingId([], what));
  });

  it('of the same digits after another is a re-measure', () => {
    expect(readingId([taken({ id: 'first' })], what)).not.toBe(readingId([], what));
  });

  it.each([{ visitId: 'v2' }, { typed: { 'LF.camber': '-1.26' } }, { replaces: 'first' }])(
    'with another %j is another',
    (change) => {
      expect(readingId([], { ...what, ...change })).not.toBe(readingId([], what));
    },
  );
});

it('of the longest ids that there may be, an id is made that is not too long', () => {
  const long = 'i'.repeat(400);
  const id = readingId([], { visitId: long, typed: {} });
  const move = booked([], { ...made, visitId: long, readingId: id });
  const none = { cars: [], visits: [], drafts: [], preferences: [] };
  const { aside } = readStores({ ...none, readings: [{ ...reading, id, visitId: long }], moves: [move] });
  expect(aside).toEqual([]);
  expect(readingId([], { visitId: `${long.slice(1)}j`, typed: {} })).not.toBe(id);
});

describe('taking a reading down', () => {
  const { visitId } = reading;
  const typed = { ...reading.typed, 'LF.camber': '-1.25' };
  const view = (): VisitView => visitView(records.value, visitId)!;
  beforeEach(() => {
    const drafts = [{ id: entryDraft(visitId), texts: typed, changed: '2026-01-01T08:00:00.000Z' }];
    records.value = { ...frozenRecords, readings: [], moves: [], drafts };
  });

  it('twice, as two windows or a nervous thumb may, makes one', () => {
    const before = records.value;
    takeDown(view(), {});
    takeDown(view(), {});
    expect(records.value.readings).toHaveLength(1);
    const { id } = records.value.readings[0]!;
    records.value = before;
    takeDown(view(), {});
    expect(records.value.readings.map((one) => one.id)).toEqual([id]);
  });
});
