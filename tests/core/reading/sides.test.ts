/** Which side a hint is about, and which wheel is held against which. */
import { describe, expect, it, test } from 'vitest';
import type { Spec } from '../../../core/contract.ts';
import { assess } from '../../../core/index.ts';

const SPEC: Spec = { front: { camber: { low: -0.5, high: 0.5 } } };
const GOOD = { camber: 0, sai: 12, caster: 4 };

const hintsOf = (left: object, right: object, kind = 'double-wishbone', spec = SPEC) =>
  assess({ LF: left, RF: right }, spec, { kinds: { front: kind } }).hints;
const placesOf = (...given: Parameters<typeof hintsOf>) => hintsOf(...given).map(({ where }) => where);

describe('camber and SAI together', () => {
  test.each([
    ['double-wishbone', -2, 14, 'the upper arm'],
    ['double-wishbone', 2, 10, 'the lower arm'],
    ['double-wishbone', 2, 12, 'the knuckle or spindle'],
    ['strut', -2, 12, 'the knuckle or strut'],
    ['beam-front', -2, 14, 'the axle beam'],
    ['beam-front', -2, 12, 'the spindle'],
  ])('of the left wheel or of the right one of a %s: camber %d and SAI %d are %s', (kind, camber, sai, part) => {
    const bent = { camber, sai, caster: 4 };
    const [left, right] = [hintsOf(bent, GOOD, kind), hintsOf(GOOD, bent, kind)];
    expect([...left, ...right].map(({ where }) => where)).toEqual(['LF', 'RF']);
    for (const { text } of [...left, ...right]) expect(text).toContain(part);
  });

  it('are held against the other wheel, whatever both are', () => {
    // Both lean in; the left one 2° less than the right, which is in its window.
    const spec: Spec = { front: { camber: { low: -3.5, high: -1.5 } } };
    const [hint] = hintsOf({ camber: -0.5, sai: 10 }, { camber: -2.5, sai: 12 }, 'strut', spec);
    expect(hint?.text).toContain('the lower arm, or the tower, out at the top');
  });

  it('say nothing where one side was not measured, or no row of the table fits', () => {
    expect(hintsOf({ camber: 3, sai: 10 }, {})).toEqual([]);
    expect(hintsOf(GOOD, { camber: 3, caster: 4 })).toEqual([]);
    expect(hintsOf({ camber: 3, caster: 4 }, GOOD)).toEqual([]);
    // Camber alone off, by less than makes the sum strange.
    expect(hintsOf({ camber: 0.7, sai: 12, caster: 4 }, GOOD)).toEqual([]);
  });

  it('are of the side whose camber is out, not another angle of it', () => {
    const spec: Spec = { front: { ...SPEC.front, toe: { low: 0, high: 0.1 } } };
    const bent = { camber: 2, sai: 10, caster: 4, toe: 0 };
    expect(placesOf(bent, { ...GOOD, toe: 9 }, 'strut', spec)).toEqual(['LF']);
    expect(placesOf({ ...GOOD, toe: 9 }, bent, 'strut', spec)).toEqual(['RF']);
    const caster: Spec = { front: { caster: { low: 3, high: 5 } } };
    expect(placesOf({ camber: 2, sai: 12, caster: 4 }, { ...GOOD, caster: 5.5 }, 'strut', caster)).toEqual([
      ...['front', 'front'],
    ]);
  });
});

describe('caster side to side', () => {
  test.each([
    [5.01, 1],
    [2.99, 1],
    [5, 0],
    [3, 0],
  ])('left %d against 4: %d hint', (caster, count) => {
    expect(hintsOf({ caster }, { caster: 4 })).toHaveLength(count);
  });

  it('says nothing where one side was not measured', () => {
    expect(hintsOf({ caster: 9 }, {})).toEqual([]);
    expect(hintsOf({}, { caster: 9 })).toEqual([]);
  });
});
