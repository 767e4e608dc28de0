/** First load. What can be done to a visit: begin one, take a reading down, correct it, sign off, open it again. */
import type { CarPacks, CarSettings, Reading } from '../../core/contract.ts';
import { angleOf } from '../../core/reading/axle-angles.ts';
import { movedOn, packsAfter } from '../../core/records/rounds.ts';
import type { CarRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { newId, now } from '../store/index.ts';
import { type Field, fieldsOf, isField, readingOf, TOE_UNIT, unitsOf } from './fields.ts';
import { type Form, formOf, formOfRecord, formTexts } from './form.ts';
import { setToeReference, setTotalToe, setUnits, toeReference, units, usualForm } from './preferences.ts';
import { draft, dropDraft, keep, keepDraft, records } from './records.ts';
import { readingId } from './same-id.ts';
import { choice, dropVisitDrafts, ENTRY_REPLACES, ENTRY_STEP, entryDraft, visitDraft } from './stage.ts';
import { openVisit, type RoundView, type VisitView } from './visits.ts';

/** The caret of an entry that has been walked through. */
export const END = 'end';

/** The open visit of a car, or a new one. */
export function beginVisit(car: CarRecord): VisitRecord {
  const open = openVisit(records.value, car.id);
  if (open) return open;
  const visit: VisitRecord = { id: newId(), carId: car.id, opened: now() };
  keep(['visits', visit]);
  return visit;
}

/** The reading that the entry under way corrects. */
export function correcting(view: VisitView): RoundView | undefined {
  const replaces = draft(entryDraft(view.visit.id))?.texts[ENTRY_REPLACES];
  return view.rounds.find(({ record }) => record.id === replaces);
}

/** A re-measure asks what the reading before it had. */
export function beginEntry(view: VisitView): void {
  const last = view.rounds.at(-1);
  const form = last ? formOfRecord(last.record) : usualForm(view.car.id);
  keepDraft(entryDraft(view.visit.id), formTexts(form), fieldsOf(view.car.car, form)[0]?.id);
}

/** The form of the entry under way. */
export const entryForm = (view: VisitView): Form =>
  formOf(draft(entryDraft(view.visit.id))?.texts ?? {}, usualForm(view.car.id));

/**
 * Another form for the entry under way, and for the next ones. What was typed in a field that is no longer asked stays
 * in the draft: it is there again when the form is changed back.
 */
export function changeForm(view: VisitView, change: Partial<Form>): void {
  const id = entryDraft(view.visit.id);
  const { texts = {}, cursor } = draft(id) ?? {};
  const form = { ...entryForm(view), ...change };
  const fields = fieldsOf(view.car.car, form);
  const empty = ({ id }: Field): boolean => !texts[id];
  const stays = fields.some(({ id }) => id === cursor);
  const to = stays ? cursor : (fields.find(empty)?.id ?? END);
  const unit = unitsOf(texts, units.value).toe;
  keepDraft(id, { ...texts, [TOE_UNIT]: unit, ...formTexts(form) }, to);
  if (change.total !== undefined) setTotalToe(view.car.id, change.total);
  if (change.sai !== undefined) setUnits({ sai: change.sai });
}

/** Whether the entry under way holds any figure. */
export function anythingTyped(view: VisitView): boolean {
  const texts = draft(entryDraft(view.visit.id))?.texts ?? {};
  return Object.entries(texts).some(([key, text]) => isField(key) && text !== '');
}

/** All cells are walked through: the first reading goes on to the adjusters, a later one is complete. */
export function entryReady(view: VisitView): void {
  const id = entryDraft(view.visit.id);
  const texts = draft(id)?.texts ?? {};
  const corrected = correcting(view);
  const last = corrected ?? view.rounds.at(-1);
  const adjustersMayDiffer = !last || (corrected && view.rounds.length === 1 && corrected.moves.length === 0);
  if (adjustersMayDiffer) keepDraft(id, { ...texts, [ENTRY_STEP]: 'standing' }, END);
  else {
    const { settings, packs = {} } = last.record;
    if (corrected) takeDown(view, settings, packs);
    else takeDown(view, movedOn(settings, last.moves), packsAfter(packs, last.moves));
  }
}

/** The typed reading becomes a record, once. */
export function takeDown(view: VisitView, settings: CarSettings, packs?: CarPacks): void {
  if (!draft(entryDraft(view.visit.id))) return;
  if (asksReference(view)) setToeReference(entryForm(view).reference);
  keep(['readings', typedRecord(view, settings, packs)]);
  dropDraft(entryDraft(view.visit.id));
}

/** The record that the typed reading makes. */
export function typedRecord(view: VisitView, settings: CarSettings, packs: CarPacks = {}): ReadingRecord {
  const texts = draft(entryDraft(view.visit.id))?.texts ?? {};
  const { car } = view.car;
  const form = entryForm(view);
  const fields = fieldsOf(car, form);
  const asked = (key: string): boolean => !isField(key) || fields.some((field) => field.id === key);
  const typed = Object.fromEntries(
    Object.entries({ ...texts, ...formTexts(form) }).filter(
      ([key, text]) => !key.startsWith('@') && text !== '' && asked(key),
    ),
  );
  const replaces = texts[ENTRY_REPLACES];
  const what = { visitId: view.visit.id, typed, ...(replaces ? { replaces } : {}) };
  return {
    ...what,
    id: readingId(records.value.readings, what),
    at: now(),
    reading: withReference(form, readingOf(fields, texts, units.value, car.wheel.rimDiameter)),
    settings,
    ...(Object.keys(packs).length > 0 && { packs }),
  };
}

/** A gauge that gave no rear toe knows of no thrust line. */
const withReference = ({ reference }: Form, reading: Reading): Reading =>
  angleOf(reading, 'rear', 'thrustAngle') === undefined ? reading : { ...reading, toeReference: reference };

/** Asked once, on the first reading of all, where the line makes a difference: whoever goes on has taken what was shown. */
export const asksReference = (view: VisitView): boolean =>
  !toeReference.value && view.rounds.length === 0 && !entryForm(view).total;

/** Signed off: what was ticked goes into the visit, its drafts end. */
export function signOff(view: VisitView): void {
  const ticks = Object.entries(draft(visitDraft(view.visit.id))?.texts ?? {}).filter(
    ([key, text]) => text === 'yes' && /^(left|torque):/.test(key),
  );
  const checks = Object.fromEntries(ticks.map(([key]) => [key, 'ok']));
  const at = now();
  keep(['visits', marked(view.visit, { closed: at, checks }, at)]);
  dropVisitDrafts(view.visit.id);
}

/** The undo of signing off; its ticks come back too. */
export function openAgain(view: VisitView): void {
  const visit = marked(view.visit, { closed: '' }, now());
  const ticks = Object.keys(visit.checks ?? {}).filter((key) => /^(left|torque):/.test(key));
  const last = view.rounds.at(-1)?.record.id ?? '';
  keep(['visits', visit]);
  keepDraft(
    visitDraft(visit.id),
    { ...Object.fromEntries(ticks.map((key) => [key, 'yes'])), signOff: last },
    undefined,
  );
}

/** Whether something was ticked, in the draft of an open visit or in a closed one. */
export const isTicked = ({ visit }: VisitView, key: string): boolean =>
  choice(visit.id, key) === 'yes' || (Boolean(visit.closed) && visit.checks?.[key] === 'ok');
