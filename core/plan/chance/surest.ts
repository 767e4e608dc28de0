/**
 * The plan whose re-measure has the best chance to be in every window.
 *
 * The chance of all windows together does not part into a sum over corners, as an exact search needs. What stands for it
 * does: −2 ln of the chance of every window that one assembly decides alone, and for a window that ties assemblies together the
 * parabola that −2 ln of its chance is near its middle, on what its square is expected to be. What is equally sure is
 * chosen by its distance. Of the optimum of that sum, the closest plan and the one with the least work the surest is
 * the one with the best chance: none of those styles is ever surer. Where the windows cannot all be met the sum is
 * minimised over what misses them by so little that it may still read in them, and the nearest plan stands beside it.
 */
import type { Assembly } from '../../pose/car-model.ts';
import { type Problem, settingsOf } from '../problem.ts';
import type { Found } from '../search/goal.ts';
import { type IndexedTerm, indexTerm, isOwn } from '../states/indexed-term.ts';
import { type Subproblem, solve } from '../subproblem.ts';
import type { Term } from '../terms.ts';
import { chanceOf } from './chance.ts';
import { ChanceCost } from './chance-cost.ts';
import type { Covariance, Uncertainty } from './covariance.ts';
import { bendOf } from './normal.ts';

/** How much a square of the distance counts beside −2 ln of a chance. */
const NEAR = 0.1;

/** Standard deviations by which a window that cannot be met may be missed and still have a chance. */
const ROOM = 2;

/** Best of the subproblem's states, whether or not its windows can all be met. */
export function surest(subproblem: Subproblem, { uncertainty, now }: Problem): Found {
  const { assemblies, states } = subproblem;
  const uncertaintyOf = (assembly: Assembly): Uncertainty => uncertainty.get(assembly)!;
  const spreadOf = (found: Found): Covariance[] =>
    assemblies.map((assembly, a) => uncertaintyOf(assembly).covariance(states[a]!.settings(found.states[a]!)));

  const closest = solve(subproblem, { inWindow: true, effortFirst: false });
  const nearest = closest ?? solve(subproblem, { inWindow: false, effortFirst: false })!;
  const spread = spreadOf(nearest);
  const terms = subproblem.terms.map((term) => weighed(indexTerm(term, states), spread));
  const indexed = terms.map((term) => indexTerm(term, states));
  const extra = assemblies.map((assembly, a) => {
    const chanceCost = new ChanceCost(states[a]!, indexed, a, uncertaintyOf(assembly), settingsOf(assembly, now));
    return (state: number) => chanceCost.cost(state);
  });
  const within = closest ? terms : indexed.map((one) => widened(one, ROOM * sigmaOf(one, spread)));
  const likeliest = solve({ ...subproblem, terms: within }, { inWindow: true, effortFirst: false, extra });
  const leastWork = closest && solve(subproblem, { inWindow: true, effortFirst: true });

  const soft = subproblem.terms.filter(({ hard }) => !hard);
  const chance = (found: Found): number => {
    const angles = states.map((own, a) => own.exact(found.states[a]!));
    return chanceOf(soft, assemblies, angles, spreadOf(found));
  };
  return [nearest, likeliest, leastWork]
    .flatMap((found) => (found ? [{ found, chance: chance(found) }] : []))
    .reduce((best, one) => (one.chance > best.chance ? one : best)).found;
}

/** Standard deviation of a term, given how well the assemblies' angles are known. */
function sigmaOf({ parts }: IndexedTerm, spread: readonly Covariance[]): number {
  let variance = 0;
  for (const a of parts) {
    for (const b of parts) {
      if (a.assembly !== b.assembly) continue;
      const covariance = spread[a.assembly]!;
      variance += a.factor * b.factor * covariance[a.at * Math.sqrt(covariance.length) + b.at]!;
    }
  }
  return Math.sqrt(Math.max(0, variance));
}

/** A term with the weight that its square has. */
function weighed(one: IndexedTerm, spread: readonly Covariance[]): Term {
  const { term } = one;
  if (term.hard) return term;
  const { half } = term.window;
  const weight = isOwn(one) ? NEAR : Math.max(NEAR, bendOf(sigmaOf(one, spread) / half));
  return { ...term, window: { ...term.window, half: half / Math.sqrt(weight) } };
}

function widened({ term }: IndexedTerm, by: number): Term {
  if (term.hard) return term;
  const { low, high } = term.window;
  return { ...term, window: { ...term.window, low: low - by, high: high + by } };
}
