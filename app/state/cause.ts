/**
 * Why a re-measure is not as predicted, as somebody who stands at the car has answered it. "Yes" makes the records what they
 * are by that cause: corrections of the moves, or of a reading, in one write; "no" is a mark of the visit, so that it is not
 * said again.
 */
import type {
  AdjusterRef,
  CarPacks,
  Corner,
  Correction,
  Explanation,
  Reading,
  Settings,
  WheelReading,
} from '../../core/contract.ts';
import { axleOf, isLeft } from '../../core/corners.ts';
import type { CarRecord, ReadingRecord } from '../../core/records/stored.ts';
import { edited } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { byId, type Entry, now, ownedBy } from '../store/index.ts';
import { correctReading } from './correct-reading.ts';
import { unitsOf } from './fields.ts';
import { formOfRecord } from './form.ts';
import { keep, records } from './records.ts';
import { moveId, readingId } from './same-id.ts';
import { isFraction, isLength } from './typing.ts';
import { unitsFor, valueText } from './units.ts';
import { unevenUnknown } from './unknown-places.ts';
import { type RoundView, sameRef, type VisitView } from './visits.ts';

const causeKey = ({ record }: RoundView, { cause, corner, adjuster, angle, reading }: Explanation): string =>
  `cause:${record.id}:${[cause, corner, adjuster?.adjuster, angle, reading].join('/')}`;

const roundBefore = ({ rounds }: VisitView, { record }: RoundView): RoundView | undefined =>
  rounds[rounds.findIndex((one) => one.record.id === record.id) - 1];

/** `no`, `yes` and when that was written, or nothing yet. */
export const answerTo = ({ visit }: VisitView, round: RoundView, one: Explanation): string =>
  visit.checks?.[causeKey(round, one)] ?? '';

/** A mark of the visit, beside what else is written with it. */
function answered({ visit }: VisitView, round: RoundView, one: Explanation, answer: string, at: string): Entry {
  const latest = byId(records.value.visits, visit.id) ?? visit;
  return ['visits', marked(latest, { checks: { [causeKey(round, one)]: answer } }, at)];
}

export function saidNo(view: VisitView, round: RoundView, one: Explanation): void {
  keep(answered(view, round, one, 'no', now()));
}

/**
 * Whether it can be, as the figure was typed: a toe that was typed as a length has no digits of a degree to exchange, one in
 * parts of an inch no point to misplace.
 */
export function fitsTyping(view: VisitView, round: RoundView, { cause, angle, reading }: Explanation): boolean {
  if (angle !== 'toe' || (cause !== 'digits' && cause !== 'decimal')) return true;
  const { record } = (reading === 'before' && roundBefore(view, round)) || round;
  const own = unitsOf(record.typed, unitsFor(view.car.car));
  return cause === 'digits' ? !isLength(own, angle) : !isFraction(own, angle);
}

/** What "yes" does to the records; nothing where the reading has to be typed again, or only the part can be looked at. */
export function canCorrect(view: VisitView, round: RoundView, { correction }: Explanation): boolean {
  if (!correction) return false;
  if (correction.of === 'build') return true;
  const before = roundBefore(view, round);
  if (!before) return false;
  if (correction.of === 'moves') {
    // Where nobody knows where it stands a place is none of its records'.
    return !unevenUnknown(view, round).some((lost) => correction.stand.some((one) => sameRef(one, lost)));
  }
  // Of a total nobody knows which wheel's half was wrong.
  const { record } = correction.reading === 'before' ? before : round;
  return !(formOfRecord(record).total && correction.values.some(({ angle }) => angle === 'toe'));
}

/** @param round the re-measure that is explained */
export function saidYes(view: VisitView, round: RoundView, one: Explanation): void {
  const at = now();
  const mark = answered(view, round, one, yesAt(at), at);
  const before = roundBefore(view, round);
  const { correction } = one;
  if (!correction || !before || !canCorrect(view, round, one)) {
    keep(mark);
    if (one.cause !== 'bent') correctReading(view, round);
    return;
  }
  if (correction.of === 'moves') keep(mark, ...asMade(view, before, round, correction, at));
  else if (correction.of === 'reading') {
    keep(mark, corrected(view, correction.reading === 'before' ? before : round, correction, at));
  } else keep(mark, rebuilt(view.car, correction, at));
}

type Of<K extends Correction['of']> = Extract<Correction, { readonly of: K }>;

/** The moves as they were made, and the reading with the adjusters where they stood at it. */
function asMade(
  { visit }: VisitView,
  before: RoundView,
  round: RoundView,
  { stand }: Of<'moves'>,
  at: string,
): readonly Entry[] {
  const all = records.value;
  const moves = stand.flatMap(({ corner, adjuster, at: to }): Entry[] => {
    const ref: AdjusterRef = { corner, adjuster };
    const made = before.moves.findLast((move) => sameRef(move, ref) && move.outcome !== 'wont-move');
    const from = made?.from ?? before.record.settings[corner]?.[adjuster];
    if (from === undefined || (!made && from === to)) return [];
    const {
      id: _,
      at: __,
      shims: ___,
      ...rest
    } = made ?? {
      ...{ id: '', at: '', shims: [], visitId: visit.id, readingId: before.record.id, from, ...ref },
    };
    const move = { ...rest, to, outcome: 'done' as const, ...(made && { replaces: made.id }) };
    return [['moves', { ...move, id: moveId(all.moves, move), at }]];
  });
  const settings: { -readonly [C in Corner]?: Settings } = { ...round.record.settings };
  for (const { corner, adjuster, at: to } of stand) settings[corner] = { ...settings[corner], [adjuster]: to };
  const { packs, ...record } = round.record;
  const known = packs && withoutPacks(packs, stand);
  return [...moves, anew({ ...record, settings, ...(known && { packs: known }) }, at)];
}

/** Of a pack that was built otherwise than the card said nobody knows what is in it. */
function withoutPacks(packs: CarPacks, refs: readonly AdjusterRef[]): CarPacks {
  const known: { -readonly [C in Corner]?: CarPacks[C] } = { ...packs };
  for (const { corner, adjuster } of refs) {
    const { [adjuster]: _, ...rest } = known[corner] ?? {};
    if (known[corner]) known[corner] = rest;
  }
  return known;
}

/** The reading with the figures that were meant, as they would have been typed. */
function corrected({ car }: VisitView, { record }: RoundView, { values }: Of<'reading'>, at: string): Entry {
  const rim = car.car.wheel.rimDiameter;
  const { toe } = unitsOf(record.typed, unitsFor(car.car));
  const texts = values.map(({ corner, angle, value }) => [`${corner}.${angle}`, valueText(angle, value, rim, toe)]);
  const wheels: { -readonly [C in Corner]?: WheelReading } = {};
  for (const { corner, angle, value } of values) {
    wheels[corner] = { ...record.reading[corner], ...wheels[corner], [angle]: value };
  }
  const reading: Reading = { ...record.reading, ...wheels };
  return anew({ ...record, reading, typed: { ...record.typed, ...Object.fromEntries(texts) } }, at);
}

/** A correction of a reading. */
function anew({ id, over: _, ...content }: ReadingRecord, at: string): Entry {
  const what = { ...content, replaces: id };
  return ['readings', { ...what, id: readingId(records.value.readings, what), at }];
}

/** The car with an adjuster as it is fitted, on that side alone. */
function rebuilt(record: CarRecord, { corner, adjuster }: Of<'build'>, at: string): Entry {
  const latest = byId(records.value.cars, record.id) ?? record;
  const { id, car, spec, practice } = latest;
  const axle = car[axleOf(corner)];
  const as = (list: typeof axle.adjusters) => list.map((one) => (one.id === adjuster.id ? adjuster : one));
  const right = axle.rightAdjusters ?? axle.adjusters;
  const built = isLeft(corner)
    ? { ...axle, adjusters: as(axle.adjusters), rightAdjusters: right }
    : { ...axle, rightAdjusters: as(right) };
  const next = { id, car: { ...car, [axleOf(corner)]: built }, spec, ...(practice && { practice }) };
  return ['cars', edited(latest, next, at)];
}

/** What "yes" to a cause has corrected in a round or in the one before it, as long as nothing was corrected after it. */
interface Corrected {
  /** The mark that says so. */
  readonly key: string;
  readonly record: ReadingRecord;
}

export function correctedIn({ visit }: VisitView, rounds: readonly (RoundView | undefined)[]): Corrected | undefined {
  const said = Object.entries(visit.checks ?? {}).filter(([key, text]) => key.startsWith('cause:') && isYes(text));
  const records = rounds.flatMap((round) => round?.record ?? []);
  const found = said.flatMap(([key, text]) => {
    const record = records.find(({ at, replaces }) => replaces !== undefined && text === yesAt(at));
    return record ? [{ key, record }] : [];
  });
  return found[0];
}

/** All that was written at that touch stands again as it was before; what was written then stays in the records. */
export function takeBackYes({ visit }: VisitView, { key, record }: Corrected): void {
  const all = records.value;
  const at = now();
  const latest = byId(all.visits, visit.id) ?? visit;
  const moves = ownedBy(all.moves, visit.id).filter((move) => move.at === record.at);
  const before = byId(all.readings, record.replaces ?? '');
  keep(
    ['visits', marked(latest, { checks: { [key]: '' } }, at)],
    ...moves.map((move): Entry => {
      const was = move.replaces === undefined ? undefined : byId(all.moves, move.replaces);
      // One that was not on record before is taken back.
      const { replaces: _, ...content } = was ?? { ...move, to: move.from };
      const next = { ...content, replaces: move.id };
      return ['moves', { ...next, id: moveId(all.moves, next), at }];
    }),
    ...(before ? [anew({ ...before, id: record.id }, at)] : []),
  );
}

const yesAt = (at: string): string => `yes ${at}`;
const isYes = (text: string): boolean => text.startsWith('yes');
