/** Published rows: caster by sweep, toe as a length, tie rods, what a camber and SAI pattern points to. */
import { describe, expect, it, test } from 'vitest';
import { toeFromRimDistances } from '../../core/measure/distances.ts';
import { casterFromSweep, saiFromSweep } from '../../core/measure/sweep.ts';
import { lengthToToe, toeToLength } from '../../core/units/toe.ts';

describe('caster from a sweep: in 20°, zero, out 20° (method: US Navy NAVEDTRA 14273)', () => {
  // Rows worked out by rotation about the steering axis, to 1e-4°.
  test.each([
    { caster: 4, sai: 12, camberOut: 1.6085, camberIn: -1.1339 },
    { caster: 7, sai: 14, camberOut: 2.2748, camberIn: -2.5321 },
    { caster: 5, sai: 6, camberOut: 2.0807, camberIn: -1.3494 },
  ])('caster $caster, SAI $sai', ({ caster, sai, camberOut, camberIn }) => {
    expect(Math.abs(casterFromSweep({ camberOut, camberIn, steer: 20, sai }) - caster)).toBeLessThan(3e-4);
  });

  test.each([
    [10, 2.8794],
    [15, 1.9319],
    [20, 1.4619],
  ])('at ±%d° a small camber change counts %d times', (steer, factor) => {
    expect(casterFromSweep({ camberOut: 0.005, camberIn: -0.005, steer }) / 0.01).toBeCloseTo(factor, 4);
    expect(saiFromSweep({ rollOut: 0.005, rollIn: -0.005, steer }) / 0.01).toBeCloseTo(factor, 4);
  });
});

describe('toe as a length at its diameter', () => {
  test.each([
    // Makers' pairs of a length and an angle; the diameter is implied by the pair.
    ['Toyota Supra 1997 rear, total 3 mm ↔ 18′', 3, 573, 18],
    ['Toyota Supra 1997 rear, tolerance 2 mm ↔ 12′', 2, 573, 12],
    ['Subaru Outback 2012, 3 mm ↔ 15′', 3, 687.5, 15],
    ['Mazda MX-5 2016 at the tyre, 4 mm ↔ 20′', 4, 687.5, 20],
    ['Mazda MX-5 2016 at the rim, 2.8 mm ↔ 20′', 2.8, 481.3, 20],
  ])('%s', (_, mm, diameter, minutes) => {
    expect(Math.abs(lengthToToe(mm, diameter) * 60 - minutes)).toBeLessThan(0.05);
    expect(Math.abs(toeToLength(minutes / 60, diameter) - mm)).toBeLessThan(0.01);
  });

  it.each([
    ['3 ± 2 mm and 18′ ± 12′ (Toyota Supra 1997 rear)', [1, 5], [6, 30], 573],
    [
      '4 mm at the tyre and 2.8 mm at the rim, both 20′ (Mazda MX-5 2016): the diameters are as the lengths',
      [2.8],
      [20],
      481.3,
    ],
  ] as const)('a window: %s', (_, lengths, minutes, diameter) => {
    lengths.forEach((mm, i) => {
      // A total is the sum of both wheels: a tape across reads the whole of it.
      const found = toeFromRimDistances({ front: 1500, rear: 1500 + mm, diameter });
      expect(Math.abs(found * 60 - minutes[i]!)).toBeLessThan(0.1);
    });
    expect(4 / 2.8).toBeCloseTo(687.5 / 481.3, 2);
  });

  it.each([404, 728])('a diameter of %d mm, the least and the most that makers’ pairs imply, is taken', (diameter) => {
    const length = toeToLength(0.25, diameter);
    expect(length).toBeCloseTo((diameter * 0.25 * Math.PI) / 180, 3);
    expect(lengthToToe(length, diameter)).toBeCloseTo(0.25, 12);
  });

  it('1° is 17.455 mm a metre by the tangent and 17.452 by the sine that a diameter calls for', () => {
    expect(toeToLength(1, 1000)).toBeCloseTo(17.452, 3);
  });

  it('of rims that differ by a whole diameter is 60°, each wheel at 30°', () => {
    expect(toeFromRimDistances({ front: 200, rear: 700, diameter: 500 })).toBeCloseTo(60, 10);
  });

  it('is + (toe-in) when the tape reads less ahead of the hubs', () => {
    // Sum of two wheels with 9′ each at the Supra's implied 573 mm: 3 mm in all.
    const found = toeFromRimDistances({ front: 1500, rear: 1503, diameter: 573 });
    expect(Math.abs(found * 60 - 18)).toBeLessThan(0.01);
    expect(toeFromRimDistances({ front: 1503, rear: 1500, diameter: 573 })).toBeCloseTo(-found, 12);
  });
});
