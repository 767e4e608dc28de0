/**
 * Front toe is read against the car's centre line, or against the thrust line that the rear wheels make: rear toe of +0.3°
 * left and 0.1° right has it point 0.1° to the right, so that a front wheel that points straight on along the car points
 * 0.1° to the left of it. Seen from there left toe is 0.1° less, right toe 0.1° more, and their total the same. Rear toe
 * is always against the centre line: there is nothing else behind it.
 */
import type { AxleName, Corner, Reading } from '../contract.ts';
import { angleOf } from './axle-angles.ts';

/** What front toe is read against. */
export type ToeReference = NonNullable<Reading['toeReference']>;

/** What a reading's front toe is against: the centre line where it does not say. */
export const referenceOf = ({ toeReference = 'centreline' }: Reading): ToeReference => toeReference;

/** The same reading with both front wheels pointing so many degrees further to the right. */
export function pointed(reading: Reading, right: number): Reading {
  const { LF, RF } = reading;
  return {
    ...reading,
    ...(LF?.toe !== undefined && { LF: { ...LF, toe: LF.toe + right } }),
    ...(RF?.toe !== undefined && { RF: { ...RF, toe: RF.toe - right } }),
  };
}

/**
 * The same reading with its front toe against the other line, degrees; nothing where there is front toe and the thrust
 * angle is not known, as toe of both rear wheels was not read.
 */
export function readAgainst(reading: Reading, reference: ToeReference): Reading | undefined {
  const { LF, RF } = reading;
  const right = LF?.toe === undefined && RF?.toe === undefined ? 0 : turnTo(reading, reference);
  return right === undefined ? undefined : { ...pointed(reading, right), toeReference: reference };
}

/** As `angleOf`, against the line that is asked for; nothing where that hangs on a thrust angle that is not known. */
export function angleAgainst(
  reading: Reading,
  where: Corner | AxleName,
  angle: string,
  reference: ToeReference,
): number | undefined {
  const value = angleOf(reading, where, angle);
  if (value === undefined || !isAgainst(where, angle)) return value;
  const right = turnTo(reading, reference);
  return right === undefined ? undefined : value + (where === 'RF' ? -right : right);
}

/** Whether an angle differs with the line that it is read against: toe of a front wheel, and where both point. */
export const isAgainst = (where: Corner | AxleName, angle: string): boolean =>
  ((where === 'LF' || where === 'RF') && angle === 'toe') || (where === 'front' && angle === 'thrustAngle');

/** Degrees that front wheels point further to the right from the line that is asked for than from the reading's own. */
function turnTo(reading: Reading, reference: ToeReference): number | undefined {
  if (referenceOf(reading) === reference) return 0;
  const thrust = angleOf(reading, 'rear', 'thrustAngle');
  return thrust === undefined || reference === 'centreline' ? thrust : -thrust;
}
