import { type GenericSchema, safeParse } from 'valibot';
import { describe, expect, it, test } from 'vitest';
import { withUnit } from '../../../core/adjuster/ask.ts';
import { chartPair } from '../../../core/adjuster/chart-pair.ts';
import {
  base,
  direction,
  number,
  positive,
  range,
  stamped,
  unitDirection,
  vector,
  wholeMarks,
} from '../../../core/adjuster/fields.ts';
import { adjustersOfSide, sidesOf } from '../../../core/adjuster/of-corner.ts';
import type { Axle } from '../../../core/contract.ts';
import { randomSuspension, rod, shims, stream } from '../../tools/random-cars.ts';

const takes = (schema: GenericSchema, value: unknown) => safeParse(schema, value).success;
const refusal = (schema: GenericSchema, value: unknown) => safeParse(schema, value).issues?.[0]?.message;

describe('fields of adjusters', () => {
  test.each<[string, GenericSchema, readonly unknown[], readonly unknown[]]>([
    ['a number', number(-2, 3, 'mm'), [-2, 0, 3], [-2.01, 3.01, Number.NaN, Number.POSITIVE_INFINITY, '1', null]],
    ['a number above zero', positive(3, 'mm'), [1e-9, 3], [0, -1, 3.01, Number.POSITIVE_INFINITY, '1']],
    ['a text', base('slide').name.wrapped, ['a', 'a'.repeat(400)], ['', 'a'.repeat(401), 1]],
    ['a vector', vector, [[-10000, 0, 10000]], [[0, 0], [10001, 0, 0], [0, -10001, 0], [0, 0, 10001], 0]],
    [
      'a direction',
      direction,
      [
        [0, 0, 1e-8],
        [-3, 0, 0],
      ],
      [
        [0, 0, 0],
        [1e-10, 0, 0],
        [0, 1],
        [10001, 0, 0],
      ],
    ],
    [
      'a range',
      range(5, 'mm'),
      [
        [-5, 5],
        [0, 1],
      ],
      [[1, 1], [2, 1], [-6, 0], [0, 6], [1], 'all', null],
    ],
    ['a stamp', stamped, ['M', 3, -1], ['', Number.NaN, null]],
    ['marks', wholeMarks, [2, 24, 720], [1, 721, 2.5, '24', Number.NaN]],
  ])('%s', (_, schema, good, bad) => {
    expect(good.filter((value) => !takes(schema, value))).toEqual([]);
    expect(bad.filter((value) => takes(schema, value))).toEqual([]);
    // What is refused is told what is allowed, in the field's own words.
    for (const value of bad) expect(refusal(schema, value)).not.toMatch(/^Invalid/);
  });

  it('takes a range as windows are written', () => {
    expect(safeParse(range(5, 'mm'), { low: -1, high: 2 }).output).toEqual([-1, 2]);
    expect(takes(range(5, 'mm'), { low: -1 })).toBe(false);
  });

  test.each([
    ['id', '', 'clamp'],
    ['name', '', undefined],
    ['kind', 'other', 'slide'],
    ['torque', 'x'.repeat(401), 'x'.repeat(400)],
    ['effort', -1, 0],
    ['effort', 1001, 1000],
    ['tolerance', -0.1, 0],
    ['tolerance', 101, 100],
  ] as const)('every adjuster has a %s: %j is refused, %j is not', (field, bad, good) => {
    const schema = base('slide')[field] as GenericSchema;
    expect(takes(schema, bad)).toBe(false);
    expect(takes(schema, good)).toBe(true);
  });

  it('makes a direction of any length unit', () => {
    expect(unitDirection([0, -3, 4])).toEqual([0, -0.6, 0.8]);
    expect(Math.hypot(...unitDirection([1, 2, 3]))).toBeCloseTo(1, 14);
  });

  it('says a unit once', () => {
    expect(withUnit('Travel', 'mm')).toBe('Travel, mm');
    expect(withUnit('Travel in MM', 'mm')).toBe('Travel in MM');
    expect(withUnit('Marks', '')).toBe('Marks');
  });
});

describe('adjusters of an axle', () => {
  const random = stream(4);
  const suspension = randomSuspension(random, 'beam-linked');
  const lateral = rod('lateral', 'rodBody');
  const upper = rod('upper', 'upperBody');
  const pack = shims(random, 'pack', 'rodAxle');
  const axle: Axle = { suspension, adjusters: [upper, lateral, pack], steered: false };

  it('that work on what a rigid axle has once stand with its left side', () => {
    expect(adjustersOfSide(axle, true)).toEqual([upper, lateral, pack]);
    expect(adjustersOfSide(axle, false)).toEqual([upper]);
    const wishbone = { ...axle, suspension: randomSuspension(random, 'double-wishbone') };
    expect(adjustersOfSide(wishbone, false)).toHaveLength(3);
  });

  it('stand on both sides alike unless the right one was given', () => {
    const right = { ...suspension, camber: 1 };
    expect(sidesOf(axle).map((side) => side.suspension)).toEqual([suspension, suspension]);
    expect(sidesOf({ ...axle, rightSuspension: right }).map((side) => side.suspension)).toEqual([suspension, right]);
    expect(sidesOf(axle).map((side) => side.adjusters.length)).toEqual([3, 1]);
  });

  it('are those of the right list on the right, none where it is empty, and once what the axle has once', () => {
    const own = rod('own', 'upperBody');
    expect(adjustersOfSide({ ...axle, rightAdjusters: [own] }, false)).toEqual([own]);
    expect(adjustersOfSide({ ...axle, rightAdjusters: [own] }, true)).toEqual([upper, lateral, pack]);
    expect(adjustersOfSide({ ...axle, rightAdjusters: [] }, false)).toEqual([]);
    expect(adjustersOfSide({ ...axle, rightAdjusters: [lateral, upper] }, false)).toEqual([upper]);
    expect(sidesOf({ ...axle, rightAdjusters: [own] })[1]).toEqual({ suspension, adjusters: [own] });
  });

  it('that a chart is about are the first two that are no rods', () => {
    const pairOf = (...adjusters: Axle['adjusters']) => chartPair({ ...axle, adjusters });
    const [a, b, c] = ['a', 'b', 'c'].map((id) => shims(random, id, 'upperBody'));
    expect(pairOf(upper, a!, b!, c!)).toEqual(['a', 'b']);
    expect(pairOf(upper, a!)).toEqual(['upper', 'a']);
    expect(pairOf(a!)).toBeUndefined();
    expect(pairOf()).toBeUndefined();
  });
});
