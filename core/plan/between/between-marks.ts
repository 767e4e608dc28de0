/**
 * Moves that go by the rack are not bound to whole marks. About the best plan in whole marks, what is watched while it is
 * turned is set between them, so that every window's number comes as near as can be to its aim, or for the sake of the chance
 * to the middle of its window: Gauss–Newton on the full model, within two marks to either side; any number, where some of a plan's moves are left.
 */
import type { Corner, PlanStyle } from '../../contract.ts';
import { limitNotes } from '../leave.ts';
import { SURE } from '../practical.ts';
import {
  adjusterOf,
  type Evaluation,
  evaluate,
  kindOfAdjuster,
  type Positions,
  type Problem,
  settingsOf,
} from '../problem.ts';
import { aimOf, type Free, marksOf, middleOf, nearest } from './nearest.ts';

/** Marks to either side. */
const REACH = 2;
/** What counts as better. */
const LEAST = 1e-9;

/**
 * The positions with what goes by the rack set between its marks, where that is better by the style.
 * @param reach marks to either side
 * @param only of these corners; absent: of all
 */
export function betweenMarks(
  problem: Problem,
  positions: Positions,
  style: PlanStyle,
  reach = REACH,
  only?: readonly Corner[],
): Positions {
  const free = freeOf(problem, positions, reach).filter(({ corner }) => only?.includes(corner) ?? true);
  if (free.length === 0) return positions;
  let best = { positions, judged: evaluate(problem, positions) };
  for (const target of style === 'closest' || style === 'least-work' ? [aimOf] : [aimOf, middleOf]) {
    const fine = nearest(problem, problem.terms, positions, free, target);
    if (!isAllowed(problem, positions, fine, free)) continue;
    const judged = evaluate(problem, fine);
    if (isBetter(judged, best.judged, style)) best = { positions: fine, judged };
  }
  return best.positions;
}

/** In the windows, then by the style. */
function isBetter(one: Evaluation, other: Evaluation, style: PlanStyle): boolean {
  if (one.inWindow !== other.inWindow) return one.inWindow;
  const enough = ({ chance }: Evaluation): number => (style === 'surest' ? chance : Math.min(chance, SURE));
  const gain = style === 'surest' || style === 'practical' ? enough(one) - enough(other) : 0;
  return Math.abs(gain) > LEAST ? gain > 0 : one.distance < other.distance - LEAST;
}

function freeOf({ request, model, uncertainty }: Problem, positions: Positions, reach = REACH): Free[] {
  if (!request.live?.length) return [];
  return model.flatMap((assembly) =>
    uncertainty
      .get(assembly)!
      .setBy(settingsOf(assembly, positions))
      .flatMap(({ side, id }): Free[] => {
        const corner = assembly.corners[side]!;
        const adjuster = adjusterOf(request, { corner, adjuster: id });
        const at = positions[corner][id] as number;
        const marks = marksOf(kindOfAdjuster(adjuster), adjuster);
        if (!marks) return [];
        const low = Math.max(marks.low, at - reach * marks.step);
        const high = Math.min(marks.high, at + reach * marks.step);
        return low < high ? [{ corner, adjuster: id, step: marks.step, low, high }] : [];
      }),
  );
}

/** Every fine place is one that the rack leads to, and no limit between two adjusters is broken by it. */
function isAllowed(problem: Problem, before: Positions, positions: Positions, free: readonly Free[]): boolean {
  const still = freeOf(problem, positions);
  return (
    free.every((one) => still.some(({ corner, adjuster }) => corner === one.corner && adjuster === one.adjuster)) &&
    limitNotes(problem, positions).length <= limitNotes(problem, before).length
  );
}
