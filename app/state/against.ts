/** What front toe of a reading is against, in words. */
import { angleOf } from '../../core/reading/axle-angles.ts';
import { referenceOf, type ToeReference } from '../../core/reading/toe-reference.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { formOfRecord } from './form.ts';

const LINES: Readonly<Record<ToeReference, string>> = {
  centreline: 'the centre line',
  'thrust-line': 'the thrust line',
};
export const lineText = (reference: ToeReference): string => LINES[reference];

/**
 * Of a reading with toe of a front wheel: "Front toe against the thrust line." Without rear toe there is no such line; a
 * total is the same against either.
 */
export function againstText(record: Pick<ReadingRecord, 'reading' | 'typed'>): string {
  const { reading } = record;
  if (formOfRecord(record).total || (reading.LF?.toe === undefined && reading.RF?.toe === undefined)) return '';
  const none = angleOf(reading, 'rear', 'thrustAngle') === undefined;
  const why = none ? ': rear toe was not read, so there is no thrust line' : '';
  return `Front toe against ${lineText(referenceOf(reading))}${why}.`;
}
