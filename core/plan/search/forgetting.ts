/** States that cost too much by themselves to be in the best choice, forgotten before the search. */
import type { IndexedTerm } from '../states/indexed-term.ts';
import type { Candidates } from './candidates.ts';
import { descend } from './descent.ts';
import type { ExactCost } from './exact-cost.ts';
import { SAME_EFFORT } from './goal.ts';

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
  forgetDearer(candidates, costOf(cheapest));
  forgetDearer(candidates, costOf(descend(candidates, shared)));
}

/** Forgets the states that cannot be in a choice that costs no more than `most`. */
export function forgetDearer(candidates: readonly Candidates[], most = Number.POSITIVE_INFINITY): void {
  const cheapest = candidates.map((own) => own.cheapest);
  if (cheapest.some((state) => state < 0)) return;
  const least = cheapest.map((state, a) => candidates[a]!.costs[state]!);
  const all = least.reduce((sum, one) => sum + one, 0);
  candidates.forEach((own, a) => {
    own.keep(most - (all - least[a]!) + ROUNDING);
  });
}

/** Forgets the states that cannot be in a choice of so many minutes. */
export function forgetLaborious(candidates: readonly Candidates[], most: number): void {
  const least = candidates.map(({ leastEffort }) => leastEffort);
  const all = least.reduce((sum, one) => sum + one, 0);
  if (all === Number.POSITIVE_INFINITY) return;
  candidates.forEach((own, a) => {
    own.keepEffort(most - (all - least[a]!) + SAME_EFFORT);
  });
}
