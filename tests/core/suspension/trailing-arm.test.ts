import { describe, expect, it, test } from 'vitest';
import type { Suspension, Vec3 } from '../../../core/contract.ts';
import { solveCorner } from '../../../core/index.ts';
import { apart, poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(14), 'trailing-arm');
/** An arm that swings about a line straight across the car. */
const straight: Suspension = {
  kind: 'trailing-arm',
  camber: -1,
  toe: 0.25,
  points: { pivotInner: [-2100, 250, 300], pivotOuter: [-2100, 560, 300], wheelCentre: [-2500, 740, 300] },
};
const bracket = (at: string, direction: Vec3) => ({
  id: 'bracket',
  kind: 'slide',
  step: 1,
  range: [-10, 10],
  reference: 0,
  at,
  direction,
});

describe('a trailing arm', () => {
  test.each([-50, -20, 35, 60])('swings about its bush line: at %d mm each bush is as far away as before', (travel) => {
    const { points } = poseOf(suspension, [], {}, { travel });
    for (const pivot of ['pivotInner', 'pivotOuter']) {
      expect(points[pivot]).toEqual(suspension.points[pivot]?.map((x) => expect.closeTo(x, 9)));
      expect(apart(points[pivot], points.wheelCentre)).toBeCloseTo(
        apart(suspension.points[pivot], suspension.points.wheelCentre),
        8,
      );
    }
  });

  it('straight across the car changes neither camber nor toe by much in bump: both turn with the arm', () => {
    const at = poseOf(straight, [], {}, { travel: 30 });
    // The spin axis turns about y by asin(30/400): what was toe shows partly as camber.
    const swing = Math.asin(30 / 400);
    const [c, t] = [(-1 * Math.PI) / 180, (0.25 * Math.PI) / 180];
    const [x, z] = [Math.cos(c) * Math.sin(t), -Math.sin(c)];
    const turned = { x: x * Math.cos(swing) + z * Math.sin(swing), z: z * Math.cos(swing) - x * Math.sin(swing) };
    expect(at.camber).toBeCloseTo((-Math.asin(turned.z) * 180) / Math.PI, 9);
    expect(at.toe).toBeCloseTo((Math.atan2(turned.x, Math.cos(c) * Math.cos(t)) * 180) / Math.PI, 9);
  });

  test.each([-6, 2, 9])('its outer bracket forward by %d mm: toe by the turn of the bush line, in plan', (forward) => {
    const at = poseOf(straight, [bracket('pivotOuter', [1, 0, 0])], { bracket: forward });
    // The line from inner to outer bush, 310 mm long, turns; forward outside is toe-in.
    expect(at.toe - straight.toe).toBeCloseTo((Math.atan(forward / 310) * 180) / Math.PI, 8);
    expect(at.camber).toBeCloseTo(straight.camber, 8);
  });

  it('its outer bracket up: the wheel’s top leans in', () => {
    const up = poseOf(straight, [bracket('pivotOuter', [0, 0, 1])], { bracket: 5 });
    // All but what the 400 mm of arm behind the line give: the wheel centre's height is held.
    expect(Math.abs(up.camber - straight.camber + (Math.atan(5 / 310) * 180) / Math.PI)).toBeLessThan(0.01);
  });

  it('both brackets alike carry the wheel along and change no angle', () => {
    const both = ['pivotInner', 'pivotOuter'].map((at, i) => ({ ...bracket(at, [1, 0, 0]), id: `b${i}` }));
    const at = poseOf(suspension, both, { b0: 7, b1: 7 });
    expect(at.camber).toBeCloseTo(suspension.camber, 9);
    expect(at.toe).toBeCloseTo(suspension.toe, 9);
    expect(at.wheelCentre?.[0]).toBeCloseTo((suspension.points.wheelCentre?.[0] ?? NaN) + 7, 8);
  });

  it('has no caster, no rods and no strut', () => {
    expect(poseOf(suspension)).not.toHaveProperty('caster');
    const rod = {
      id: 'r',
      kind: 'threaded-rod',
      links: ['pivotInner'],
      lead: 1,
      stepTurns: 1,
      range: [-1, 1],
      reference: 0,
    };
    expect(() => solveCorner(suspension, [rod], {})).toThrow('adjusters[0].kind: "threaded-rod" is not allowed');
    const bolt = { id: 'c', kind: 'clamp-bolt', step: 1, range: [-1, 1], reference: 0 };
    expect(() => solveCorner(suspension, [bolt], {})).toThrow('this one needs a suspension with a strut');
  });
});
