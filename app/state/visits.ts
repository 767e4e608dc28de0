/**
 * First load. A visit as the strip shows it, derived from the records alone: its rounds, what was done in each,
 * where the adjusters stand. Nothing here is kept anywhere.
 */
import type { AdjusterRef, CarSettings, Reading } from '../../core/contract.ts';
import { byText, oldestFirst } from '../../core/records/order.ts';
import { current, family, movedOn } from '../../core/records/rounds.ts';
import type { CarRecord, MoveRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { byId, ownedBy } from '../store/index.ts';
import { isGone } from './gone.ts';
import type { Records } from './records.ts';

export interface RoundView {
  readonly record: ReadingRecord;
  /** All that was done after this reading, in order; withdrawn marks are gone. */
  readonly moves: readonly MoveRecord[];
  /** Up to and with the last deviation ("won't move", "set to"): the plan starts from there. */
  readonly base: readonly MoveRecord[];
  /** Marks made since: they belong to the plan that starts from the base. */
  readonly done: readonly MoveRecord[];
}

export interface VisitView {
  readonly visit: VisitRecord;
  readonly car: CarRecord;
  readonly rounds: readonly RoundView[];
}

export function visitView(all: Records, visitId: string): VisitView | undefined {
  const visit = byId(all.visits, visitId);
  const car = visit && byId(all.cars, visit.carId);
  if (!visit || !car) return undefined;
  const taken = oldestFirst(ownedBy(all.readings, visitId));
  const made = oldestFirst(ownedBy(all.moves, visitId));
  const moves = current(made).filter((one) => !isWithdrawn(one));
  const rounds = current(taken).map((record) => roundView(record, ancestry(record, taken), moves));
  return { visit, car, rounds };
}

/** All readings that correct one another: moves name the one that stood, on whichever phone, when they were made. */
const ancestry = (record: ReadingRecord, taken: readonly ReadingRecord[]): ReadonlySet<string> =>
  new Set(family(taken, record).map(({ id }) => id));

function roundView(record: ReadingRecord, ids: ReadonlySet<string>, all: readonly MoveRecord[]): RoundView {
  const moves = all.filter((one) => ids.has(one.readingId));
  const last = moves.map((one) => one.outcome !== 'done').lastIndexOf(true);
  return { record, moves, base: moves.slice(0, last + 1), done: moves.slice(last + 1) };
}

/** A mark taken back is a record too: it replaces the mark and moves nothing. */
export function isWithdrawn(move: MoveRecord): boolean {
  return move.replaces !== undefined && move.outcome === 'done' && move.from === move.to;
}

/** What the car was left with: nothing is known where something moved after the last reading. */
export function leftRecord({ rounds }: VisitView): ReadingRecord | undefined {
  const last = rounds.at(-1);
  return last && !last.moves.some(({ from, to }) => from !== to) ? last.record : undefined;
}
export const leftReading = (view: VisitView): Reading | undefined => leftRecord(view)?.reading;

export const refKey = ({ corner, adjuster }: AdjusterRef): string => `${corner}/${adjuster}`;
export const sameRef = (a: AdjusterRef, b: AdjusterRef): boolean => refKey(a) === refKey(b);

/** Where the adjusters of a car stand as far as its records tell: after the last move of its last visit. */
export function lastSettings(all: Records, carId: string): CarSettings {
  const visits = visitsOf(all, carId);
  for (const visit of visits) {
    const round = visitView(all, visit.id)?.rounds.at(-1);
    if (round) return movedOn(round.record.settings, round.moves);
  }
  return {};
}

/** The newest reading of a car that has its ride heights. */
export function lastHeights(all: Records, carId: string): ReadingRecord | undefined {
  for (const visit of visitsOf(all, carId)) {
    const measured = visitView(all, visit.id)?.rounds.findLast(({ record }) => record.reading.rideHeights);
    if (measured) return measured.record;
  }
  return undefined;
}

/** Visits of a car, newest first; those that are deleted are not among them, and so nothing is derived from them. */
export function visitsOf(all: Records, carId: string): readonly VisitRecord[] {
  return newestFirst(ownedBy(all.visits, carId).filter((one) => !isGone(all, one)));
}

export function openVisit(all: Records, carId: string): VisitRecord | undefined {
  return newestFirst(ownedBy(all.visits, carId).filter((one) => !one.closed && !isGone(all, one)))[0];
}

const newestFirst = (visits: readonly VisitRecord[]): readonly VisitRecord[] =>
  [...visits].sort((a, b) => byText(b.opened, a.opened) || byText(b.id, a.id));

/** All that is kept of a car's visits, deleted or not. */
export function ownRecords(all: Records, carId: string): Pick<Records, 'visits' | 'readings' | 'moves'> {
  const visits = ownedBy(all.visits, carId);
  return {
    visits,
    readings: visits.flatMap(({ id }) => ownedBy(all.readings, id)),
    moves: visits.flatMap(({ id }) => ownedBy(all.moves, id)),
  };
}
