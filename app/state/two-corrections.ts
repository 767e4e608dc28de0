/** A reading that was corrected on two phones, each without the other: what the other has, and which one is to hold. */
import { angleOf } from '../../core/reading/axle-angles.ts';
import { canonical } from '../../core/records/canonical.ts';
import { madeApart } from '../../core/records/rounds.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { now, ownedBy } from '../store/index.ts';
import { fieldsOf, fieldWord } from './fields.ts';
import { formOfRecord } from './form.ts';
import { keep, records } from './records.ts';
import { readingId } from './same-id.ts';
import { valueText } from './units.ts';
import type { RoundView, VisitView } from './visits.ts';

const contentOf = ({ reading, settings, packs = {} }: ReadingRecord): string => canonical([reading, settings, packs]);

/** The other corrections, the newest first; the same figures are no other ones. */
export function otherCorrections({ visit }: VisitView, { record }: RoundView): readonly ReadingRecord[] {
  const others = madeApart(ownedBy(records.value.readings, visit.id), record);
  return others.filter((one) => contentOf(one) !== contentOf(record)).sort((a, b) => (a.at < b.at ? 1 : -1));
}

export interface Difference {
  readonly what: string;
  readonly inUse: string;
  readonly other: string;
}

/** Where two readings differ, each figure as the rack shows it. */
export function differencesOf({ car: { car } }: VisitView, a: ReadingRecord, b: ReadingRecord): readonly Difference[] {
  const asked = [a, b].flatMap((one) => fieldsOf(car, formOfRecord(one)));
  const fields = new Map(asked.map((field) => [field.id, field]));
  const rows = [...fields.values()].map((field) => {
    const [inUse, other] = [a, b].map(({ reading }) => {
      const value = angleOf(reading, field.where, field.angle);
      return value === undefined ? 'not measured' : valueText(field.angle, value, car.wheel.rimDiameter);
    });
    return { what: fieldWord(field), inUse: inUse ?? '', other: other ?? '' };
  });
  return rows.filter(({ inUse, other }) => inUse !== other);
}

/** Whether it is another place of an adjuster that they differ in. */
export const standsApart = (a: ReadingRecord, b: ReadingRecord): boolean =>
  canonical([a.settings, a.packs ?? {}]) !== canonical([b.settings, b.packs ?? {}]);

/** The one that is to hold becomes a correction of the one that did; all stay in the records. */
export function takeCorrection(view: VisitView, { record }: RoundView, taken: ReadingRecord): void {
  const { id: _, at: __, replaces: ___, over: ____, ...content } = taken;
  const what = { ...content, replaces: record.id };
  const over = otherCorrections(view, { record } as RoundView).map(({ id }) => id);
  keep(['readings', { ...what, id: readingId(records.value.readings, what), at: now(), over }]);
}
