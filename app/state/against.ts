/** What front toe of a reading is against, in words. */
import type { Reading } from '../../core/contract.ts';
import { angleOf } from '../../core/reading/axle-angles.ts';
import { referenceOf, type ToeReference } from '../../core/reading/toe-reference.ts';

const LINES: Readonly<Record<ToeReference, string>> = {
  centreline: 'the centre line',
  'thrust-line': 'the thrust line',
};
export const lineText = (reference: ToeReference): string => LINES[reference];

/** Of a reading with front toe: "Front toe against the thrust line." Without rear toe there is no such line. */
export function againstText(reading: Reading): string {
  if (reading.LF?.toe === undefined && reading.RF?.toe === undefined) return '';
  const why =
    angleOf(reading, 'rear', 'thrustAngle') === undefined ? ': rear toe was not read, so there is no thrust line' : '';
  return `Front toe against ${lineText(referenceOf(reading))}${why}.`;
}
