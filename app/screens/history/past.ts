/** What each visit of a car found and left. */

import { axleOf } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
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

/** Oldest first, visits with a reading only; and the fields that were measured in any of them. */
export function pastOf(all: Records, { id, car }: CarRecord): { past: readonly Past[]; fields: readonly Field[] } {
  const measured =
    (record: ReadingRecord | undefined) =>
    ({ where, angle }: Field): number | undefined => {
      if (!record) return undefined;
      const { total } = formOfRecord(record);
      const isWheel = where !== 'front' && where !== 'rear';
      if (isWheel && angle === 'toe' && total && canTotal(car, axleOf(where))) return undefined;
      return angleOf(record.reading, where, angle);
    };
  const views = [...visitsOf(all, id)].reverse().flatMap((visit) => visitView(all, visit.id) ?? []);
  const taken = views.filter(({ rounds }) => rounds.length > 0);
  const past = taken.map((view) => ({
    day: view.visit.opened,
    found: measured(view.rounds[0]?.record),
    left: measured(leftRecord(view)),
  }));
  const anyTotal = taken.some(({ rounds }) => rounds.some(({ record }) => formOfRecord(record).total));
  const fields = [false, ...(anyTotal ? [true] : [])].flatMap((total) =>
    fieldsOf(car, { sai: true, total, axle: true }),
  );
  const unique = fields.filter(({ id }, i) => fields.findIndex((one) => one.id === id) === i);
  return { past, fields: unique.filter((field) => past.some(({ found }) => found(field) !== undefined)) };
}
