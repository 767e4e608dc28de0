import { describe, expect, it, test } from 'vitest';
import type { Reading, Spec } from '../../../core/contract.ts';
import { assess } from '../../../core/reading/assess.ts';

const SPEC: Spec = { front: { camber: { low: -0.5, high: 0.5 } } };
const RIGHT = { camber: 0, sai: 12, caster: 4 };

/** A left front wheel that differs from a good right one. */
function hintsFor(camber: number, sai: number, kind?: string) {
  const reading: Reading = { LF: { camber, sai, caster: 4 }, RF: RIGHT };
  return assess(reading, SPEC, kind ? { kinds: { front: kind } } : {}).hints;
}

describe('camber and SAI together', () => {
  test.each([
    ['double-wishbone', 2, 10, 'the lower arm.'],
    ['double-wishbone', -2, 14, 'the upper arm.'],
    ['double-wishbone', -2, 12, 'the knuckle or spindle.'],
    ['strut', 2, 10, 'the lower arm, or the tower, out at the top.'],
    ['strut', -2, 14, 'the tower, in at the top.'],
    ['strut', 2, 12, 'the knuckle or strut.'],
    ['strut', 2, 14, 'the tower, in at the top, and the knuckle or strut.'],
    ['beam-front', 2, 12, 'the spindle.'],
    ['beam-front', 2, 10, 'the axle beam.'],
    ['beam-front', -2, 14, 'the axle beam.'],
    ['beam-front', -2, 12, 'the spindle.'],
    ['strut', -2, 12, 'the knuckle or strut.'],
    ['double-wishbone', 2, 12, 'the knuckle or spindle.'],
    [undefined, 2, 10, 'a pivot that has moved: an arm or the crossmember.'],
    [undefined, 2, 12, 'the knuckle or spindle.'],
  ])('%s, camber %d, SAI %d: look at %s', (kind, camber, sai, look) => {
    expect(hintsFor(camber, sai, kind)).toEqual([
      { where: 'LF', kind: 'pattern', text: expect.stringContaining(`look at ${look}`) },
    ]);
  });

  it('says nothing of a straight car, or without SAI', () => {
    expect(hintsFor(0.1, 12.2)).toEqual([]);
    expect(assess({ LF: { camber: 3 }, RF: { camber: 0 } }, SPEC).hints).toEqual([]);
  });

  it('looks at the right wheel when that one is out', () => {
    const reading: Reading = { LF: RIGHT, RF: { camber: -2, sai: 14, caster: 4 } };
    const [hint] = assess(reading, SPEC, { kinds: { front: 'double-wishbone' } }).hints;
    expect(hint).toMatchObject({ where: 'RF', kind: 'pattern', text: expect.stringContaining('the upper arm') });
  });

  it('says nothing where one side was not measured, or no row of the table fits', () => {
    expect(assess({ LF: { camber: 3, sai: 10 } }, SPEC).hints).toEqual([]);
    expect(assess({ LF: RIGHT, RF: { camber: 3, caster: 4 } }, SPEC).hints).toEqual([]);
    expect(assess({ LF: { camber: 3, caster: 4 }, RF: RIGHT }, SPEC).hints).toEqual([]);
    // Camber alone off, by less than makes the sum strange.
    expect(hintsFor(0.7, 12)).toEqual([]);
  });

  it('judges the side by its camber, not by another angle that is further out', () => {
    const spec: Spec = { front: { ...SPEC.front, toe: { low: 0, high: 0.1 }, caster: { low: 3, high: 5 } } };
    const left = { camber: 2, sai: 10, caster: 4, toe: 0 };
    const right = { camber: 0, sai: 12, caster: 4, toe: 9 };
    expect(assess({ LF: left, RF: right }, spec).hints).toMatchObject([{ where: 'LF', kind: 'pattern' }]);
    expect(assess({ LF: { ...left, toe: 9 }, RF: right }, spec).hints).toMatchObject([{ where: 'LF' }]);
  });

  it('does not choose a side by an angle that is not camber', () => {
    const spec: Spec = { front: { caster: { low: 3, high: 5 } } };
    const { hints } = assess({ LF: { camber: 2, sai: 12, caster: 5.5 }, RF: RIGHT }, spec);
    expect(hints.map(({ where, kind }) => [where, kind])).toEqual([
      ['front', 'pattern'],
      ['front', 'setback'],
    ]);
  });

  it('reads camber and SAI of the one wheel against the other, whatever both are', () => {
    // Both stand at negative camber; the left one 2° less than the right, which is in its window.
    const spec: Spec = { front: { camber: { low: -3.5, high: -1.5 } } };
    const hints = (camber: number, sai: number) =>
      assess({ LF: { camber, sai }, RF: { camber: -2.5, sai: 12 } }, spec, { kinds: { front: 'strut' } }).hints;
    expect(hints(-0.5, 10)[0]?.text).toContain('look at the lower arm, or the tower, out at the top.');
  });

  it('does not choose a side when both cambers are in', () => {
    expect(hintsFor(0.2, 14)).toEqual([
      { where: 'front', kind: 'pattern', text: 'Included angles differ by 2.20°: compare the two knuckles.' },
    ]);
  });
});

describe('caster side to side', () => {
  test.each([
    [5.2, 1],
    [2.8, 1],
    [5, 0],
    [4.9, 0],
  ])('left %d against 4: %d hint of setback', (caster, count) => {
    const { hints } = assess({ LF: { caster }, RF: { caster: 4 } }, {});
    expect(hints.filter(({ kind }) => kind === 'setback')).toHaveLength(count);
  });

  it('says nothing where one side was not measured', () => {
    expect(assess({ LF: { caster: 9 }, RF: {} }, {}).hints).toEqual([]);
    expect(assess({ RF: { caster: 9 } }, {}).hints).toEqual([]);
  });
});
