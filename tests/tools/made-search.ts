/** Searches among states that are numbers alone, taken to pieces. */
import type { Corner } from '../../core/contract.ts';
import { Candidates } from '../../core/plan/search/candidates.ts';
import { exactCost } from '../../core/plan/search/exact-cost.ts';
import type { Goal } from '../../core/plan/search/goal.ts';
import { relax } from '../../core/plan/search/relaxation.ts';
import { type Box, StateTree } from '../../core/plan/search/state-tree.ts';
import { indexTerm, isOwn } from '../../core/plan/states/indexed-term.ts';
import type { StateSpace } from '../../core/plan/states/state-space.ts';
import type { Term } from '../../core/plan/terms.ts';
import { randomStates, randomTerms } from './made-states.ts';
import { stream } from './random-cars.ts';

export const WHEELS: readonly Corner[] = ['LF', 'RF', 'LR'];
export const SEEDS = Array.from({ length: 12 }, (_, i) => i + 1);
export const NEAREST: Goal = { inWindow: false, effortFirst: false };

/** Some wheels with windows, and what the search makes of them. */
export function madeSearch(states: readonly StateSpace[], terms: readonly Term[], goal: Goal = NEAREST) {
  const indexed = terms.map((term) => indexTerm(term, states));
  const candidates = states.map((own, a) => new Candidates(own, a, indexed, goal));
  const shared = indexed.filter((one) => !isOwn(one));
  return { states, terms, candidates, shared, costOf: exactCost(states, indexed, goal) };
}
export const randomSearch = (seed: number, { count = 10, slack = 0, goal = NEAREST, half = 0.8 } = {}) => {
  const random = stream(seed * 29);

  const states = WHEELS.map((corner) => randomStates(random, corner, count, slack));
  return { random, ...madeSearch(states, randomTerms(random, WHEELS, half), goal) };
};
export type Search = ReturnType<typeof madeSearch>;

export const termsOf = ({ terms }: Search, corner: Corner | undefined) =>
  terms.filter(({ parts }) => parts.every((part) => part.corner === corner));
/** What a state costs by its own windows, by what it is taken for. */
export const ownCost = (search: Search, a: number, state: number): number =>
  termsOf(search, search.states[a]?.corners[0]).reduce((sum, { parts, constant, window }) => {
    const value = parts.reduce(
      (x, { angle, factor }) => x + factor * (search.states[a]?.near(state)[angle] ?? NaN),
      constant,
    );
    return sum + ((value - window.aim) / window.half) ** 2;
  }, 0);

const allOf = ({ count }: { readonly count: number }): number[] => Array.from({ length: count }, (_, state) => state);
export const realOf = (own: StateSpace): number[] => allOf(own).filter((state) => !Number.isNaN(own.near(state)[0]));
export const sorted = (states: Iterable<number>): number[] => [...states].sort((a, b) => a - b);

/** All boxes of some wheels' trees, down to single states, and each box's states. */
export function treesOf({ candidates, shared }: Search, effortFirst = false) {
  const tangents = relax(candidates, shared);
  const trees = candidates.map(
    (own, a) => new StateTree(own, own.tilted(tangents.slopes[a] as Float64Array), { effortFirst }),
  );
  const below = (tree: StateTree, box: Box): Box[] =>
    box.last - box.first < 2 ? [box] : [box, ...tree.split(box).flatMap((half) => below(tree, half))];
  const boxes = trees.map((tree) => below(tree, tree.root as Box));
  const statesIn = (box: Box, a: number): number[] => [...(candidates[a]?.order.subarray(box.first, box.last) ?? [])];
  return { tangents, trees, boxes, statesIn };
}
