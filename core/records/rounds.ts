/** What holds of immutable records: a correction stands in the place of the record that it replaces. */
import type {
  AdjusterRef,
  CarPacks,
  CarSettings,
  Corner,
  Moved,
  Position,
  Round,
  ShimCount,
  Visit,
} from '../contract.ts';
import { isDeleted, lastMarked } from './deletion.ts';

interface Correctable {
  readonly id?: string;
  readonly replaces?: string;
}

/**
 * The records that hold, each at the place of the one that it corrects, in the order of the first ones.
 * @param records rounds or moves; one with `replaces` corrects the one of that id, and may itself be corrected
 */
export function current<T extends Correctable>(records: readonly T[]): readonly T[] {
  const known = new Set(records.map(({ id }) => id));
  const corrections = new Map(records.filter((one) => one.replaces !== undefined).map((one) => [one.replaces, one]));
  const latest = (record: T, seen: ReadonlySet<T> = new Set()): T => {
    const next = corrections.get(record.id);
    return next && !seen.has(next) ? latest(next, new Set([...seen, next])) : record;
  };
  return records.filter(({ replaces }) => replaces === undefined || !known.has(replaces)).map((one) => latest(one));
}

/** All of the records that correct one another with this one, at first or second hand. */
export function family<T extends Correctable>(records: readonly T[], record: T): readonly T[] {
  const byId = new Map(records.map((one) => [one.id, one]));
  const origin = (one: T): string | undefined => {
    const seen = new Set<T>();
    let first = one;
    while (first.replaces !== undefined) {
      seen.add(first);
      const before = byId.get(first.replaces);
      // A correction of what is not here holds by itself.
      if (!before) return first.id;
      // Of those that correct one another in a circle, one stands for all.
      if (seen.has(before)) return [...seen].map(({ id = '' }) => id).sort()[0];
      first = before;
    }
    return first.id;
  };
  const own = origin(record);
  return records.filter((one) => origin(one) === own);
}

/**
 * Other corrections of the record that holds, as two phones make them apart, that nobody has decided about.
 * @param holds one of those that `current` gives
 */
export function madeApart<T extends Correctable & { readonly over?: readonly string[] }>(
  records: readonly T[],
  holds: T,
): readonly T[] {
  const all = family(records, holds);
  const replaced = new Set(all.map(({ replaces }) => replaces));
  const decided = new Set(all.flatMap(({ over = [] }) => over));
  return all.filter(({ id }) => id !== undefined && id !== holds.id && !replaced.has(id) && !decided.has(id));
}

/** What is known to have been done in a visit of a file. */
const workIn = ({ rounds }: Visit): number => rounds.reduce((sum, { moved = [] }) => sum + 1 + moved.length, 0);

/** The visit that was opened last, of those with a round that are not deleted; the later where two were opened together. */
export function latestVisit(visits: readonly Visit[]): Visit | undefined {
  return visits
    .filter(
      (visit) => visit.rounds.length > 0 && !isDeleted(visit, { records: workIn(visit), latest: lastMarked(visit) }),
    )
    .reduce<Visit | undefined>((best, visit) => (best && best.opened > visit.opened ? best : visit), undefined);
}

export const latestRound = (visit: Visit): Round | undefined => current(visit.rounds).at(-1);

/**
 * Positions after moves that hold; what would not move has stayed where it was.
 * @param settings positions by corner and adjuster id, before the moves
 * @param moves in the order in which they were made, corrections among them
 * @param unknown adjusters of unknown place, counted from anywhere: a move turns them on by as much as it says, until one is
 * set to a place that can be read
 */
export function movedOn(
  settings: CarSettings,
  moves: readonly Moved[],
  unknown: readonly AdjusterRef[] = [],
): CarSettings {
  const next: Partial<Record<Corner, Record<string, Position>>> = {};
  for (const [corner, own] of Object.entries(settings)) next[corner as Corner] = { ...own };
  const lost = new Set(unknown.map(({ corner, adjuster }) => `${corner}/${adjuster}`));
  for (const { corner, adjuster, from, to, outcome } of current(moves)) {
    if (outcome === 'wont-move') continue;
    if (outcome === 'set-to') lost.delete(`${corner}/${adjuster}`);
    const stood = next[corner]?.[adjuster] ?? from;
    const isTurnedOn = lost.has(`${corner}/${adjuster}`) && [stood, from, to].every((at) => typeof at === 'number');
    const stands = isTurnedOn ? (stood as number) + ((to as number) - (from as number)) : to;
    next[corner] = { ...next[corner], [adjuster]: stands };
  }
  return next;
}

/** Adjusters of unknown place that no move has set to a place that can be read. */
export const stillUnknown = (unknown: readonly AdjusterRef[], moves: readonly Moved[]): readonly AdjusterRef[] =>
  unknown.filter(
    ({ corner, adjuster }) =>
      !current(moves).some((one) => one.corner === corner && one.adjuster === adjuster && one.outcome === 'set-to'),
  );

/**
 * What is in packs after moves that hold, as far as it is known: a pack that was changed holds what the move says that it
 * was built of, and is not known where the move says nothing.
 */
export function packsAfter(packs: CarPacks, moves: readonly Moved[]): CarPacks {
  const next: Partial<Record<Corner, Record<string, readonly ShimCount[]>>> = {};
  for (const [corner, own] of Object.entries(packs)) next[corner as Corner] = { ...own };
  for (const { corner, adjuster, from, to, outcome, shims } of current(moves)) {
    if (outcome === 'wont-move' || from === to) continue;
    const { [adjuster]: _, ...others } = next[corner] ?? {};
    if (shims || next[corner]) next[corner] = shims ? { ...others, [adjuster]: shims } : others;
  }
  return next;
}

/** Where an adjuster was left at a guess. */
export interface Guessed extends AdjusterRef {
  /** One standard deviation of the place, in its own unit. */
  readonly deviation: number;
}

/** Adjusters that were left at a guess in a visit, as the rack led them, and of which nobody has said since where they stand. */
export function guessedIn({ rounds }: Visit): readonly Guessed[] {
  const known = new Map<string, Guessed & { readonly at: Position }>();
  for (const { settings, moved = [] } of current(rounds)) {
    for (const [key, { corner, adjuster, at }] of known) if (settings[corner]?.[adjuster] !== at) known.delete(key);
    for (const { corner, adjuster, to, outcome, setBy } of current(moved)) {
      if (outcome === 'wont-move') continue;
      const key = `${corner}/${adjuster}`;
      if (setBy?.within) known.set(key, { corner, adjuster, deviation: setBy.within, at: to });
      else known.delete(key);
    }
  }
  return [...known.values()].map(({ at: _, ...one }) => one);
}

/** Adjusters that would not move in a visit and have not been moved since. */
export function seized(visit: Visit): readonly AdjusterRef[] {
  const refs = new Map<string, AdjusterRef>();
  for (const { corner, adjuster, outcome } of current(visit.rounds).flatMap((round) => current(round.moved ?? []))) {
    const key = `${corner}/${adjuster}`;
    if (outcome === 'wont-move') refs.set(key, { corner, adjuster });
    else refs.delete(key);
  }
  return [...refs.values()];
}
