/**
 * Sleeves, tapered shims and axle wedges: at the angle φ a sleeve gives camber degrees·cos φ and caster degrees·sin φ, a
 * tapered shim camber degrees·cos φ and toe degrees·sin φ (the two components of one tilt, plain trigonometry).
 */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Suspension, Vec3 } from '../../core/contract.ts';
import { solveCorner } from '../../core/index.ts';
import { generalPose } from '../tools/general-pose.ts';
import { LAYOUTS, randomSuspension, stream } from '../tools/random-cars.ts';

const PHIS = [0, 30, 45, 90, 135, 180, 225, 270, 315, 345];
const SEEDS = [1, 2, 3, 4, 5, 6];
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);
const tan = (degrees: number): number => sin(degrees) / cos(degrees);
const sin = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);

function pose(suspension: Suspension, adjuster: Adjuster, position: number | string) {
  const solved = solveCorner(suspension, [adjuster], { [adjuster.id]: position });
  if (!solved.reachable) throw new Error(solved.message);
  return solved;
}

const sleeve = (degrees: number, reference: number): Adjuster => ({
  id: 'sleeve',
  kind: 'offset-sleeve',
  marks: 24,
  degrees,
  reference,
});

/** A rigid axle with an upright steering axis; its rod ends on the axis about which the sleeve tips the knuckle. */
function uprightAxle(tieInner: Vec3, tieOuter: Vec3): Suspension {
  const points = {
    upperBall: [0, 690, 420] as const,
    lowerBall: [0, 690, 260] as const,
    tieInner,
    tieOuter,
    wheelCentre: [0, 780, 340] as const,
  };
  return { kind: 'beam-front', points, camber: 0, toe: 0 };
}

describe('an offset sleeve, φ from most camber', () => {
  it('gives its degrees of camber at 0° and 180°, exactly, where the rod does not steer', () => {
    const axle = uprightAxle([-150, 100, 260], [-150, 690, 260]);
    // At its reference of 90° it gives caster alone: from there to 0° is all of camber, and the caster goes.
    expect(pose(axle, sleeve(1.5, 90), 0).camber).toBeCloseTo(1.5, 2);
    const from180 = pose(axle, sleeve(0.75, 180), 0);
    expect(from180.camber).toBeCloseTo(1.5, 8);
    expect(from180.caster).toBeCloseTo(0, 8);
    expect(from180.toe).toBeCloseTo(0, 8);
  });

  it('gives its degrees of caster from 270° to 90°, exactly, where the rod does not steer', () => {
    const at = pose(uprightAxle([-500, 780, 260], [0, 780, 260]), sleeve(0.75, 270), 90);
    expect(at.caster).toBeCloseTo(1.5, 8);
    expect(at.camber).toBeCloseTo(0, 8);
    expect(at.toe).toBeCloseTo(0, 8);
  });

  describe.each(SEEDS)('any rigid axle, seed %i', (seed) => {
    const axle = randomSuspension(stream(seed), 'beam-front');
    const { upperBall, lowerBall } = axle.points as Record<'upperBall' | 'lowerBall', Vec3>;
    const height = upperBall[2] - lowerBall[2];
    test.each(PHIS)('φ = %d°: the steering axis tilts by both components, the rod keeps its length', (phi) => {
      for (const reference of [0, 75, 210]) {
        const fitted = sleeve(1.5, reference);
        const [before, after] = [pose(axle, fitted, reference), pose(axle, fitted, phi)];
        const caster = (before.caster ?? NaN) + 1.5 * (sin(phi) - sin(reference));
        const sai = (before.sai ?? NaN) - 1.5 * (cos(phi) - cos(reference));
        expect(after.caster).toBeCloseTo(caster, 8);
        expect(after.sai).toBeCloseTo(sai, 8);
        const seat: Vec3 = [lowerBall[0] - height * tan(caster), lowerBall[1] - height * tan(sai), upperBall[2]];
        const theirs = generalPose(axle, { moved: { upperBall: seat } });
        expect(theirs.residual).toBeLessThan(1e-7);
        expect(Math.abs(after.camber - theirs.camber)).toBeLessThan(1e-4);
        expect(Math.abs(after.toe - theirs.toe)).toBeLessThan(1e-4);
      }
    });
  });

  test.each(PHIS)('φ = %d°: a middling axle gains degrees·cos φ of camber, but for what its rod steers it', (phi) => {
    const axle = { kind: 'beam-front', points: LAYOUTS['beam-front'] ?? {}, camber: 0, toe: 0 };
    for (const reference of [0, 90, 180, 270]) {
      const gained = pose(axle, sleeve(1, reference), phi).camber - pose(axle, sleeve(1, reference), reference).camber;
      expect(Math.abs(gained - (cos(phi) - cos(reference)))).toBeLessThan(0.07);
    }
  });
});

describe('a tapered hub shim, φ from most camber', () => {
  const kinds = ['beam-rear', 'five-link', 'trailing-arm', 'strut'];
  test.each(PHIS)('φ = %d°: camber degrees·cos φ, toe degrees·sin φ', (phi) => {
    for (const kind of kinds) {
      for (const [taper, reference] of [
        [0.5, 'none'],
        [1, '0.5@30'],
      ] as const) {
        const suspension = randomSuspension(stream(7), kind);
        const shim = { id: 'shim', kind: 'wedge-shim', degrees: [0.5, 1], marks: 24, reference };
        const [before, after] = [pose(suspension, shim, reference), pose(suspension, shim, `${taper}@${phi}`)];
        const was = reference === 'none' ? 0 : 0.5;
        expect(after.camber - before.camber).toBeCloseTo(taper * cos(phi) - was * cos(30), 9);
        expect(after.toe - before.toe).toBeCloseTo(taper * sin(phi) - was * sin(30), 9);
        if (after.caster !== undefined) expect(after.caster).toBe(before.caster);
      }
    }
  });
});
