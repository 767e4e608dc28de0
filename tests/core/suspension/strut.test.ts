import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../core/contract.ts';
import { InputError, solveCorner } from '../../../core/index.ts';
import { apart, poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(12), 'strut');
const top = suspension.points.strutTop as Vec3;

/** mm from a point to the line through two others. */
function fromLine(p: Vec3, a: Vec3, b: Vec3): number {
  const d = [0, 1, 2].map((i) => b[i]! - a[i]!);
  const v = [0, 1, 2].map((i) => p[i]! - a[i]!);
  const along = d.reduce((sum, x, i) => sum + x * v[i]!, 0) / Math.hypot(...d);
  return Math.sqrt(v.reduce((sum, x) => sum + x * x, 0) - along * along);
}

describe('a strut', () => {
  it('stands as it was entered, its steering axis from the lower ball joint to the top', () => {
    const { camber, toe, caster = NaN } = poseOf(suspension);
    const ball = suspension.points.lowerBall as Vec3;
    expect([camber, toe]).toEqual([expect.closeTo(suspension.camber, 10), expect.closeTo(suspension.toe, 10)]);
    expect(Math.tan((caster * Math.PI) / 180)).toBeCloseTo((ball[0] - top[0]) / (top[2] - ball[2]), 10);
  });

  it.each([-40, -10, 25, 60])('slides and turns in its top: at %d mm of travel all else is rigid', (travel) => {
    const { points } = poseOf(suspension, [], {}, { travel, rack: 6 });
    expect(points.strutTop).toEqual(top);
    const upright = ['lowerBall', 'tieOuter', 'wheelCentre'];
    for (const name of upright) {
      // Every point of the knuckle is as far from the strut's line as it was, and from the strut's lower end.
      const was = fromLine(suspension.points[name] as Vec3, top, suspension.points.strutLower as Vec3);
      expect(fromLine(points[name] as Vec3, points.strutTop as Vec3, points.strutLower as Vec3)).toBeCloseTo(was, 7);
      expect(apart(points[name], points.strutLower)).toBeCloseTo(
        apart(suspension.points[name], suspension.points.strutLower),
        8,
      );
    }
    // Bump shortens it.
    const length = apart(points.strutTop, points.strutLower) - apart(top, suspension.points.strutLower);
    expect(Math.sign(length)).toBe(-Math.sign(travel));
  });

  it('has no upper arm to put a shim under, and no seat for a sleeve', () => {
    const shim = {
      id: 's',
      kind: 'shim-pack',
      at: 'upperFront',
      direction: [0, 1, 0],
      sizes: [1],
      max: 4,
      reference: 0,
    };
    expect(() => solveCorner(suspension, [shim], {})).toThrow('one of strutTop, strutLower, lowerFront');
    const sleeve = { id: 's', kind: 'offset-sleeve', degrees: 1, marks: 8, reference: 0 };
    expect(() => solveCorner(suspension, [sleeve], {})).toThrow(InputError);
  });
});
