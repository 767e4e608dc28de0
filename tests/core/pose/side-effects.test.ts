/**
 * Side effects against closed-form geometry, and against the pose as a library that knows nothing of suspensions finds
 * it (tests/tools/general-effects.ts). Signs of the two offsets at the ground: ISO 8855:2011, from memory: the castor offset
 * is positive where the steering axis meets the ground ahead of the wheel's contact, the other where it meets it inboard.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Suspension, Vec3 } from '../../../core/contract.ts';
import { heightEffect, sideEffects } from '../../../core/index.ts';
import { generalEffects, generalGain } from '../../tools/general-effects.ts';
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

const SEEDS = [1, 2, 3, 4, 5, 6];
const WITHIN = 2e-4; // degrees: each of the two poses that are compared to half of it

describe.each(['double-wishbone', 'strut'])('%s, against the library', (kind) => {
  const given = (seed: number) => randomSuspension(stream(seed * 31), kind);

  it.each(SEEDS)('seed %i: all of them', (seed) => {
    const told = sideEffects(given(seed), [], {});
    const wanted = generalEffects(given(seed));
    expect(Object.keys(told).sort()).toEqual(Object.keys(wanted).sort());
    for (const name of ['bumpSteer', 'camberGain'] as const) {
      for (const i of [0, 1])
        expect(Math.abs((told[name]?.[i] ?? NaN) - (wanted[name][i] ?? NaN))).toBeLessThan(WITHIN);
    }
    for (const name of ['sai', 'toeOutOnTurns', 'scrubRadius', 'casterTrail'] as const) {
      expect(Math.abs((told[name] ?? NaN) - (wanted[name] ?? NaN)), name).toBeLessThan(1e-3);
    }
  });

  it.each(SEEDS)('seed %i: a corner that is raised lets its wheel down', (seed) => {
    for (const raise of [12, -30]) {
      const gained = heightEffect(given(seed), [], {}, raise);
      const wanted = generalGain(given(seed), {}, { travel: -raise });
      for (const angle of ['camber', 'caster', 'toe'] as const) {
        expect(Math.abs((gained?.[angle] ?? NaN) - wanted[angle])).toBeLessThan(WITHIN);
      }
    }
  });
});

describe('what the geometry does not know is absent', () => {
  it('offsets at the ground of points that were not counted from it', () => {
    const raised = wheelOn({ caster: 4, sai: 12, radius: 310 });
    const sunk = Object.entries(raised.points).map(([name, [x, y, z]]) => [name, [x, y, z - 310] as const]);
    const effects = sideEffects({ ...raised, points: Object.fromEntries(sunk) }, [], {});
    expect(Object.keys(effects).sort()).toEqual(['bumpSteer', 'camberGain', 'sai', 'toeOutOnTurns']);
  });

  it('they are there from 100 mm of height on', () => {
    const at = (radius: number) => sideEffects(wheelOn({ caster: 4, sai: 12, radius }), [], {});
    expect(at(100)).toHaveProperty('scrubRadius');
    expect(at(99.9)).not.toHaveProperty('scrubRadius');
  });

  it('steering of a wheel that has no steering axis', () => {
    const effects = sideEffects(randomSuspension(stream(1), 'five-link'), [], {});
    expect(Object.keys(effects).sort()).toEqual(['bumpSteer', 'camberGain']);
  });
});
