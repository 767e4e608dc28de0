/** Choices to go by where a search is cut: any that do what is asked for, of which the best is taken. */

import type { IndexedTerm } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Candidates } from './candidates.ts';
import { descend } from './descent.ts';
import type { ExactCost } from './exact-cost.ts';
import { type Found, type Goal, SAME_EFFORT } from './goal.ts';

interface Search {
  readonly states: readonly StateSpace[];
  readonly candidates: readonly Candidates[];
  readonly shared: readonly IndexedTerm[];
  readonly goal: Goal;
  readonly costOf: ExactCost;
}

/**
 * The best of what is found without a search: all as it stands, what is known, what no change of one assembly betters.
 * Nothing where none of them does what is asked for.
 */
export function inShort({ states, candidates, shared, goal, costOf }: Search): Found | undefined {
  const stands = states.map((own) => own.unmoved);
  const able = candidates.every(({ cheapest }) => cheapest >= 0);
  const tried = [stands, ...(goal.known ? [goal.known] : []), ...(able ? [descend(candidates, shared)] : [])];
  return tried.map((chosen) => asFound(chosen, states, goal, costOf)).reduce((a, b) => better(a, b, goal));
}

function asFound(
  chosen: readonly number[],
  states: readonly StateSpace[],
  { maxEffort = Number.POSITIVE_INFINITY, shimBound }: Goal,
  costOf: ExactCost,
): Found | undefined {
  const distance = costOf(chosen);
  const effort = chosen.reduce((sum, state, a) => sum + states[a]!.effort[state]!, 0);
  if (distance === undefined || distance === Number.POSITIVE_INFINITY || effort > maxEffort + SAME_EFFORT) return;
  return !shimBound || shimBound.serves(chosen) ? { states: chosen, distance, effort } : undefined;
}

/** The better of two, as far as there are two. */
export function better(a: Found | undefined, b: Found | undefined, { effortFirst }: Goal): Found | undefined {
  if (!a || !b) return a ?? b;
  const isLighter = Math.abs(a.effort - b.effort) > SAME_EFFORT ? a.effort < b.effort : undefined;
  if (effortFirst && isLighter !== undefined) return isLighter ? a : b;
  return b.distance < a.distance || (b.distance === a.distance && isLighter === false) ? b : a;
}
