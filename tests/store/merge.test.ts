/** A backup's records laid into those that are here: what is asked for, what is to be written, and what is said of it. */
import { describe, expect, it } from 'vitest';
import { merge, mergePiece } from '../../app/store/merge.ts';
import type { Everything, StoreName } from '../../app/store/schema.ts';
import type { MoveRecord } from '../../core/records/stored.ts';
import { edited } from '../../core/records/versions.ts';
import { car, draft, frozenRecords } from './records.ts';
import { transactionOn } from './transaction.ts';

const NONE: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const renamed = (label: string, at: string) => edited(car, { ...car, car: { ...car.car, label } }, at);
const move = frozenRecords.moves[0] as MoveRecord;
const [here, there] = [
  { ...move, outcome: 'done' as const, at: '2026-03-01T08:00:00.000Z' },
  { ...move, outcome: 'done' as const, at: '2026-03-01T09:00:00.000Z' },
];

describe('records that come in', () => {
  it('are all new on an empty phone, each to be written as it is', () => {
    const { entries, counts, both } = merge(NONE, frozenRecords);
    const all = Object.values(frozenRecords).flat().length;
    expect(counts).toEqual({ added: all, updated: 0, same: 0, kept: 0 });
    for (const [store, record] of entries) expect(frozenRecords[store]).toContainEqual(record);
    expect(entries).toHaveLength(all);
    expect(both).toEqual([]);
  });

  it('are nothing new the second time: nothing is to be written', () => {
    const all = Object.values(frozenRecords).flat().length;
    const { entries, counts } = merge(frozenRecords, frozenRecords);
    expect([entries, counts]).toEqual([[], { added: 0, updated: 0, same: all, kept: 0 }]);
  });

  it('tell more of one that is here, or less: the one is updated, the other kept', () => {
    // What this phone had before its edit is in the edited record.
    const first = { ...NONE, cars: [renamed('First', '2026-03-01T08:00:00.000Z')] };
    expect(merge(first, { ...NONE, cars: [car] }).counts).toEqual({ added: 0, updated: 0, same: 0, kept: 1 });
    expect(merge({ ...NONE, cars: [car] }, first).counts).toEqual({ added: 0, updated: 1, same: 0, kept: 0 });
  });

  it('that two phones told differently are told by store and id', () => {
    const both = merge(
      { ...NONE, cars: [renamed('Here', '2026-03-01T08:00:00.000Z')], moves: [here] },
      { ...NONE, cars: [renamed('There', '2026-03-01T09:00:00.000Z')], moves: [there] },
    ).both;
    expect(both.map(({ store }) => store)).toEqual(['cars', 'moves']);
    expect(both[0]?.id).toBe(car.id);
    expect(both[1]?.id.startsWith(move.id)).toBe(true);
  });
});

describe('the same piece by piece', () => {
  it('says what each record was before, and asks each store of which there is something once', async () => {
    const asked: StoreName[] = [];
    const mine = renamed('Mine', '2026-03-01T08:00:00.000Z');
    const present = { ...frozenRecords, cars: [mine], drafts: [] };
    const theirs = renamed('Theirs', '2026-03-01T09:00:00.000Z');
    const piece = { ...NONE, cars: [theirs], drafts: [draft('new', '1')] };
    const merged = await mergePiece(
      transactionOn(present, (store) => asked.push(store)),
      piece,
    );
    expect(asked).toEqual(['cars', 'drafts']);
    expect(merged.changes.map(({ store, id, before }) => [store, id, before])).toEqual([
      ['cars', car.id, mine],
      ['drafts', 'new', undefined],
    ]);
    expect(merged.entries).toEqual(merged.changes.map(({ store, record }) => [store, record]));
    const { changes: _, ...told } = merged;
    expect(told).toEqual(merge(present, piece));
  });

  it('reads what has the id that a second content goes under: the third time it is known', async () => {
    const once = await mergePiece(transactionOn({ ...NONE, moves: [here] }), { ...NONE, moves: [there] });
    expect(once.counts.updated + once.counts.added).toBe(1);
    const moves = [...new Map([here, ...once.entries.map(([, one]) => one)].map((one) => [one.id, one])).values()];
    expect(moves).toHaveLength(2);
    const present = { ...NONE, moves: moves as MoveRecord[] };
    for (const again of [here, there]) {
      const { changes, counts } = await mergePiece(transactionOn(present), { ...NONE, moves: [again] });
      expect(changes).toEqual([]);
      expect(counts.same + counts.kept).toBe(1);
    }
  });

  it('is nothing of nothing', async () => {
    const { entries, changes, counts, both } = await mergePiece(transactionOn(frozenRecords), NONE);
    expect([entries, changes, both]).toEqual([[], [], []]);
    expect(counts).toEqual({ added: 0, updated: 0, same: 0, kept: 0 });
  });
});
