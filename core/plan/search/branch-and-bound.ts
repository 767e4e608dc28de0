/**
 * The best combination of states over several assemblies (corners that are not solved together), by branch and bound.
 *
 * An assembly's states are points in the space of its angles, three a corner. They are halved again and again into boxes, only
 * where the search goes. For a choice of one box an assembly, no combination inside can be nearer to the aim than
 *   Σ over assemblies (least cost of the terms that this assembly alone decides, exact over the box's states)
 * + Σ over shared terms (least cost over the interval that the boxes allow).
 * The choice with the least bound is split next. The first choice that is down to single states, fully solved, and
 * not above any bound left, is the optimum: nothing is left to luck.
 *
 * Where assemblies pull on one another hard, that bound is loose while boxes are wide, and a second one helps: see
 * tangents.ts. The larger of the two counts.
 */
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import type { ShimBound } from '../shims/shim-bound.ts';
import { type IndexedTerm, indexTerm, isOwn, termAt } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import { distanceOf, isIn, type Term } from '../terms.ts';
import { Heap } from './heap.ts';
import { descend, relax, type SharedTerm } from './relaxation.ts';
import { type Box, StateTree } from './state-tree.ts';

export interface Goal {
  /** Only combinations with every term in its window. */
  readonly inWindow: boolean;
  /** Least effort first, distance second; else distance alone, effort to settle a tie. */
  readonly effortFirst: boolean;
  /** For each assembly what a state of it that is in the windows costs beside the terms. */
  readonly extra?: readonly ((state: number) => number)[];
  /** No combination that takes more minutes. */
  readonly maxEffort?: number;
  /** Only combinations that the drawer can serve. */
  readonly shimBound?: ShimBound;
}

export interface Found {
  readonly states: readonly number[];
  readonly distance: number;
  readonly effort: number;
}

interface Choice {
  readonly boxes: readonly Box[];
  readonly distance: number;
  readonly effort: number;
  /** Set when every box is one state, fully solved. */
  readonly settled?: readonly number[];
}

/** Least ((x − at)/half)² over an interval. */
function leastSquare(low: number, high: number, at: number, half: number): number {
  const off = at < low ? low - at : at > high ? at - high : 0;
  return (off / half) ** 2;
}

const overlaps = ({ window }: Term, low: number, high: number): boolean =>
  high >= window.low - EDGE_NOISE && low <= window.high + EDGE_NOISE;

/** Minutes are sums of single-precision numbers. */
export const SAME_EFFORT = 1e-4;

/**
 * The best states of a group of assemblies, or nothing where the goal's windows cannot all be met.
 * @param states each assembly's states
 * @param terms terms that concern these assemblies only
 */
export function search(states: readonly StateSpace[], terms: readonly Term[], goal: Goal): Found | undefined {
  const placed = terms.map((term) => indexTerm(term, states));
  const shared: SharedTerm[] = placed
    .filter((one) => !isOwn(one))
    .map((one) => ({ ...one, meeting: one.term.window.aim }));
  const sides = states.map((own, assembly) => {
    const weights = Array.from({ length: own.stride }, (_, at) => weightOf(placed, assembly, at));
    const mine = placed.filter((one) => isOwn(one) && one.parts[0]?.assembly === assembly);
    const stock = goal.shimBound && {
      ...goal.shimBound.assemblies[assembly]!,
      kinds: goal.shimBound.kinds,
    };
    return new StateTree(own, mine, goal.inWindow, weights, goal.effortFirst, goal.extra?.[assembly], stock);
  });

  let constant = 0;
  const most = (goal.maxEffort ?? Number.POSITIVE_INFINITY) + SAME_EFFORT;
  const before = (a: Choice, b: Choice): boolean => {
    if (goal.effortFirst && Math.abs(a.effort - b.effort) > SAME_EFFORT) return a.effort < b.effort;
    if (a.distance !== b.distance) return a.distance < b.distance;
    if (Math.abs(a.effort - b.effort) > SAME_EFFORT) return a.effort < b.effort;
    return a.settled !== undefined && b.settled === undefined;
  };

  /** The choice's bound, or nothing if it cannot meet the windows. */
  const bound = (boxes: readonly Box[]): Choice | undefined => {
    let distance = 0;
    let tilted = constant;
    let effort = 0;
    for (const box of boxes) {
      distance += box.cost;
      tilted += box.tilted;
      effort += box.effort;
    }
    if (effort > most) return undefined;
    if (goal.shimBound && !goal.shimBound.mayServe(boxes.map(({ use }) => use!))) return undefined;
    for (const { term, parts, meeting } of shared) {
      let low = term.constant;
      let high = term.constant;
      for (const { assembly, at, factor } of parts) {
        const box = boxes[assembly]!;
        const a = factor * box.low[at]!;
        const b = factor * box.high[at]!;
        low += Math.min(a, b);
        high += Math.max(a, b);
      }
      if ((goal.inWindow || term.hard) && !overlaps(term, low, high)) return undefined;
      distance += leastSquare(low, high, term.window.aim, term.window.half);
      tilted += leastSquare(low, high, meeting, term.window.half);
    }
    return { boxes, distance: Math.max(distance, tilted), effort };
  };

  /** What a choice of states costs, by full solves; nothing if it does not meet the windows. */
  const costOf = (chosen: readonly number[]): number | undefined => {
    const numbers = chosen.map((state, i) => states[i]!.exact(state));
    const judged = costOfTerms(placed, numbers, goal.inWindow);
    return judged === undefined
      ? undefined
      : chosen.reduce((sum, state, i) => sum + (goal.extra?.[i]?.(state) ?? 0), judged);
  };

  const settle = ({ boxes, effort }: Choice): Choice | undefined => {
    const settled = boxes.map((box, i) => sides[i]!.state(box));
    const distance = costOf(settled);
    return distance === undefined ? undefined : { boxes, distance, effort, settled };
  };

  /** The best choice; nothing where there is none; `undecided` where more than `most` had to be split. */
  const attempt = (most: number): Found | 'undecided' | undefined => {
    const open = new Heap<Choice>(before);
    const roots = sides.map((side) => side.root);
    const first = roots.every((root) => root !== undefined) ? bound(roots) : undefined;
    if (first) open.push(first);
    let split = 0;
    for (let choice = open.pop(); choice; choice = open.pop()) {
      if (choice.settled) return { states: choice.settled, distance: choice.distance, effort: choice.effort };
      if (split++ > most) return 'undecided';
      const widest = widestSide(choice.boxes, sides);
      if (widest < 0) {
        const settled = settle(choice);
        if (settled) open.push(settled);
        continue;
      }
      for (const half of sides[widest]!.split(choice.boxes[widest]!)) {
        const next = bound(choice.boxes.map((box, i) => (i === widest ? half : box)));
        if (next) open.push(next);
      }
    }
    return undefined;
  };
  const distanceOnly = !goal.effortFirst && !goal.shimBound && goal.maxEffort === undefined;
  if (shared.length > 0 && distanceOnly) forget(sides, shared, costOf);
  const easy = attempt(shared.length > 0 ? EASY : Number.POSITIVE_INFINITY);
  if (easy !== 'undecided') return easy;
  constant = relax(sides, shared);
  return attempt(Number.POSITIVE_INFINITY) as Found | undefined;
}

/**
 * Where distance alone counts, some good choice tells what the best costs at the most, and so what each assembly's share of
 * it may be: its other states need not be looked at. First what suits each assembly alone, then what no change of one betters.
 */
function forget(
  sides: readonly StateTree[],
  shared: readonly SharedTerm[],
  costOf: (chosen: readonly number[]) => number | undefined,
): void {
  const cheapest = sides.map((side) => side.cheapest);
  if (cheapest.some((state) => state < 0)) return;
  const least = cheapest.map((state, s) => sides[s]!.cost(state));
  const all = least.reduce((sum, one) => sum + one, 0);
  const keep = (most = Number.POSITIVE_INFINITY): void => {
    sides.forEach((side, s) => {
      side.keep(most - (all - least[s]!) + ROUNDING);
    });
  };
  keep(costOf(cheapest));
  keep(costOf(descend(sides, shared)));
}

/** A cost that is above another by less is no more than rounding. */
const ROUNDING = 1e-9;

/** Splits after which the tangents are worth their cost. */
const EASY = 500;

/** Σ of the terms' distances at these numbers, or nothing if a term is out of a window that it has to be in. */
function costOfTerms(
  placed: readonly IndexedTerm[],
  numbers: readonly Float64Array[],
  inWindow: boolean,
): number | undefined {
  let distance = 0;
  for (const one of placed) {
    const { term } = one;
    const value = termAt(one, numbers);
    if (Number.isNaN(value) || ((inWindow || term.hard) && !isIn(term, value))) return undefined;
    distance += distanceOf(term, value);
  }
  return distance;
}

/** A tie costs nothing, but boxes have to part by it: a millimetre or degree of it counts as a half window. */
const TIE_WEIGHT = 1;

/** How much a degree of an assembly's angle matters: the sharpest window that it takes part in. */
function weightOf(placed: readonly IndexedTerm[], assembly: number, at: number): number {
  let weight = 0;
  for (const { parts, term } of placed) {
    for (const part of parts) {
      if (part.assembly === assembly && part.at === at)
        weight = Math.max(weight, term.hard ? TIE_WEIGHT : Math.abs(part.factor) / term.window.half);
    }
  }
  return weight;
}

function widestSide(boxes: readonly Box[], sides: readonly StateTree[]): number {
  let widest = -1;
  let most = -1;
  boxes.forEach((box, i) => {
    const size = sides[i]!.size(box);
    if (size > most) {
      most = size;
      widest = i;
    }
  });
  return widest;
}
