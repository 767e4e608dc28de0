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
    const [hint] = assess({ LF: RIGHT, RF: { camber: -2, sai: 14, caster: 4 } }, SPEC).hints;
    expect(hint).toMatchObject({ where: 'RF', kind: 'pattern' });
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
    [4.9, 0],
  ])('left %d against 4: %d hint of setback', (caster, count) => {
    const { hints } = assess({ LF: { caster }, RF: { caster: 4 } }, {});
    expect(hints.filter(({ kind }) => kind === 'setback')).toHaveLength(count);
  });
});
