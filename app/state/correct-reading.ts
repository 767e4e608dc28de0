/** A reading opened again, to be corrected. */
import { angleOf } from '../../core/reading/axle-angles.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { fieldsOf, isField, unitTexts } from './fields.ts';
import { formOfRecord, formTexts } from './form.ts';
import { keepDraft } from './records.ts';
import { ENTRY_REPLACES, entryDraft } from './stage.ts';
import { END } from './typing.ts';
import { unitsFor, valueText } from './units.ts';
import type { RoundView, VisitView } from './visits.ts';

/** Opens a reading again with what was typed; saving makes a new record that replaces it. */
export function correctReading(view: VisitView, { record }: RoundView): void {
  keepDraft(entryDraft(view.visit.id), { ...typedOf(view, record), [ENTRY_REPLACES]: record.id }, END);
}

/**
 * What was typed; a reading that came in a file has its values only. What its form was is said in either case: one of before
 * a question was asked is not to be taken for what is usual now.
 */
function typedOf(view: VisitView, record: ReadingRecord): Readonly<Record<string, string>> {
  const { typed, reading } = record;
  const form = formOfRecord(record);
  if (Object.keys(typed).some(isField)) return { ...formTexts(form), ...typed };
  const { car } = view.car;
  const texts = fieldsOf(car, form).flatMap(({ id, where, angle }) => {
    const value = angleOf(reading, where, angle);
    return value === undefined ? [] : [[id, valueText(angle, value, car.wheel.rimDiameter)]];
  });
  return { ...typed, ...Object.fromEntries(texts), ...formTexts(form), ...unitTexts(unitsFor(car)) };
}
