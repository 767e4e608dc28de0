/** What of a whole reading is doubtful beside what is known of the car: a slip of the hand, asked about and taken all the same. */
import { ANGLES, type AxleName, CORNERS, type Corner, type Reading, type WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { crossHeight } from './ride-heights.ts';

/** A copy of fewer figures may be chance. */
const LEAST_FIGURES = 4;

/**
 * Whether a reading is the one before it over again, degree by degree: two measurements of a car are never alike in all
 * their decimals. Toe by toe as it was read, whatever it was against.
 */
export function isCopy(reading: Reading, before: Reading): boolean {
  let alike = 0;
  for (const corner of CORNERS) {
    for (const angle of ANGLES) {
      const [now, then] = [reading[corner]?.[angle], before[corner]?.[angle]];
      if (now === undefined || then === undefined) continue;
      if (now !== then) return false;
      alike += 1;
    }
  }
  return alike >= LEAST_FIGURES;
}

/** Degrees of all angles together by which it has to fit better the other way round, more than gauges and moves explain. */
const BETTER_BY = 0.5;
/** How much of what it is off it may still be off the other way round. */
const STILL_OFF = 0.3;

/** Axles whose wheels were taken one for the other, as far as what was expected there (degrees) tells. Trade practice, no source. */
export function swappedAxles(reading: Reading, expected: Reading): readonly AxleName[] {
  return (['front', 'rear'] as const).filter((axle) => {
    const [left, right] = AXLES[axle];
    const as = off(reading, expected, [left, left], [right, right]);
    const other = off(reading, expected, [left, right], [right, left]);
    return as - other > BETTER_BY && other < STILL_OFF * as;
  });
}

/** How far wheels are from what was expected of them, or of the other; only angles that are there for both wheels both times. */
function off(reading: Reading, expected: Reading, ...pairs: readonly (readonly [Corner, Corner])[]): number {
  const whole = (angle: keyof WheelReading): boolean =>
    pairs.every(([a, b]) =>
      [reading[a], reading[b], expected[a], expected[b]].every((wheel) => wheel?.[angle] !== undefined),
    );
  return pairs.reduce(
    (sum, [a, b]) =>
      sum +
      ANGLES.filter(whole).reduce(
        (one, angle) => one + Math.abs((reading[a]?.[angle] ?? 0) - (expected[b]?.[angle] ?? 0)),
        0,
      ),
    0,
  );
}

/** Diameters, mm, at which toe is given as a length on a road car: from a small rim to a tall tyre. Trade practice, no source. */
const USUAL_DIAMETER = [300, 900] as const;

/** What a diameter mostly is, where this one is not within that: to be asked about. */
export const unusualDiameter = (mm: number): readonly [low: number, high: number] | undefined =>
  mm >= USUAL_DIAMETER[0] && mm <= USUAL_DIAMETER[1] ? undefined : USUAL_DIAMETER;

/** mm by which the two sides of a body that stands on sound springs differ at the most. Trade practice, no source. */
const LEVEL_WITHIN = 25;

/** Axles at which the body stands further apart left and right than that: mistyped, or to be seen to before the angles. */
export const leaningAxles = (reading: Reading): readonly AxleName[] =>
  (['front', 'rear'] as const).filter((axle) => Math.abs(crossHeight(reading, axle) ?? 0) > LEVEL_WITHIN);
