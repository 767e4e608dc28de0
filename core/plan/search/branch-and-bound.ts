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
 */
import { indexTerm, isOwn } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Term } from '../terms.ts';
import { Bound, type Choice, firstBy } from './bound.ts';
import { Candidates, scratchOf } from './candidates.ts';
import { type ExactCost, exactCost } from './exact-cost.ts';
import { forget, forgetDearer, forgetLaborious } from './forgetting.ts';
import type { Found, Goal } from './goal.ts';
import { Heap } from './heap.ts';
import { relax } from './relaxation.ts';
import { type Box, StateTree } from './state-tree.ts';
import type { Tangents } from './tangents.ts';

/** Splits after which the tangents are worth their cost. */
const EASY = 500;

/**
 * The best states of a group of assemblies, or nothing where the goal's windows cannot all be met.
 * @param states each assembly's states
 * @param terms terms that concern these assemblies only
 */
export function search(states: readonly StateSpace[], terms: readonly Term[], goal: Goal): Found | undefined {
  const indexed = terms.map((term) => indexTerm(term, states));
  const shared = indexed.filter((one) => !isOwn(one));
  const candidates = states.map((own, assembly) => new Candidates(own, assembly, indexed, goal, scratchOf(own)));
  const costOf = exactCost(states, indexed, goal);
  const attempt = (most: number, tangents?: Tangents): Decision | undefined =>
    new Branching(treesOf(candidates, goal, tangents), new Bound(shared, goal, tangents), costOf).best(goal, most);
  if (shared.length === 0) return attempt(Number.POSITIVE_INFINITY)?.found;
  const distanceOnly = !goal.effortFirst && !goal.shimBound && goal.maxEffort === undefined;
  if (distanceOnly) forget(candidates, shared, costOf);
  if (goal.maxEffort !== undefined) forgetLaborious(candidates, goal.maxEffort);
  if (goal.known && !goal.effortFirst) forgetDearer(candidates, costOf(goal.known));
  const easy = attempt(EASY);
  return easy ? easy.found : attempt(Number.POSITIVE_INFINITY, relax(candidates, shared))?.found;
}

const treesOf = (candidates: readonly Candidates[], goal: Goal, tangents?: Tangents): StateTree[] =>
  candidates.map((own, assembly) => {
    const tilted = tangents ? own.tilted(tangents.slopes[assembly]!) : own.costs;
    // Within an allowance a box of little work is no promise for the better states in it: they part by work first.
    const effortFirst = goal.effortFirst || goal.known !== undefined;
    return new StateTree(own, tilted, { effortFirst, shims: goal.shimBound?.assemblies[assembly] });
  });

/** What a search came to: the best choice, if there is any. */
interface Decision {
  readonly found?: Found;
}

class Branching {
  constructor(
    private readonly trees: readonly StateTree[],
    private readonly bound: Bound,
    private readonly costOf: ExactCost,
  ) {}

  /** Looks at the choice with the best bound, again and again; undecided, so nothing, after more than `most`. */
  best(goal: Goal, most: number): Decision | undefined {
    const open = new Heap<Choice>(firstBy(goal));
    const push = (choice: Choice | undefined): void => {
      if (choice) open.push(choice);
    };
    push(this.#root());
    let looked = 0;
    for (let choice = open.pop(); choice; choice = open.pop()) {
      const { settled: states, distance, effort } = choice;
      if (states) return { found: { states, distance, effort } };
      if (looked++ > most) return undefined;
      this.#partsOf(choice).forEach(push);
    }
    return {};
  }

  /** Every box whole; nothing where an assembly has no state that will do. */
  #root(): Choice | undefined {
    const roots = this.trees.flatMap(({ root }) => root ?? []);
    return roots.length === this.trees.length ? this.bound.of(roots) : undefined;
  }

  /** What takes a choice's place: two with half of its widest box each, or the choice itself once it is settled. */
  #partsOf(choice: Choice): readonly (Choice | undefined)[] {
    const { boxes } = choice;
    const widest = this.#widest(boxes);
    if (widest < 0) return [this.#settled(choice)];
    const halves = this.trees[widest]!.split(boxes[widest]!);
    return halves.map((half) => this.bound.of(boxes.map((box, i) => (i === widest ? half : box))));
  }

  /** −1 where every box is one state. */
  #widest(boxes: readonly Box[]): number {
    let widest = -1;
    let most = -1;
    boxes.forEach((box, i) => {
      const size = this.trees[i]!.size(box);
      if (size > most) {
        most = size;
        widest = i;
      }
    });
    return widest;
  }

  #settled({ boxes, effort }: Choice): Choice | undefined {
    const settled = boxes.map((box, i) => this.trees[i]!.state(box));
    const distance = this.costOf(settled);
    return distance === undefined ? undefined : { boxes, distance, effort, settled };
  }
}
