/**
 * The best combination of states over several assemblies (corners that are not solved together), by branch and bound.
 *
 * An assembly's states are points in the space of its angles, three a corner. They are halved again and again into
 * boxes, only where the search goes. For a choice of one box an assembly, no combination inside can be nearer to the aim than
 *   Σ over assemblies (least cost of the terms that this assembly alone decides, exact over the box's states)
 * + Σ over shared terms (least cost over the interval that the boxes allow).
 * The choice with the least bound is split next. The first choice that is down to single states, fully solved, and
 * not above any bound left, is the optimum: nothing is left to luck.
 *
 * Where assemblies pull on one another hard, that bound is loose while boxes are wide, and a second one helps: see
 * tangents.ts. The larger of the two counts.
 *
 * Some requests would take it for ever. It has so much work to do and no more (work.ts); then it takes the best choice that
 * it can soon find from where it is, and says that it was cut.
 */
import { indexTerm, isOwn } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Term } from '../terms.ts';
import { Bound } from './bound.ts';
import { Branching, type Decision } from './branching.ts';
import { Candidates, scratchOf } from './candidates.ts';
import { exactCost } from './exact-cost.ts';
import { forget, forgetDearer, forgetLaborious } from './forgetting.ts';
import type { Found, Goal } from './goal.ts';
import { better, inShort } from './in-short.ts';
import { relax } from './relaxation.ts';
import { StateTree } from './state-tree.ts';
import type { Tangents } from './tangents.ts';
import { Work } from './work.ts';

/** Splits after which the tangents are worth their cost. */
const EASY = 500;

/**
 * The best states of a group of assemblies, or nothing where the goal's windows cannot all be met.
 * @param states each assembly's states
 * @param terms terms that concern these assemblies only
 * @param work how much of it is left; where it is used up the best is not proven to be that, nor that there is none
 */
export function search(
  states: readonly StateSpace[],
  terms: readonly Term[],
  goal: Goal,
  work = new Work(),
): Found | undefined {
  work.spend(states.reduce((sum, { count }) => sum + count, 0));
  const indexed = terms.map((term) => indexTerm(term, states));
  const shared = indexed.filter((one) => !isOwn(one));
  const candidates = states.map((own, assembly) => new Candidates(own, assembly, indexed, goal, scratchOf(own)));
  const costOf = exactCost(states, indexed, goal);
  const attempt = (most: number, tangents?: Tangents): Decision | undefined =>
    new Branching(treesOf(candidates, goal, tangents), new Bound(shared, goal, tangents), costOf, work).best(
      goal,
      most,
    );
  const decide = (): Decision => {
    if (shared.length === 0) return attempt(Number.POSITIVE_INFINITY)!;
    const distanceOnly = !goal.effortFirst && !goal.shimBound && goal.maxEffort === undefined;
    if (distanceOnly) forget(candidates, shared, costOf);
    if (goal.maxEffort !== undefined) forgetLaborious(candidates, goal.maxEffort);
    if (goal.known && !goal.effortFirst) forgetDearer(candidates, costOf(goal.known));
    return attempt(EASY) ?? attempt(Number.POSITIVE_INFINITY, relax(candidates, shared))!;
  };
  const { found, isCut } = decide();
  return isCut ? better(found, inShort({ states, candidates, shared, goal, costOf }), goal) : found;
}

const treesOf = (candidates: readonly Candidates[], goal: Goal, tangents?: Tangents): StateTree[] =>
  candidates.map((own, assembly) => {
    const tilted = tangents ? own.tilted(tangents.slopes[assembly]!) : own.costs;
    // Within an allowance a box of little work is no promise for the better states in it: they part by work first.
    const effortFirst = goal.effortFirst || goal.known !== undefined;
    return new StateTree(own, tilted, { effortFirst, shims: goal.shimBound?.assemblies[assembly] });
  });
