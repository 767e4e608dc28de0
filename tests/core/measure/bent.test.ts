/** What may be bent, beyond the two sides against each other. The table is that of trade practice, from memory. */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Reading, Spec } from '../../../core/contract.ts';
import { adjustersOf, type BentMeasures, solveCorner, whatIsBent } from '../../../core/index.ts';
import { carFile } from '../records/fixture.ts';

const SPEC: Spec = { front: { camber: { low: -0.5, high: 0.5 } } };
const SAI = { low: 11.5, high: 12.5 };
const GOOD = { camber: 0, sai: 12, caster: 4 };
const find = (reading: Reading, measures: BentMeasures, kind = 'strut') =>
  whatIsBent(reading, SPEC, measures, { kinds: { front: kind } });

describe('against the maker’s', () => {
  test.each([
    ['double-wishbone', 2, 10, 'lower-arm'],
    ['double-wishbone', -2, 14, 'upper-arm'],
    ['strut', -2, 14, 'tower-in'],
    ['strut', 2, 12, 'knuckle-or-strut'],
    ['beam-front', 2, 12, 'spindle'],
    ['beam-front', 2, 10, 'axle-beam'],
  ])('%s, both wheels camber %d, SAI %d: %s, though the sides are alike', (kind, camber, sai, look) => {
    const wheel = { camber, sai, caster: 4 };
    const found = find({ LF: wheel, RF: wheel }, { sai: SAI }, kind);
    expect(found).toEqual([
      expect.objectContaining({
        where: 'LF',
        kind: 'against-maker',
        look,
        text: expect.stringMatching(/look at .*\.$/),
      }),
      expect.objectContaining({ where: 'RF', kind: 'against-maker', look }),
    ]);
    expect(find({ LF: wheel, RF: wheel }, {}, kind)).toEqual([]);
  });

  it('nothing is said of a straight car', () => {
    expect(find({ LF: GOOD, RF: GOOD }, { sai: SAI, setback: 2, outer: { left: 18, right: 18.5 } })).toEqual([]);
  });

  it('a subframe that has gone to the right takes both feet with it: camber up on the left, down on the right', () => {
    const reading = { LF: { ...GOOD, camber: 1.2, sai: 10.8 }, RF: { ...GOOD, camber: -1.2, sai: 13.2 } };
    const found = find(reading, { sai: SAI });
    expect(found).toContainEqual(expect.objectContaining({ where: 'front', kind: 'shifted', to: 'right' }));
    const other = find({ LF: reading.RF, RF: reading.LF }, { sai: SAI });
    expect(other).toContainEqual(expect.objectContaining({ kind: 'shifted', to: 'left' }));
    // On two arms the joints above go with it too.
    expect(find(reading, { sai: SAI }, 'double-wishbone').some(({ kind }) => kind === 'shifted')).toBe(false);
  });
});

describe('a wheel that is further back', () => {
  test.each([
    [12, 'RF'],
    [-12, 'LF'],
  ])('setback of %d mm: %s', (setback, where) => {
    const found = find({ LF: GOOD, RF: GOOD }, { setback });
    expect(found).toEqual([expect.objectContaining({ where, kind: 'moved-back', length: 12 })]);
    expect(found[0]!.text).toContain('12 mm further back');
  });
  it('is likelier where its caster is less', () => {
    const found = find({ LF: GOOD, RF: { ...GOOD, caster: 3.2 } }, { setback: 12 });
    expect(found[0]).toMatchObject({ casterLow: true, text: expect.stringContaining('its caster is less') });
  });
  it('by 5 mm means nothing', () => expect(find({ LF: GOOD, RF: GOOD }, { setback: 5 })).toEqual([]));
});

describe('toe-out on turns', () => {
  it('is held against the maker’s, wheel by wheel', () => {
    const found = find({}, { outer: { left: 18.2, right: 15.9 }, makersOuter: 18 });
    expect(found).toEqual([
      expect.objectContaining({ where: 'RF', kind: 'turns', against: 'maker', by: expect.closeTo(-2.1, 9) }),
    ]);
    expect(found[0]!.text).toContain('steering arms');
  });
  it('or against the other side', () => {
    expect(find({}, { outer: { left: 18.2, right: 15.9 } })).toEqual([
      expect.objectContaining({ where: 'front', kind: 'turns', against: 'other-side', by: expect.closeTo(2.3, 9) }),
    ]);
  });
  it('is refused where it can be no angle', () => {
    expect(() => find({}, { outer: { left: 99, right: 16 } })).toThrow('outer.left: 99');
    expect(() => find({}, { setback: 900 })).toThrow('setback: 900');
    expect(() => find({}, { sai: { low: 12, high: 11 } })).toThrow('sai');
  });
});

describe('with the adjusters’ own effect taken out first', () => {
  const { car: given, spec = {} } = carFile('tarn-gt.json');
  const pack = { kind: 'shim-pack', direction: [0, 1, 0], sizes: [1], max: 12, reference: 0 };
  const adjusters = ['upperFront', 'upperRear'].map((at) => ({ ...pack, id: at, at }) as unknown as Adjuster);
  const car = { ...given, front: { ...given.front, adjusters } };
  const settings = Object.fromEntries(adjustersOf(car, 'LF').map((one) => [one.id, one.reference]));
  const stands = solveCorner(car.front.suspension, car.front.adjusters, settings);
  if (!stands.reachable) throw new Error('no pose');
  const maker = { low: stands.sai! - 0.5, high: stands.sai! + 0.5 };
  const packs = car.front.adjusters.filter(({ kind }) => kind === 'shim-pack');

  it('a car whose packs are full is not bent; without knowing of them it would look so', () => {
    const full = { ...settings, ...Object.fromEntries(packs.map(({ id, max }) => [id, max])) };
    const leaning = solveCorner(car.front.suspension, car.front.adjusters, full);
    if (!leaning.reachable) throw new Error('no pose');
    const wheel = { camber: leaning.camber, sai: leaning.sai!, caster: leaning.caster! };
    const reading = { LF: wheel, RF: wheel };
    const windows = { ...spec, front: { camber: { low: stands.camber - 0.5, high: stands.camber + 0.5 } } };
    expect(Math.abs(leaning.camber - stands.camber)).toBeGreaterThan(1);
    const both = { LF: full, RF: full };
    expect(whatIsBent(reading, windows, { sai: maker }, { car, settings: both })).toEqual([]);
    expect(whatIsBent(reading, windows, { sai: maker }, { kinds: { front: car.front.suspension.kind } })).not.toEqual(
      [],
    );
    // Of unknown place nothing is said against the maker's.
    const unknown = packs.flatMap(({ id }) => [
      { corner: 'LF', adjuster: id } as const,
      { corner: 'RF', adjuster: id } as const,
    ]);
    const unsure = whatIsBent(reading, windows, { sai: maker }, { car, settings: both, unknown });
    expect(unsure.filter(({ kind }) => kind === 'against-maker')).toEqual([]);
  });
});
