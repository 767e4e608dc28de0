/**
 * Side effects against closed-form geometry, and against the pose as a library that knows nothing of suspensions finds
 * it (tests/tools/general-pose.ts). Signs of the two offsets at the ground: ISO 8855:2011, from memory: the castor offset
 * is positive where the steering axis meets the ground ahead of the wheel's contact, the other where it meets it inboard.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Suspension, Vec3 } from '../../../core/contract.ts';
import { heightEffect, sideEffects } from '../../../core/index.ts';
import { type Disturbance, generalPose } from '../../tools/general-pose.ts';
import { LAYOUTS, randomSuspension, stream } from '../../tools/random-cars.ts';

const layout = LAYOUTS['double-wishbone'] as Record<string, Vec3>;
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const sin = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

interface Wheel {
  readonly caster: number;
  readonly sai: number;
  readonly camber?: number;
  readonly toe?: number;
  /** Height of the wheel centre, mm. */
  readonly radius: number;
  /** Where the steering axis passes the wheel centre at its height, mm. */
  readonly ahead?: number;
  readonly inboard?: number;
}

/** A double wishbone whose ball joints lie on such a steering axis. */
function wheelOn({ caster, sai, camber = 0, toe = 0, radius, ahead = 0, inboard = 0 }: Wheel): Suspension {
  const onAxis = (above: number): Vec3 => [
    ahead - above * tan(caster),
    760 - inboard - above * tan(sai),
    radius + above,
  ];
  const points = { ...layout, wheelCentre: [0, 760, radius] as const, lowerBall: onAxis(-120), upperBall: onAxis(130) };
  return { kind: 'double-wishbone', points, camber, toe };
}

describe('at the ground', () => {
  it.each([3, 8, -2])(
    'an axis with %d° of caster through the wheel centre trails by the radius times its tangent',
    (caster) => {
      const { casterTrail, scrubRadius } = sideEffects(wheelOn({ caster, sai: 0, radius: 310 }), [], {});
      expect(casterTrail).toBeCloseTo(310 * tan(caster), 9);
      expect(scrubRadius).toBeCloseTo(0, 9);
    },
  );

  it.each([10, 14])(
    'an axis with %d° of SAI through the wheel centre meets the ground outboard of the contact',
    (sai) => {
      const { casterTrail, scrubRadius, sai: told } = sideEffects(wheelOn({ caster: 0, sai, radius: 310 }), [], {});
      expect(scrubRadius).toBeCloseTo(-310 * tan(sai), 9);
      expect(casterTrail).toBeCloseTo(0, 9);
      expect(told).toBeCloseTo(sai, 9);
    },
  );

  it('both offsets are what trigonometry makes of any axis and any wheel', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const wheels = fc.record({
      ...{ caster: number(-3, 12), sai: number(0, 18), camber: number(-4, 4), toe: number(-2, 2) },
      ...{ radius: number(280, 340), ahead: number(-40, 40), inboard: number(0, 90) },
    });
    fc.assert(
      fc.property(wheels, (wheel) => {
        const { caster, sai, camber, toe, radius, ahead, inboard } = wheel;
        const { casterTrail, scrubRadius } = sideEffects(wheelOn(wheel), [], {});
        // From under the wheel centre to where the axis meets the ground; a wheel that leans out stands further in.
        const [x, y] = [ahead + radius * tan(caster), radius * tan(sai) - inboard];
        expect(casterTrail).toBeCloseTo(x * cos(toe) - y * sin(toe), 8);
        expect(scrubRadius).toBeCloseTo(-x * sin(toe) - y * cos(toe) - radius * tan(camber), 8);
      }),
    );
  });
});

/** mm of bump and of droop, and degrees of the inner wheel, for which side effects are told. */
const [TRAVEL, TURN] = [25, 20];
const SEEDS = [1, 2, 3, 4, 5, 6];
const WITHIN = 2e-4; // degrees: each of the two poses that are compared to half of it

describe.each(['double-wishbone', 'strut'])('%s, against the library', (kind) => {
  const given = (seed: number) => randomSuspension(stream(seed * 31), kind);
  const gains = (suspension: Suspension, by: Disturbance) => {
    const [before, after] = [generalPose(suspension, {}), generalPose(suspension, by)];
    expect(Math.max(before.residual, after.residual), 'the library did not converge').toBeLessThan(1e-7);
    const gain = (angle: 'camber' | 'caster' | 'toe') => (after[angle] ?? NaN) - (before[angle] ?? NaN);
    return { camber: gain('camber'), caster: gain('caster'), toe: gain('toe') };
  };

  it.each(SEEDS)('seed %i: bump steer and camber gain, bump first', (seed) => {
    const suspension = given(seed);
    const { bumpSteer, camberGain } = sideEffects(suspension, [], {});
    [TRAVEL, -TRAVEL].forEach((travel, i) => {
      const { camber, toe } = gains(suspension, { travel });
      expect(Math.abs((bumpSteer?.[i] ?? NaN) - toe)).toBeLessThan(WITHIN);
      expect(Math.abs((camberGain?.[i] ?? NaN) - camber)).toBeLessThan(WITHIN);
    });
  });

  it.each(SEEDS)('seed %i: a corner that is raised lets its wheel down', (seed) => {
    const suspension = given(seed);
    for (const raise of [12, -30]) {
      const gained = heightEffect(suspension, [], {}, raise);
      const wanted = gains(suspension, { travel: -raise });
      for (const angle of ['camber', 'caster', 'toe'] as const) {
        expect(Math.abs((gained?.[angle] ?? NaN) - wanted[angle])).toBeLessThan(WITHIN);
      }
    }
  });

  it.each(SEEDS)('seed %i: toe-out on turns, the rack found by halving', (seed) => {
    const suspension = given(seed);
    const [x, y, z] = suspension.points.tieInner as Vec3;
    const turned = (rack: number) => gains(suspension, { moved: { tieInner: [x, y + rack, z] } }).toe;
    let [low, high] = turned(20) < turned(-20) ? [0, 120] : [0, -120];
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      if (turned(middle) > -TURN) low = middle;
      else high = middle;
    }
    expect(Math.abs((sideEffects(suspension, [], {}).toeOutOnTurns ?? NaN) - (TURN - turned(-low)))).toBeLessThan(1e-3);
  });
});

describe('what the geometry does not know is absent', () => {
  it('offsets at the ground of points that were not counted from it', () => {
    const raised = wheelOn({ caster: 4, sai: 12, radius: 310 });
    const sunk = Object.entries(raised.points).map(([name, [x, y, z]]) => [name, [x, y, z - 310] as const]);
    const effects = sideEffects({ ...raised, points: Object.fromEntries(sunk) }, [], {});
    expect(Object.keys(effects).sort()).toEqual(['bumpSteer', 'camberGain', 'sai', 'toeOutOnTurns']);
  });

  it('steering of a wheel that has no steering axis', () => {
    const effects = sideEffects(randomSuspension(stream(1), 'five-link'), [], {});
    expect(Object.keys(effects).sort()).toEqual(['bumpSteer', 'camberGain']);
  });
});
