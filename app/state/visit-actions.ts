/** What can be done to a visit: begin one, take a reading down, correct it, sign off, open it again. */
import type { CarPacks, CarSettings, Reading } from '../../core/contract.ts';
import { angleOf } from '../../core/reading/axle-angles.ts';
import { movedOn, packsAfter } from '../../core/records/rounds.ts';
import type { CarRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { inTurn, newId, now } from '../store/index.ts';
import { type Field, fieldsOf, isField, readingOf, unitsOf, unitTexts, walkOf } from './fields.ts';
import { type Form, formOf, formOfRecord, formTexts } from './form.ts';
import { methodOf, withMethods } from './methods.ts';
import { rack, setRack, setToeReference, setTotalToe, setUnits, toeReference, usualForm } from './preferences.ts';
import { draft, dropDraft, keep, keepDraft, lookAgain, records } from './records.ts';
import { readingId } from './same-id.ts';
import { ENTRY_REPLACES, ENTRY_STEP, entryDraft } from './stage.ts';
import { END } from './typing.ts';
import { unitsFor } from './units.ts';
import { unevenUnknown } from './unknown-places.ts';
import { begunBy } from './visit-notes.ts';
import { openVisit, type RoundView, type VisitView } from './visits.ts';

/**
 * The open visit of a car, or a new one. Another window may have begun one in this moment: one window after the other
 * looks, and the next one not before what was begun is on the disk. A database that does not answer holds up nobody.
 */
export async function beginVisit(car: CarRecord): Promise<VisitRecord> {
  return (
    openVisit(records.value, car.id) ??
    inTurn(`cornerwright-new-visit:${car.id}`, async (begun) => {
      await Promise.race([lookAgain(car.id).catch(() => undefined), rest(LONGEST_LOOK)]);
      const there = openVisit(records.value, car.id);
      const visit = there ?? begunBy({ id: newId(), carId: car.id, opened: now() });
      const written = there ? undefined : keep(['visits', visit]);
      begun(visit);
      await written;
    })
  );
}

/** ms */
const LONGEST_LOOK = 1_000;
const rest = (milliseconds: number) => new Promise<void>((done) => setTimeout(done, milliseconds));

/** The reading that the entry under way corrects. */
export function correcting(view: VisitView): RoundView | undefined {
  const replaces = draft(entryDraft(view.visit.id))?.texts[ENTRY_REPLACES];
  return view.rounds.find(({ record }) => record.id === replaces);
}

/** A re-measure asks what the reading before it had, but for the ride heights: moves do not change them. */
export function beginEntry(view: VisitView): void {
  const last = view.rounds.at(-1);
  const form = last ? { ...formOfRecord(last.record), heights: false } : usualForm(view.car.id);
  keepDraft(entryDraft(view.visit.id), formTexts(form), entryFields(view, form)[0]?.id);
}

/** The form of the entry under way. */
export const entryForm = (view: VisitView): Form =>
  formOf(draft(entryDraft(view.visit.id))?.texts ?? {}, usualForm(view.car.id));

/** What is asked, in the order in which the rack shows it. */
export const entryFields = (view: VisitView, form = entryForm(view)): readonly Field[] =>
  walkOf(fieldsOf(view.car.car, form), rack.value.order);

/**
 * Another form for the entry under way, and for the next ones. What was typed in a field that is no longer asked stays
 * in the draft: it is there again when the form is changed back.
 */
export function changeForm(view: VisitView, change: Partial<Form>): void {
  const id = entryDraft(view.visit.id);
  const { texts = {}, cursor } = draft(id) ?? {};
  const form = { ...entryForm(view), ...change };
  const fields = entryFields(view, form);
  const empty = ({ id }: Field): boolean => !texts[id];
  const stays = fields.some(({ id }) => id === cursor);
  const to = stays ? cursor : (fields.find(empty)?.id ?? END);
  keepDraft(id, { ...texts, ...unitTexts(unitsOf(texts, unitsFor(view.car.car))), ...formTexts(form) }, to);
  if (change.total !== undefined) setTotalToe(view.car.id, change.total);
  if (change.sai !== undefined) setUnits({ sai: change.sai });
  if (change.heights !== undefined) setUnits({ heights: change.heights });
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
    else takeDown(view, movedOn(settings, last.moves, unevenUnknown(view, last)), packsAfter(packs, last.moves));
  }
}

/** The typed reading becomes a record, once. */
export function takeDown(view: VisitView, settings: CarSettings, packs?: CarPacks): void {
  if (!draft(entryDraft(view.visit.id))) return;
  if (asksReference(view)) setToeReference(entryForm(view).reference);
  if (rack.value.assumed) setRack({ decimals: rack.value.decimals });
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
    reading: withMethods(
      withReference(form, readingOf(fields, texts, unitsFor(car), car.wheel.rimDiameter)),
      fields,
      texts,
    ),
    settings,
    ...(Object.keys(packs).length > 0 && { packs }),
  };
}

/** A gauge that gave no rear toe knows of no thrust line. */
const withReference = ({ reference }: Form, reading: Reading): Reading =>
  angleOf(reading, 'rear', 'thrustAngle') === undefined ? reading : { ...reading, toeReference: reference };

/** Asked once, on the first reading of all, where the line makes a difference: whoever goes on has taken what was shown. */
export const asksReference = (view: VisitView): boolean =>
  !toeReference.value &&
  view.rounds.length === 0 &&
  !entryForm(view).total &&
  // A string says nothing of what the shop's rack does.
  methodOf(draft(entryDraft(view.visit.id))?.texts ?? {}, 'LF.toe') === undefined;
