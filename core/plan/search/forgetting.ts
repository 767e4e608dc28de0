/** States that cost too much by themselves to be in the best choice, forgotten before the search. */
import type { IndexedTerm } from '../states/indexed-term.ts';
import type { Candidates } from './candidates.ts';
import { descend } from './descent.ts';
import type { ExactCost } from './exact-cost.ts';

/** A cost that is above another by less is no more than rounding. */
const ROUNDING = 1e-9;

/**
 * Where distance alone counts, some good choice tells what the best costs at the most, and so what each assembly's share
 * of it may be: its other states need not be looked at. First what suits each assembly alone, then what no change of one
 * betters.
 */
export function forget(candidates: readonly Candidates[], shared: readonly IndexedTerm[], costOf: ExactCost): void {
  const cheapest = candidates.map((own) => own.cheapest);
  if (cheapest.some((state) => state < 0)) return;
  const least = cheapest.map((state, a) => candidates[a]!.costs[state]!);
  const all = least.reduce((sum, one) => sum + one, 0);
  const keep = (most = Number.POSITIVE_INFINITY): void => {
    candidates.forEach((own, a) => {
      own.keep(most - (all - least[a]!) + ROUNDING);
    });
  };
  keep(costOf(cheapest));
  keep(costOf(descend(candidates, shared)));
}
