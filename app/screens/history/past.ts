/** What each visit of a car found and left, its front toe all from one line. */

import { axleOf } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { angleAgainst, readAgainst, referenceOf, type ToeReference } from '../../../core/reading/toe-reference.ts';
import type { CarRecord, ReadingRecord } from '../../../core/records/stored.ts';
import { canTotal, type Field, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import type { Records } from '../../state/records.ts';
import { leftRecord, visitsOf, visitView } from '../../state/visits.ts';

export interface Past {
  readonly day: string;
  /** Degrees; a wheel's half of a total is no figure of its own. */
  readonly found: (field: Field) => number | undefined;
  readonly left: (field: Field) => number | undefined;
}

export interface History {
  /** Oldest first, visits with a reading only. */
  readonly past: readonly Past[];
  /** What was measured in any of them. */
  readonly fields: readonly Field[];
  /** What all front toe is shown against; and of how many readings it is left out, as they have no rear toe to tell by. */
  readonly reference: ToeReference;
  readonly leftOut: number;
}

export function pastOf(all: Records, { id, car }: CarRecord): History {
  const views = [...visitsOf(all, id)].reverse().flatMap((visit) => visitView(all, visit.id) ?? []);
  const taken = views.filter(({ rounds }) => rounds.length > 0);
  const shown = taken.flatMap((view) => [view.rounds[0]?.record, leftRecord(view)].filter((one) => one !== undefined));
  const reference = commonLine(shown);
  const measured =
    (record: ReadingRecord | undefined) =>
    ({ where, angle }: Field): number | undefined => {
      if (!record) return undefined;
      const { total } = formOfRecord(record);
      const isWheel = where !== 'front' && where !== 'rear';
      if (isWheel && angle === 'toe' && total && canTotal(car, axleOf(where))) return undefined;
      return angleAgainst(record.reading, where, angle, reference);
    };
  const past = taken.map((view) => ({
    day: view.visit.opened,
    found: measured(view.rounds[0]?.record),
    left: measured(leftRecord(view)),
  }));
  const anyTotal = taken.some(({ rounds }) => rounds.some(({ record }) => formOfRecord(record).total));
  const fields = [false, ...(anyTotal ? [true] : [])].flatMap((total) =>
    fieldsOf(car, { sai: true, total, axle: true, wheel: true }),
  );
  const unique = fields.filter(({ id }, i) => fields.findIndex((one) => one.id === id) === i);
  const fieldsTaken = unique.filter((field) => past.some(({ found }) => found(field) !== undefined));
  const leftOut = new Set(shown.filter(({ reading }) => !readAgainst(reading, reference))).size;
  return { past, fields: fieldsTaken, reference, leftOut };
}

/** The newest reading's own, of those that can be told against either. */
function commonLine(records: readonly ReadingRecord[]): ToeReference {
  const both = records.filter(({ reading }) => angleOf(reading, 'rear', 'thrustAngle') !== undefined);
  return referenceOf(both.at(-1)?.reading ?? {});
}
