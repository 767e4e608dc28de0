/** What a choice of states costs, by full solves. */
import { type IndexedTerm, termAt } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import { distanceOf, isIn } from '../terms.ts';
import type { Goal } from './goal.ts';

/** One state an assembly; nothing where a term is out of a window that it has to be in, or there is no pose. */
export type ExactCost = (chosen: readonly number[]) => number | undefined;

export const exactCost =
  (states: readonly StateSpace[], terms: readonly IndexedTerm[], { inWindow, extra }: Goal): ExactCost =>
  (chosen) => {
    const numbers = chosen.map((state, a) => states[a]!.exact(state));
    let distance = 0;
    for (const one of terms) {
      const { term } = one;
      const value = termAt(one, numbers);
      if (Number.isNaN(value) || ((inWindow || term.hard) && !isIn(term, value))) return undefined;
      distance += distanceOf(term, value);
    }
    return chosen.reduce((sum, state, a) => sum + (extra?.[a]?.(state) ?? 0), distance);
  };
