/** Boxes split where the bound is best, until the first settled choice comes up; cut where there is too much to do. */
import { type Bound, type Choice, firstBy } from './bound.ts';
import type { ExactCost } from './exact-cost.ts';
import type { Found, Goal } from './goal.ts';
import { Heap } from './heap.ts';
import { better } from './in-short.ts';
import type { Box, StateTree } from './state-tree.ts';
import { LOOK, type Work } from './work.ts';

/** What a search came to: the best choice, if there is any. */
export interface Decision {
  readonly found?: Found | undefined;
  /** There may be a better one. */
  readonly isCut?: true;
}

/** Choices from which it goes down where it is cut, the best first, and how many it looks at from each. */
const WAYS_DOWN = 30;
const LOOKS_DOWN = 300;

export class Branching {
  constructor(
    private readonly trees: readonly StateTree[],
    private readonly bound: Bound,
    private readonly costOf: ExactCost,
    private readonly work: Work,
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
      if (this.work.isSpent()) return this.#cut(goal, [choice, ...open.take(WAYS_DOWN - 1)]);
      this.#partsOf(choice).forEach(push);
    }
    return {};
  }

  /** Of the best of the choices that are still open as good a settled one as is soon found. */
  #cut(goal: Goal, choices: readonly Choice[]): Decision {
    const found = choices
      .map((choice) => this.#down(choice, firstBy(goal)))
      .reduce<Found | undefined>((best, one) => better(best, one, goal), undefined);
    return { found, isCut: true };
  }

  /** Down from one choice, always into the better half, and where that is barred into the next best. */
  #down(from: Choice, before: (a: Choice, b: Choice) => boolean): Found | undefined {
    const stack = [from];
    for (let looks = 0; looks < LOOKS_DOWN; looks++) {
      const choice = stack.pop();
      if (!choice) return undefined;
      const { settled: states, distance, effort } = choice;
      if (states) return { states, distance, effort };
      const parts = this.#partsOf(choice).flatMap((part) => part ?? []);
      stack.push(...parts.sort((a, b) => (before(a, b) ? 1 : -1)));
    }
    return undefined;
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
    const box = boxes[widest]!;
    this.work.spend(LOOK + (box.halves ? 0 : box.last - box.first));
    const halves = this.trees[widest]!.split(box);
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
