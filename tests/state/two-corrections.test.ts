/** A reading that two phones corrected: both are there, one holds, the moves of both count, and a person decides once. */
import { beforeEach, describe, expect, it } from 'vitest';
import { keepDraft, records } from '../../app/state/records.ts';
import { differencesOf, otherCorrections, takeCorrection } from '../../app/state/two-corrections.ts';
import { visitView } from '../../app/state/visits.ts';
import { merge } from '../../app/store/merge.ts';
import { family, madeApart } from '../../core/records/rounds.ts';
import type { MoveRecord, ReadingRecord, Stores } from '../../core/records/stored.ts';
import { readStores } from '../../core/records/stored-schema.ts';
import { typedApart } from '../../core/records/typed-apart.ts';
import { chosen, edited } from '../../core/records/versions.ts';
import { draft, frozenRecords } from '../store/records.ts';

const first = frozenRecords.readings[0] as ReadingRecord;
const at = (hour: number): string => `2026-03-01T${hour}:00:00.000Z`;
const corrected = (id: string, hour: number, camber: number, replaces = first.id): ReadingRecord => {
  const LF = { ...first.reading.LF, camber };
  return { ...first, id, at: at(hour), replaces, reading: { ...first.reading, LF } };
};
const here = corrected('here', 10, -0.4);
const there = corrected('there', 11, -0.55);
const made: MoveRecord = {
  ...(frozenRecords.moves[0] as MoveRecord),
  ...{ id: 'made', visitId: first.visitId, readingId: here.id, at: at(12) },
};
const phone = (...readings: ReadingRecord[]): Stores => ({
  ...frozenRecords,
  readings: [first, ...readings],
  moves: [made],
});

const view = () => visitView(records.value, first.visitId)!;
const round = () => view().rounds[0]!;
beforeEach(() => {
  records.value = phone(here, there) as typeof records.value;
});

describe('two corrections of one reading', () => {
  it('are one round with the figures of the later one, and the moves that were made on either', () => {
    expect(view().rounds).toHaveLength(1);
    expect(round().record).toBe(there);
    expect(round().moves).toEqual([made]);
    expect(otherCorrections(view(), round())).toEqual([here]);
    expect(differencesOf(view(), there, here)).toEqual([{ what: 'LF camber', inUse: '−0°33′', other: '−0°24′' }]);
  });

  it.each([
    ['the other', here],
    ['this one', there],
  ])('of which %s is taken: it holds, all stay in the records, nobody is asked again', (_, taken) => {
    takeCorrection(view(), round(), taken);
    expect(round().record).toMatchObject({ reading: taken.reading, replaces: there.id, over: [here.id] });
    expect(records.value.readings).toHaveLength(4);
    expect(round().moves).toEqual([made]);
    expect(otherCorrections(view(), round())).toEqual([]);
    expect(readStores(JSON.parse(JSON.stringify(records.value))).aside).toEqual([]);
  });

  it('that say the same are no two', () => {
    const twin = { ...here, id: 'twin' };
    records.value = phone(here, twin) as typeof records.value;
    expect(otherCorrections(view(), round())).toEqual([]);
  });

  it('are told of again when the one that was not taken is corrected once more', () => {
    takeCorrection(view(), round(), there);
    const more = corrected('more', 13, -0.7, here.id);
    records.value = { ...records.value, readings: [...records.value.readings, more] } as typeof records.value;
    expect(otherCorrections(view(), round())).toEqual([more]);
  });

  it('come out of two phones the same, whichever comes to the other', () => {
    const [a, b] = [phone(here), phone(there)];
    const forth = merge(a as never, b as never).entries.filter(([store]) => store === 'readings');
    const back = merge(b as never, a as never).entries.filter(([store]) => store === 'readings');
    expect([forth, back]).toEqual([[['readings', there]], [['readings', here]]]);
  });
});

describe('records that correct one another', () => {
  const chain = [
    { id: 'c', replaces: 'b' },
    { id: 'a' },
    { id: 'b', replaces: 'a' },
    { id: 'd', replaces: 'a' },
    { id: 'x' },
  ];
  it.each(['a', 'b', 'c', 'd'])('are one family, seen from %s', (id) => {
    const ids = family(chain, chain.find((one) => one.id === id)!).map((one) => one.id);
    expect(ids).toEqual(['c', 'a', 'b', 'd']);
  });

  it('in a circle are one too, and those of what is not here hold each by itself', () => {
    const circle = [
      { id: 'a', replaces: 'b' },
      { id: 'b', replaces: 'a' },
      { id: 'c', replaces: 'a' },
    ];
    expect(family(circle, circle[2]!)).toEqual(circle);
    const orphans = [
      { id: 'a', replaces: 'gone' },
      { id: 'b', replaces: 'gone' },
    ];
    expect(madeApart(orphans, orphans[1]!)).toEqual([]);
  });
});

describe('a draft that another phone has too', () => {
  const id = `reading:${first.visitId}`;
  const typed = (text: string, hour: number) => ({ ...draft(id, text), changed: at(hour) });
  const both = () => {
    const [store] = merge(
      { ...frozenRecords, drafts: [typed('-0.4', 10)] },
      { ...frozenRecords, drafts: [typed('-0.55', 11)] },
    ).entries.filter(([name]) => name === 'drafts');
    return store?.[1] as ReturnType<typeof draft>;
  };

  it('shows what the other has typed, until somebody decides', () => {
    expect(both().texts).toEqual({ 'LF.camber': '-0.55' });
    expect(typedApart(both()).map(({ texts }) => texts)).toEqual([{ 'LF.camber': '-0.4' }]);
    for (const taken of [both(), typedApart(both())[0]!]) {
      const after = chosen(both(), taken, at(12));
      expect(after.texts).toEqual(taken.texts);
      expect(typedApart(after)).toEqual([]);
    }
  });

  it('does not ask again at the next digit', () => {
    records.value = { ...frozenRecords, drafts: [chosen(both(), both(), at(12))] } as typeof records.value;
    keepDraft(id, { 'LF.camber': '-0.552' }, undefined);
    expect(typedApart(records.value.drafts[0]!)).toEqual([]);
  });

  it('is no other for what was typed on the way', () => {
    const way = edited(typed('-0.', 9), typed('-0.55', 11), at(11));
    expect(typedApart({ ...way, past: {} })).toEqual([]);
  });
});
