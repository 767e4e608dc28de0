/** What stays true of every linkage at every position, whatever the car. fast-check prints the seed of a failure. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Axle, type Car, CORNERS, type Settings, type Vec3 } from '../../core/contract.ts';
import { adjusterPositions, predictReading, solveCorner, suspensionKinds } from '../../core/index.ts';
import { oneOf, randomAxle, randomCar, stream } from '../tools/random-cars.ts';

const KINDS = ['double-wishbone', 'five-link'] as const;
const cases = fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), kind: fc.constantFrom(...KINDS) });
const length = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function somewhere(axle: Axle, random: () => number): Settings {
  return Object.fromEntries(axle.adjusters.map((one) => [one.id, oneOf(random, adjusterPositions(one))]));
}

function pose(axle: Axle, settings: Settings, options = {}) {
  const solved = solveCorner(axle.suspension, axle.adjusters, settings, options);
  if (!solved.reachable) throw new Error(solved.message);
  return solved;
}

describe('kinematics', () => {
  it('keeps every link its length to 1e-6 mm, a rod grown by its turns', () => {
    fc.assert(
      fc.property(cases, fc.double({ min: -40, max: 40, noNaN: true }), ({ seed, kind }, travel) => {
        const random = stream(seed);
        const axle = randomAxle(random, kind, true);
        const settings = somewhere(axle, random);
        const { points } = pose(axle, settings, { travel });
        for (const [inner, outer] of suspensionKinds[kind]?.links ?? []) {
          const rod = axle.adjusters.find((one) => one.kind === 'threaded-rod' && one.links.includes(inner));
          const grown = rod ? (settings[rod.id] as number) * rod.lead : 0;
          const before = length(axle.suspension.points[inner] as Vec3, axle.suspension.points[outer] as Vec3);
          const now = length(points[inner] as Vec3, points[outer] as Vec3);
          expect(Math.abs(now - before - grown)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('at the reference positions the wheel has the camber and toe that were entered', () => {
    fc.assert(
      fc.property(cases, ({ seed, kind }) => {
        const axle = randomAxle(stream(seed), kind, true);
        const reference = Object.fromEntries(axle.adjusters.map((one) => [one.id, one.reference]));
        const at = pose(axle, reference);
        expect(at.camber).toBeCloseTo(axle.suspension.camber, 9);
        expect(at.toe).toBeCloseTo(axle.suspension.toe, 9);
      }),
    );
  });

  it('carried along with the car, nothing about the wheel changes', () => {
    const offset = fc.tuple(...[1, 2, 3].map(() => fc.double({ min: -3000, max: 3000, noNaN: true })));
    fc.assert(
      fc.property(cases, offset, ({ seed, kind }, [dx, dy, dz]) => {
        const random = stream(seed);
        const axle = randomAxle(random, kind, true);
        const settings = somewhere(axle, random);
        const points = Object.fromEntries(
          Object.entries(axle.suspension.points).map(([name, [x, y, z]]) => [
            name,
            [x + (dx as number), y + (dy as number), z + (dz as number)] as const,
          ]),
        );
        const here = pose(axle, settings);
        const there = pose({ ...axle, suspension: { ...axle.suspension, points } }, settings);
        expect(there.camber).toBeCloseTo(here.camber, 8);
        expect(there.toe).toBeCloseTo(here.toe, 8);
      }),
    );
  });

  it('right is the mirror of left', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = stream(seed);
        const car = randomCar(random);
        const wheel = { camber: 0.4, caster: 3, toe: -0.1, sai: 12 };
        const to = somewhere(car.front, random);
        const both = predictReading(car, { LF: wheel, RF: wheel }, {}, { LF: to, RF: to });
        expect(both.RF).toEqual(both.LF);
      }),
    );
  });

  it('a right side of its own is used on the right only', () => {
    const random = stream(7);
    const axle = randomAxle(random, 'double-wishbone', true);
    const other = randomAxle(random, 'double-wishbone', true);
    const car: Car = { ...randomCar(random), front: { ...axle, rightSuspension: other.suspension } };
    const wheel = { camber: 0, caster: 3, toe: 0 };
    const to = somewhere(axle, random);
    const from = Object.fromEntries(axle.adjusters.map((one) => [one.id, one.reference]));
    const after = predictReading(car, { LF: wheel, RF: wheel }, {}, { LF: to, RF: to });
    for (const [corner, suspension] of [
      ['LF', axle.suspension],
      ['RF', other.suspension],
    ] as const) {
      const change = pose({ ...axle, suspension }, to).camber - pose({ ...axle, suspension }, from).camber;
      expect(after[corner]?.camber).toBeCloseTo(change, 9);
    }
  });

  it('there and back is where it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = stream(seed);
        const car = randomCar(random);
        const at = () => ({ LF: somewhere(car.front, random), RR: somewhere(car.rear, random) });
        const [from, to] = [at(), at()];
        const reading = { LF: { camber: 1, caster: 2, toe: 0.3 }, RR: { camber: -1, toe: 0.1 } };
        const back = predictReading(car, predictReading(car, reading, from, to), to, from);
        for (const corner of ['LF', 'RR'] as const) {
          for (const [angle, value] of Object.entries(reading[corner])) {
            expect(back[corner]?.[angle as 'toe']).toBeCloseTo(value, 9);
          }
        }
      }),
    );
  });

  it('what was not measured stays absent', () => {
    const car = randomCar(stream(3));
    const after = predictReading(car, { LF: { camber: 0.2 } }, {}, { LF: { rod: 1 } });
    expect(Object.keys(after)).toEqual(['LF']);
    expect(Object.keys(after.LF ?? {})).toEqual(['camber']);
  });

  it('against the thrust line, a rear move changes both front readings by the thrust angle', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = stream(seed);
        const car = randomCar(random);
        const wheel = { camber: 0, toe: 0.1 };
        const reading = { LF: wheel, RF: wheel, LR: wheel, RR: wheel };
        const to = { LR: somewhere(car.rear, random), RR: somewhere(car.rear, random) };
        const plain = predictReading(car, reading, {}, to);
        const thrust = predictReading(car, { ...reading, toeReference: 'thrust-line' }, {}, to);
        const gained = ((plain.LR?.toe ?? NaN) - (plain.RR?.toe ?? NaN)) / 2;
        expect(thrust.LF?.toe).toBeCloseTo(0.1 - gained, 9);
        expect(thrust.RF?.toe).toBeCloseTo(0.1 + gained, 9);
        for (const corner of CORNERS) expect(thrust[corner]?.camber).toBe(plain[corner]?.camber);
      }),
    );
  });
});
