/**
 * Caster of a rigid axle on a frame that does not stand level. Caster is specified for a level frame; a frame that is
 * low in front takes the axle forward with it, so that the rack reads less caster than the axle has.
 * Source: US Army TM 5-4210-230-14&P-1, p. 185: a front-down frame angle is subtracted from the specified setting, a
 * front-high one is added, to obtain the caster that should be measured; to bring a measurement back to a level frame
 * is the reverse.
 */
import { InputError } from '../input-error.ts';

/**
 * Caster against the frame, degrees: what the rack would read with the frame level.
 * @param measured caster as the rack reads it, degrees, + top to the rear
 * @param frameAngle how the frame stands, degrees, + front end down
 * @throws InputError naming the argument
 */
export const casterAgainstFrame = (measured: number, frameAngle: number): number =>
  checked('measured', measured, 90) + checked('frameAngle', frameAngle, 45);

/**
 * Caster that the rack has to read, degrees, so that the axle has `specified` once its frame stands level.
 * @param specified caster for a level frame, degrees
 * @param frameAngle how the frame stands, degrees, + front end down
 * @throws InputError naming the argument
 */
export const casterToMeasure = (specified: number, frameAngle: number): number =>
  checked('specified', specified, 90) - checked('frameAngle', frameAngle, 45);

function checked(field: string, value: number, limit: number): number {
  if (!(typeof value === 'number' && Math.abs(value) <= limit)) {
    throw new InputError(field, value, { is: 'number', low: -limit, high: limit, unit: 'degrees' });
  }
  return value;
}
