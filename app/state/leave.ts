/**
 * Moves that are left alone this time. Nothing seized: the rest of the plan stands as it is, and is judged without them.
 * Kept in the visit's draft with the mark from which the plan then started. Once a plan is made anew, as something would
 * not move or was set elsewhere, what was left before is not planned with.
 */
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import { type AdjusterRef, CORNERS } from '../../core/contract.ts';
import { choice, choose } from './stage.ts';
import { type RoundView, refKey, type VisitView } from './visits.ts';

export interface Left {
  /** Of the plan as it is. */
  readonly now: readonly AdjusterRef[];
  /** Of plans before it in this round. */
  readonly before: readonly AdjusterRef[];
}

const leaveKey = ({ record }: RoundView, ref: AdjusterRef): string => `leave:${record.id}:${refKey(ref)}`;
const FOUND = 'found';

export function leave({ visit }: VisitView, round: RoundView, refs: readonly AdjusterRef[]): void {
  const from = round.base.at(-1)?.id ?? FOUND;
  choose(visit.id, Object.fromEntries(refs.map((ref) => [leaveKey(round, ref), from])));
}

/** The undo of leaving it: it is a move of the plan again. */
export function takeUp({ visit }: VisitView, round: RoundView, refs: readonly AdjusterRef[]): void {
  choose(visit.id, Object.fromEntries(refs.map((ref) => [leaveKey(round, ref), ''])));
}

export function leftIn({ visit, car }: VisitView, round: RoundView): Left {
  const earlier = [FOUND, ...round.base.map(({ id }) => id)].slice(0, -1);
  const left = CORNERS.flatMap((corner) =>
    adjustersOf(car.car, corner).flatMap(({ id }) => {
      const ref = { corner, adjuster: id };
      const from = choice(visit.id, leaveKey(round, ref));
      return from ? [{ ref, isBefore: earlier.includes(from) }] : [];
    }),
  );
  const those = (before: boolean) => left.filter(({ isBefore }) => isBefore === before).map(({ ref }) => ref);
  return { now: those(false), before: those(true) };
}
