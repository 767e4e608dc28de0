import { describe, expect, it } from 'vitest';
import type { Car, Reading, Suspension } from '../../../core/contract.ts';
import { expectReading } from '../../../core/index.ts';
import { asMeasured } from '../../../core/plan/as-measured.ts';
import { poseOf } from '../../tools/pose.ts';
import { between, randomSuspension, rod, stream } from '../../tools/random-cars.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** Where a line points, [forward, to the right], that is turned by so many degrees to the right. */
const pointing = (angle: number) => [Math.cos(radians(angle)), Math.sin(radians(angle))] as const;
/** Degrees from one line to another, + to the right. */
function turnFrom(from: readonly [number, number], to: readonly [number, number]): number {
  return degrees(Math.atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]));
}

/** A reading against the centre line as the rack shows it against the thrust line, half way between the rear wheels. */
function againstThrustLine(reading: Reading): Reading {
  const toe = (corner: 'LF' | 'RF' | 'LR' | 'RR') => reading[corner]?.toe ?? Number.NaN;
  // Toe-in turns a left wheel to the right and a right wheel to the left.
  const [left, right] = [pointing(toe('LR')), pointing(-toe('RR'))];
  const thrust = [left[0] + right[0], left[1] + right[1]] as const;
  return {
    ...reading,
    LF: { ...reading.LF, toe: turnFrom(thrust, pointing(toe('LF'))) },
    RF: { ...reading.RF, toe: -turnFrom(thrust, pointing(-toe('RF'))) },
    toeReference: 'thrust-line',
  };
}

const SEEDS = [1, 2, 3, 4, 5, 6];

describe.each(SEEDS)('a car whose front toe was read against the thrust line, seed %i', (seed) => {
  const random = stream(seed * 53);
  const axle = (kind: string, link: string, steered: boolean) => ({
    ...{ suspension: randomSuspension(random, kind), adjusters: [rod('rod', link, 3)], steered },
  });
  const car: Car = {
    ...{ id: 'found', label: 'Found', wheel: { rimDiameter: 420 } },
    front: axle('double-wishbone', 'tieInner', true),
    rear: axle('five-link', 'inner5', false),
  };
  const wheel = () => ({ camber: between(random, -2, 1), toe: between(random, -1, 1) });
  const reading: Reading = { LF: wheel(), RF: wheel(), LR: wheel(), RR: wheel() };
  const lined = againstThrustLine(reading);

  it('has the wheels that it has where it was read against the centre line', () => {
    const { suspension, rightSuspension } = asMeasured(car, lined, {}).front;
    for (const [corner, own] of [
      ['LF', suspension],
      ['RF', rightSuspension as Suspension],
    ] as const) {
      const { camber, toe } = poseOf(own);
      expect(toe).toBeCloseTo(reading[corner]?.toe ?? Number.NaN, 8);
      expect(camber).toBeCloseTo(reading[corner]?.camber ?? Number.NaN, 8);
      expect(Math.abs(toe - (lined[corner]?.toe ?? Number.NaN))).toBeGreaterThan(0.01);
    }
  });

  it('then reads the same after moves, against either line', () => {
    const to = { LF: { rod: 1.5 }, RF: { rod: -1 }, LR: { rod: -2 }, RR: { rod: 0.5 } };
    const [plain, shown] = [reading, lined].map((one) => expectReading(car, one, {}, to)) as [Reading, Reading];
    const wanted = againstThrustLine(plain);
    for (const corner of ['LF', 'RF', 'LR', 'RR'] as const) {
      expect(shown[corner]?.toe).toBeCloseTo(wanted[corner]?.toe ?? Number.NaN, 8);
      expect(shown[corner]?.camber).toBeCloseTo(wanted[corner]?.camber ?? Number.NaN, 8);
    }
  });
});
