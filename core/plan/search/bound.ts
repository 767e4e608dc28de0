/** What a choice of one box an assembly must cost at the least. */
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import type { IndexedTerm } from '../states/indexed-term.ts';
import { type Goal, SAME_EFFORT } from './goal.ts';
import type { Box } from './state-tree.ts';
import type { Tangents } from './tangents.ts';

/** One box an assembly, with no less than what every combination of their states costs. */
export interface Choice {
  readonly boxes: readonly Box[];
  readonly distance: number;
  readonly effort: number;
  /** Set when every box is one state, fully solved. */
  readonly settled?: readonly number[];
}

export class Bound {
  readonly #mostEffort: number;

  /** @param tangents by which the boxes' states are tilted, if they are */
  constructor(
    private readonly shared: readonly IndexedTerm[],
    private readonly goal: Goal,
    private readonly tangents?: Tangents,
  ) {
    this.#mostEffort = (goal.maxEffort ?? Number.POSITIVE_INFINITY) + SAME_EFFORT;
  }

  /** The choice of these boxes; nothing where it cannot do what the goal asks for. */
  of(boxes: readonly Box[]): Choice | undefined {
    const { shared, tangents } = this;
    const { inWindow, shimBound } = this.goal;
    let distance = 0;
    let tilted = tangents ? tangents.constant : Number.NEGATIVE_INFINITY;
    let effort = 0;
    for (const box of boxes) {
      distance += box.cost;
      tilted += box.tilted;
      effort += box.effort;
    }
    if (effort > this.#mostEffort) return undefined;
    if (shimBound && !shimBound.mayServe(boxes.map(({ use }) => use!))) return undefined;
    for (let t = 0; t < shared.length; t++) {
      const { term, parts } = shared[t]!;
      const { aim, half } = term.window;
      let low = term.constant;
      let high = term.constant;
      for (const { assembly, at, factor } of parts) {
        const box = boxes[assembly]!;
        const a = factor * box.low[at]!;
        const b = factor * box.high[at]!;
        low += Math.min(a, b);
        high += Math.max(a, b);
      }
      if ((inWindow || term.hard) && !overlaps(term.window, low, high)) return undefined;
      distance += leastSquare(low, high, aim, half);
      if (tangents) tilted += leastSquare(low, high, tangents.meetings[t]!, half);
    }
    return { boxes, distance: Math.max(distance, tilted), effort };
  }
}

/** Least ((x − at)/half)² over an interval. */
function leastSquare(low: number, high: number, at: number, half: number): number {
  const off = at < low ? low - at : at > high ? at - high : 0;
  return (off / half) ** 2;
}

const overlaps = (window: { readonly low: number; readonly high: number }, low: number, high: number): boolean =>
  high >= window.low - EDGE_NOISE && low <= window.high + EDGE_NOISE;

/** Which of two choices is looked at first: the better one by its bound, of equal ones the one that is settled. */
export const firstBy =
  ({ effortFirst }: Goal) =>
  (a: Choice, b: Choice): boolean => {
    if (effortFirst && Math.abs(a.effort - b.effort) > SAME_EFFORT) return a.effort < b.effort;
    if (a.distance !== b.distance) return a.distance < b.distance;
    if (Math.abs(a.effort - b.effort) > SAME_EFFORT) return a.effort < b.effort;
    return a.settled !== undefined && b.settled === undefined;
  };
