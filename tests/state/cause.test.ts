/** A cause that is said yes to is in the records, and explains nothing any more; taken back, all is as it was. */
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { correctedIn, fitsTyping, saidNo, saidYes, takeBackYes } from '../../app/state/cause.ts';
import { records } from '../../app/state/records.ts';
import { visitFile } from '../../app/state/visit-file.ts';
import { type VisitView, visitView } from '../../app/state/visits.ts';
import type { Explanation, Reading, Settings } from '../../core/contract.ts';
import { expectReading, explanationOfFile } from '../../core/index.ts';
import { pack, wishboneWithin } from '../tools/learn-cars.ts';
import { rod } from '../tools/random-cars.ts';
import { frontCar, GAUGE } from '../tools/read-car.ts';

const car = frontCar(wishboneWithin(5), [
  pack('front', 'upperFront'),
  pack('rear', 'upperRear'),
  rod('rod', 'tieInner', 8),
]);
const FOUND: Reading = { LF: { camber: -1.1, caster: 2.6, toe: 0.42 } };
const at = (front: number, turns: number): { readonly LF: Settings } => ({ LF: { front, rear: 7.5, rod: turns } });
const [stood, asked] = [at(7.5, 0), at(12, 2)];
const typed = { 'LF.camber': '-1.10', 'LF.caster': '2.60', 'LF.toe': '0.42' };
const time = (minute: number): string => `2026-03-02T08:0${minute}:00.000Z`;
const move = (adjuster: 'front' | 'rod') => ({
  ...{ id: `moved-${adjuster}`, visitId: 'v', readingId: 'found', at: time(2), corner: 'LF' as const, adjuster },
  ...{ from: stood.LF[adjuster]!, to: asked.LF[adjuster]!, outcome: 'done' as const },
});

/** A visit in which the front pack was made and the rod not, or all was and a figure mistyped. */
function begin(reading: Reading): void {
  const record = (id: string, minute: number, read: Reading, settings: typeof stood) => ({
    ...{ id, visitId: 'v', at: time(minute), reading: read, settings, typed },
  });
  records.value = {
    ...{ drafts: [], preferences: [] },
    cars: [{ id: car.id, car, spec: {}, changed: time(0) }],
    visits: [{ id: 'v', carId: car.id, opened: time(0) }],
    readings: [record('found', 1, FOUND, stood), record('after', 3, reading, asked)],
    moves: [move('front'), move('rod')],
  };
}
const view = (): VisitView => visitView(records.value, 'v')!;
const causes = (): readonly Explanation[] =>
  explanationOfFile(visitFile(view(), view().rounds[1]!, []), { gauge: GAUGE });
const shown = (): unknown =>
  view().rounds.map(({ record, moves }) => ({
    ...record.reading,
    ...record.settings,
    moves: moves.map(({ adjuster, from, to }) => [adjuster, from, to]),
  }));

describe('a rod that was not turned', () => {
  beforeEach(() => begin(expectReading(car, FOUND, stood, at(12, 0))));

  it('is no cause any more once it is said yes to: the reading stands with the rod where it was', () => {
    const before = shown();
    const [first] = causes() as [Explanation];
    expect(first).toMatchObject({ cause: 'not-made', adjuster: { adjuster: 'rod' } });
    saidYes(view(), view().rounds[1]!, first);
    expect(view().rounds.map(({ record }) => record.settings)).toEqual([stood, at(12, 0)]);
    // The mark is taken back, as one that was touched by mistake.
    expect(view().rounds[0]!.moves.map(({ adjuster }) => adjuster)).toEqual(['front']);
    expect(view().rounds[1]!.record.reading).toEqual(records.value.readings[1]!.reading);
    expect(causes()[0]?.cause).toBe('noise');
    // What was there before is there still.
    expect(records.value.readings.map(({ id }) => id)).toContain('after');
    takeBackYes(view(), correctedIn(view(), view().rounds)!);
    expect(shown()).toEqual(before);
    expect(causes()[0]).toMatchObject({ cause: 'not-made', adjuster: { adjuster: 'rod' } });
    expect(correctedIn(view(), view().rounds)).toBeUndefined();
  });

  it('is kept as no cause where somebody has looked', () => {
    const [first] = causes() as [Explanation];
    saidNo(view(), view().rounds[1]!, first);
    expect(Object.values(view().visit.checks ?? {})).toEqual(['no']);
    expect(view().rounds).toHaveLength(2);
  });
});

describe('a figure with the wrong sign', () => {
  it('is as it was meant once it is said yes to, as it would have been typed, and what was typed stays', () => {
    const meant = expectReading(car, FOUND, stood, asked);
    const wrong = { LF: { ...meant.LF, camber: -(meant.LF?.camber ?? 0) } };
    begin(wrong);
    const [first] = causes() as [Explanation];
    expect(first).toMatchObject({ cause: 'sign', angle: 'camber', reading: 'after' });
    saidYes(view(), view().rounds[1]!, first);
    const { record } = view().rounds[1]!;
    expect(record.reading.LF?.camber).toBeCloseTo(meant.LF?.camber ?? Number.NaN, 12);
    expect(record.typed['LF.camber']).toBe((meant.LF?.camber ?? 0).toFixed(2).replace('-', '−'));
    expect(record.replaces).toBe('after');
    expect(causes()[0]?.cause).toBe('noise');
    takeBackYes(view(), correctedIn(view(), view().rounds)!);
    expect(view().rounds[1]!.record.reading).toEqual(wrong);
  });
});

it.each([
  ['angle', 'decimal', ['sign', 'digits', 'decimal']],
  ['mm', 'decimal', ['sign', 'decimal']],
  ['inch', 'decimal', ['sign', 'decimal']],
  ['inch', '32', ['sign']],
])('of toe in %s, %s, only what a hand can do to such a figure is a cause', (toe, toeParts, left) => {
  begin(FOUND);
  const preferences = [{ id: 'units', value: { toeParts }, changed: time(0) }] as const;
  const readings = records.value.readings.map((one) => ({ ...one, typed: { ...one.typed, 'unit:toe': toe } }));
  records.value = { ...records.value, preferences, readings };
  const causesOf = (angle: 'toe' | 'camber') =>
    (['sign', 'digits', 'decimal'] as const).map(
      (cause) => ({ cause, angle, corner: 'LF', reading: 'after', probability: 0.3, text: '' }) as Explanation,
    );
  const [, round] = view().rounds;
  const fits = (angle: 'toe' | 'camber') =>
    causesOf(angle)
      .filter((one) => fitsTyping(view(), round!, one))
      .map(({ cause }) => cause);
  expect(fits('toe')).toEqual(left);
  expect(fits('camber')).toHaveLength(3);
});
