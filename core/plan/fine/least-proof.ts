/**
 * Whether a choice of least work is known to be that although not all states are listed. All those with one or two
 * adjusters moved are: where more than two take longer than the choice leaves room for, none of them can be better.
 */

import { type Found, SAME_EFFORT } from '../search/goal.ts';
import { ownCosts } from '../search/own-costs.ts';
import { indexTerm, isOwn } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Term } from '../terms.ts';
import { FineSpace } from './fine-space.ts';

/** How many adjusters at the least a setting that is not listed has moved. */
const UNLISTED = 3;

export function isLeastWork(states: readonly StateSpace[], terms: readonly Term[], { effort }: Found): boolean {
  const indexed = terms.map((term) => indexTerm(term, states)).filter(isOwn);
  const unlisted = states.map(leastUnlisted);
  const least = states.map((own, a) => {
    const { within } = ownCosts(
      own,
      indexed.filter(({ parts }) => parts[0]?.assembly === a),
      true,
    );
    return within.reduce((most, state) => Math.min(most, own.effort[state]!), unlisted[a]!);
  });
  const all = least.reduce((sum, one) => sum + one, 0);
  return unlisted.every((minutes, a) => minutes + all - least[a]! > effort + SAME_EFFORT);
}

/** Minutes. */
function leastUnlisted(states: StateSpace): number {
  if (!(states instanceof FineSpace)) return Number.POSITIVE_INFINITY;
  // Gaps leave out some with two moved.
  if (!states.tables.isWhole) return 0;
  const minutes = states.axes.filter(({ positions }) => positions.length > 1).map((axis) => axis.minutes);
  if (minutes.length < UNLISTED) return Number.POSITIVE_INFINITY;
  return minutes
    .sort((a, b) => a - b)
    .slice(0, UNLISTED)
    .reduce((sum, one) => sum + one, 0);
}
