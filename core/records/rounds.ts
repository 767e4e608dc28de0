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
    const next = record.id === undefined ? undefined : corrections.get(record.id);
    return next && !seen.has(next) ? latest(next, new Set([...seen, next])) : record;
  };
  return records.filter(({ replaces }) => replaces === undefined || !known.has(replaces)).map((one) => latest(one));
}

/** The visit that was opened last, of those with a round; the later in the file where two were opened together. */
export function latestVisit(visits: readonly Visit[]): Visit | undefined {
  return visits
    .filter(({ rounds }) => rounds.length > 0)
    .reduce<Visit | undefined>((best, visit) => (best && best.opened > visit.opened ? best : visit), undefined);
}

export const latestRound = (visit: Visit): Round | undefined => current(visit.rounds).at(-1);

/**
 * Positions after moves that hold; what would not move has stayed where it was.
 * @param settings positions by corner and adjuster id, before the moves
 * @param moves in the order in which they were made, corrections among them
 */
export function movedOn(settings: CarSettings, moves: readonly Moved[]): CarSettings {
  const next: Partial<Record<Corner, Record<string, Position>>> = {};
  for (const [corner, own] of Object.entries(settings)) next[corner as Corner] = { ...own };
  for (const { corner, adjuster, to, outcome } of current(moves)) {
    if (outcome !== 'wont-move') next[corner] = { ...next[corner], [adjuster]: to };
  }
  return next;
}

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
