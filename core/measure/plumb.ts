/**
 * Camber from a plumb line, or a level held upright, beside the wheel: how far the rim is from it above and below, D apart
 * along the rim: sin γ = (below − above)/D, + where the top leans out, for a line that hangs outside the wheel. A floor that
 * is not level rolls the car with it, so that one side reads more and the other as much less.
 */
import { asin, atan2, degrees } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { checkDiameter } from '../units/toe.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/** How far a rim is from an upright line beside it. */
export interface Plumb {
  /** mm from the line to the top of the rim. */
  readonly above: number;
  /** mm from the line to its bottom. */
  readonly below: number;
  /** mm between the two places along the rim. */
  readonly diameter: number;
}

/**
 * Camber against the vertical, degrees.
 * @param rule one standard deviation of a distance, mm
 * @throws InputError naming the field
 */
export function camberFromPlumb(plumb: Plumb, rule: number = USUAL_SCATTER.rule): Measured {
  const { above, below, diameter } = given('plumb', plumb);
  for (const [field, value] of Object.entries({ above, below })) within(field, value, 0, 1000, 'mm');
  checkDiameter(diameter);
  if (Math.abs(below - above) > diameter) throw new InputError('above', above, { is: 'within-diameter', diameter });
  return spreadOf({ above: { value: above, sd: rule }, below: { value: below, sd: rule } }, (read) => ({
    camber: degrees(asin((read.below - read.above) / diameter)),
  })).camber;
}

/**
 * Degrees that the floor goes up to the left, from how much higher it is under the left wheel than under the right.
 * @param higher mm, − where the right is higher
 * @param track mm between the two
 * @throws InputError naming the field
 */
export function floorSlope(higher: number, track: number): number {
  within('higher', higher, -200, 200, 'mm');
  return degrees(atan2(higher, within('track', track, 500, 3500, 'mm')));
}

/** Camber that a level floor would show: a floor that goes up to the left leans both wheels to the right. */
export const onLevelFloor = (camber: Measured, slope: number, side: 'left' | 'right'): Measured => ({
  ...camber,
  value: camber.value + (side === 'left' ? slope : -slope),
});
