/** First load. What can be done to a visit: begin one, take a reading down, correct it, sign off, open it again. */
import type { CarSettings, Reading } from '../../core/contract.ts';
import { movedOn } from '../../core/records/rounds.ts';
import type { CarRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { newId, now } from '../store/index.ts';
import { fieldsOf, isField, readingOf, TOE_UNIT } from './fields.ts';
import { toeReference, units } from './preferences.ts';
import { draft, dropDraft, keep, keepDraft, records } from './records.ts';
import { choice, dropVisitDrafts, ENTRY_REPLACES, ENTRY_STEP, entryDraft, visitDraft } from './stage.ts';
import { valueText } from './units.ts';
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

export function beginEntry(view: VisitView): void {
  const first = fieldsOf(view.car.car, units.value.sai)[0]?.id;
  keepDraft(entryDraft(view.visit.id), {}, first);
}

/** Opens a reading again with what was typed; saving makes a new record that replaces it. */
export function correctReading(view: VisitView, { record }: RoundView): void {
  keepDraft(entryDraft(view.visit.id), { ...typedOf(view, record), [ENTRY_REPLACES]: record.id }, END);
}

/** What was typed; a reading that came in a file has its values only. */
function typedOf(view: VisitView, { typed, reading }: ReadingRecord): Readonly<Record<string, string>> {
  if (Object.keys(typed).some(isField)) return typed;
  const { car } = view.car;
  const texts = fieldsOf(car, true).flatMap(({ id, corner, angle }) => {
    const value = reading[corner]?.[angle];
    return value === undefined ? [] : [[id, valueText(angle, value, car.wheel.rimDiameter)]];
  });
  return { ...typed, ...Object.fromEntries(texts), [TOE_UNIT]: units.value.toe };
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
  else takeDown(view, corrected ? last.record.settings : movedOn(last.record.settings, last.moves));
}

/** The typed reading becomes a record. */
export function takeDown(view: VisitView, settings: CarSettings): void {
  const id = entryDraft(view.visit.id);
  const texts = draft(id)?.texts ?? {};
  const { car } = view.car;
  const typed = Object.fromEntries(Object.entries(texts).filter(([key, text]) => !key.startsWith('@') && text !== ''));
  const replaces = texts[ENTRY_REPLACES];
  const record: ReadingRecord = {
    id: newId(),
    visitId: view.visit.id,
    at: now(),
    reading: withReference(view, readingOf(fieldsOf(car, true), texts, units.value, car.wheel.rimDiameter)),
    settings,
    typed,
    ...(replaces ? { replaces } : {}),
  };
  keep(['readings', record]);
  dropDraft(id);
}

const withReference = ({ car }: VisitView, reading: Reading): Reading =>
  toeReference(car.id) === 'thrust-line' ? { ...reading, toeReference: 'thrust-line' } : reading;

/** Signed off: what was ticked goes into the visit, its drafts end. */
export function signOff(view: VisitView): void {
  const ticks = Object.entries(draft(visitDraft(view.visit.id))?.texts ?? {}).filter(
    ([key, text]) => text === 'yes' && /^(left|torque):/.test(key),
  );
  const checks = { ...view.visit.checks, ...Object.fromEntries(ticks.map(([key]) => [key, 'ok'])) };
  keep(['visits', { ...view.visit, closed: now(), checks }]);
  dropVisitDrafts(view.visit.id);
}

/** The undo of signing off; its ticks come back too. */
export function openAgain(view: VisitView): void {
  const { closed: _, ...visit } = view.visit;
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
