/** Between the database's records and the car file that is exchanged. Pre-checks and typed digits stay on the phone. */
import type { CarFile, Round, Visit } from '../contract.ts';
import { byText, oldestFirst } from './order.ts';
import type { CarRecord, MoveRecord, ReadingRecord, VisitRecord } from './stored.ts';

/** One car with its visits, oldest first; records of other cars are passed over. */
export function toCarFile(
  { car, spec }: Pick<CarRecord, 'car' | 'spec'>,
  visits: readonly VisitRecord[],
  readings: readonly ReadingRecord[],
  moves: readonly MoveRecord[],
): CarFile {
  const own = visits
    .filter(({ carId }) => carId === car.id)
    .sort((a, b) => byText(a.opened, b.opened) || byText(a.id, b.id));
  return {
    format: 'cornerwright',
    version: 1,
    car,
    spec,
    visits: own.map((visit) => ({
      id: visit.id,
      carId: visit.carId,
      opened: visit.opened,
      ...(visit.closed === undefined ? {} : { closed: visit.closed }),
      ...(visit.deleted && { deleted: visit.deleted }),
      // That it was opened again, or closed twice, goes with it; its checks stay here.
      ...(visit.marks?.closed && { marks: { closed: visit.marks.closed } }),
      rounds: oldestFirst(readings.filter(({ visitId }) => visitId === visit.id)).map((one) => toRound(one, moves)),
    })),
  };
}

function toRound(record: ReadingRecord, moves: readonly MoveRecord[]): Round {
  const { visitId: _, typed: __, ...round } = record;
  const moved = oldestFirst(moves.filter(({ readingId }) => readingId === record.id));
  return { ...round, moved: moved.map(({ visitId: _, readingId: __, ...move }) => move) };
}

export interface CarRecords {
  readonly car: CarRecord;
  readonly visits: readonly VisitRecord[];
  readonly readings: readonly ReadingRecord[];
  readonly moves: readonly MoveRecord[];
}
/**
 * When the car of a file was last edited, which a file does not tell: before all that is known. So it never takes the
 * place of an edit, and one that was made from it does not pass for another's.
 */
export const UNDATED = '1970-01-01T00:00:00.000Z';

export interface FromCarFile {
  /** ISO 8601: the time of a move that has none. */
  readonly now: string;
  /** An id for a round or a move that has none (a file made by hand). */
  readonly makeId: () => string;
}

/** The records of a validated car file. Ids are kept: importing a file twice gives the same records. */
export function fromCarFile({ car, spec = {}, visits = [] }: CarFile, { now, makeId }: FromCarFile): CarRecords {
  const parts = visits.flatMap((visit) => visit.rounds.map((round) => fromRound(visit, round, now, makeId)));
  return {
    car: { id: car.id, car, spec, changed: UNDATED },
    visits: visits.map(({ rounds: _, ...visit }) => visit),
    readings: parts.map(({ reading }) => reading),
    moves: parts.flatMap(({ moves }) => moves),
  };
}

function fromRound(visit: Visit, { moved = [], ...round }: Round, now: string, makeId: () => string) {
  const at = round.at ?? visit.opened;
  const reading: ReadingRecord = { ...round, id: round.id ?? makeId(), visitId: visit.id, at, typed: {} };
  const moves = moved.map(
    (move): MoveRecord => ({
      ...move,
      id: move.id ?? makeId(),
      visitId: visit.id,
      readingId: reading.id,
      at: move.at ?? round.at ?? now,
      outcome: move.outcome ?? 'done',
    }),
  );
  return { reading, moves };
}
