/**
 * What was moved in this round is not moved again for little: the practical plan with it as it stands, unless without
 * that windows stay out that can be met, or a move of it brings as much chance as NOT_AGAIN says.
 */
import type { AdjusterRef } from '../contract.ts';
import { outside } from '../reading/spec-terms.ts';
import { SURE } from './practical.ts';
import { NOT_AGAIN } from './preferences.ts';
import { chanceAt, movedTo, type Positions, type Problem, valuesAt } from './problem.ts';
import { isIn } from './terms.ts';

/** Half windows that an angle may stay further out of a window that cannot be met. */
const AS_FAR = 0.25;

/** @param planned where the practical plan has the adjusters when some of them are not to be moved */
export function keepingDone(
  problem: Problem,
  done: readonly AdjusterRef[],
  planned: (locked: readonly AdjusterRef[]) => Positions,
): Positions {
  const kept = planned(done);
  // Nothing can be surer by as much.
  if (chanceAt(problem, kept, problem.terms) > SURE) return kept;
  let best = planned([]);
  if (isAsGood(problem, kept, best)) return kept;
  let again = done.filter((ref) => movedTo(problem, best).some((move) => isSame(ref, move)));
  for (const ref of again) {
    const fewer = again.filter((one) => one !== ref);
    const without = planned(done.filter((one) => !fewer.includes(one)));
    if (!isAsGood(problem, without, best)) continue;
    best = without;
    again = fewer;
  }
  return best;
}

const isSame = (ref: AdjusterRef, { corner, adjuster }: ReturnType<typeof movedTo>[number]): boolean =>
  ref.corner === corner && ref.adjuster === adjuster.id;

/** Whether one plan meets the windows that another does, comes about as near to the rest, and is not much less sure. */
function isAsGood(problem: Problem, one: Positions, other: Positions): boolean {
  const [own, its] = [valuesAt(problem, one).values, valuesAt(problem, other).values];
  const met = problem.terms.filter((term) => isIn(term, its.get(term)!));
  const isAsNear = problem.terms.every((term) => {
    if (met.includes(term)) return isIn(term, own.get(term)!);
    const [far, least] = [own, its].map((values) => Math.abs(outside(values.get(term)!, term.window)));
    return far! <= least! + AS_FAR * term.window.half;
  });
  return isAsNear && chanceAt(problem, one, met) > chanceAt(problem, other, met) - NOT_AGAIN.least;
}
