/**
 * A strut's top plate and clamp bolt against plain trigonometry.
 *
 * The planar strut stands upright on its lower ball joint, whose height is the wheel's, so that the rack holds the ball
 * joint where it is; its rod ends on the axis of the turn, so that the rod does not steer it. What is left is one
 * triangle: ball joint, clamp, top.
 */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Suspension, Vec3 } from '../../core/contract.ts';
import { solveCorner } from '../../core/index.ts';
import { randomSuspension, stream } from '../tools/random-cars.ts';

const HEIGHT = 600;
const CLAMP = 220;
const BALL: Vec3 = [0, 700, 200];
const deg = (radians: number): number => (radians * 180) / Math.PI;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** In the front view, leaning in by `inboard` mm at its top; its rod ends on the x axis through the ball joint. */
const frontView = (inboard = 0, clamp = CLAMP): Suspension => ({
  kind: 'strut',
  points: {
    strutTop: [0, BALL[1] - inboard, BALL[2] + HEIGHT],
    strutLower: [0, BALL[1] - (inboard * clamp) / HEIGHT, BALL[2] + clamp],
    lowerFront: [150, 320, 200],
    lowerRear: [-150, 320, 200],
    lowerBall: BALL,
    tieInner: [-140, 340, 200],
    tieOuter: [-140, BALL[1], 200],
    wheelCentre: BALL,
  },
  camber: 0,
  toe: 0,
});
/** The same in the side view: its rod lies along the car and ends on the y axis through the ball joint. */
const sideView: Suspension = {
  ...frontView(),
  points: { ...frontView().points, tieInner: [-400, BALL[1] + 100, 200], tieOuter: [0, BALL[1] + 100, 200] },
};

const plate = (direction: Vec3): Adjuster => ({
  id: 'plate',
  kind: 'slide',
  at: 'strutTop',
  step: 1,
  range: [-20, 20],
  reference: 0,
  direction,
});
const clampBolt = { id: 'clamp', kind: 'clamp-bolt', step: 0.25, range: [-3, 3], reference: 0 };

function pose(suspension: Suspension, adjuster: Adjuster, position: number) {
  const solved = solveCorner(suspension, [adjuster], { [adjuster.id]: position });
  if (!solved.reachable) throw new Error(solved.message);
  return solved;
}

describe('the top plate of a planar strut', () => {
  const moves = [-15, -4, -0.5, 0, 1, 7.5, 20];

  test.each(moves)('upright, out by %d mm: camber atan(d/height), nothing else', (d) => {
    const at = pose(frontView(), plate([0, 1, 0]), d);
    expect(at.camber).toBeCloseTo(deg(Math.atan(d / HEIGHT)), 8);
    expect(at.sai).toBeCloseTo(-at.camber, 8);
    expect([at.toe, at.caster].every((angle) => Math.abs(angle ?? NaN) < 1e-8)).toBe(true);
  });

  test.each(moves)('back by %d mm: caster atan(d/height), nothing else', (d) => {
    const at = pose(sideView, plate([-1, 0, 0]), d);
    expect(at.caster).toBeCloseTo(deg(Math.atan(d / HEIGHT)), 8);
    expect([at.toe, at.camber, at.sai].every((angle) => Math.abs(angle ?? NaN) < 1e-8)).toBe(true);
  });

  test.each(moves)('leaning in by 140 mm, out by %d mm: the difference of the two angles', (d) => {
    const at = pose(frontView(140), plate([0, 1, 0]), d);
    const gained = Math.atan2(140, HEIGHT) - Math.atan2(140 - d, HEIGHT);
    expect(at.camber).toBeCloseTo(deg(gained), 8);
    expect(at.includedAngle).toBeCloseTo(deg(Math.atan2(140, HEIGHT)), 8);
  });
});

describe('the top plate of any strut that stands nearly upright', () => {
  test.each(Array.from({ length: 30 }, (_, i) => i + 1))('seed %i: about atan(d/height), camber and caster', (seed) => {
    const suspension = randomSuspension(stream(seed), 'strut');
    const { strutTop, lowerBall } = suspension.points as Record<'strutTop' | 'lowerBall', Vec3>;
    const height = strutTop[2] - lowerBall[2];
    const by = (direction: Vec3, angle: 'camber' | 'caster') =>
      (pose(suspension, plate(direction), 10)[angle] ?? NaN) - (pose(suspension, plate(direction), 0)[angle] ?? NaN);
    const rule = deg(Math.atan(10 / height));
    // The strut leans by up to 15° and its foot gives way a little.
    expect(Math.abs(by([0, 1, 0], 'camber') / rule - 1)).toBeLessThan(0.12);
    expect(Math.abs(by([-1, 0, 0], 'caster') / rule - 1)).toBeLessThan(0.12);
  });
});

describe('the clamp bolt of a planar strut whose top stays put', () => {
  const tilts = [-3, -1.25, -0.25, 0, 0.5, 2, 3];

  test.each(tilts)('clamped at the ball joint, tilted by %d°: camber is the tilt', (tilt) => {
    expect(pose(frontView(0, 0.01), clampBolt, tilt).camber).toBeCloseTo(tilt, 3);
  });

  test.each(tilts)('clamped above it, tilted by %d°: the tilt less the angle at the top, by the sine rule', (tilt) => {
    const atTop = Math.asin((CLAMP / HEIGHT) * Math.sin(rad(tilt)));
    const at = pose(frontView(), clampBolt, tilt);
    expect(at.camber).toBeCloseTo(tilt - deg(atTop), 8);
    // The steering axis runs from the ball joint to the top, and neither has moved: included angle takes it all.
    expect(at.sai).toBeCloseTo(0, 8);
    expect(at.includedAngle).toBeCloseTo(at.camber, 8);
    expect(at.toe).toBeCloseTo(0, 8);
  });

  it('by a cam bolt of given eccentricity and bolt spacing: tilt = asin(e·sin θ / spacing)', () => {
    const cam = { ...clampBolt, eccentricity: 1.5, spacing: 60, step: 15, range: [-90, 90] };
    for (const angle of [-90, -45, 0, 15, 90]) {
      const tilt = deg(Math.asin((1.5 * Math.sin(rad(angle))) / 60));
      expect(pose(frontView(), cam, angle).camber).toBeCloseTo(pose(frontView(), clampBolt, tilt).camber, 9);
    }
  });
});
