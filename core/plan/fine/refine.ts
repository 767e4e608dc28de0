/**
 * More and better states for assemblies that have too many to go through, until the best of those listed has none better
 * about it. First settings that come near to what is wanted are sought over all travels (seeds.ts). Then, about the best
 * choice there is, every setting within so many positions of it that costs no more is found (completion.ts), and the exact
 * search takes the best of all; again, until it stays. What it then has is the best within that neighbourhood: no setting
 * there has been left out that costs no more by the assembly's own terms, as far as the tables may be off.
 */
import { search } from '../search/branch-and-bound.ts';
import type { Found } from '../search/goal.ts';
import { Work } from '../search/work.ts';
import { type IndexedTerm, indexTerm, isOwn, termAt } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import { distanceOf, type Term } from '../terms.ts';
import { Completion, type Free, type Wanted } from './completion.ts';
import { FineSpace } from './fine-space.ts';
import { PairTables } from './pair-tables.ts';
import { seedsOf, someSeedsOf } from './seeds.ts';

const ROUNDS = 6;
/** After this round the others' needs change little once all is in its window. */
const LAST_SEEDED = 1;
/** Positions to either side that are looked at exactly: all, or of a rod in flats two turns, or fewer where that is too many. */
const NEIGHBOURHOODS = [Number.POSITIVE_INFINITY, 12, 6, 3, 1];
/** Choices of the others for which the pivots are sought, and settings that are then solved. */
const MOST_TURNS = 1e5;
const MOST_SOLVED = 6000;
/** What costs a little more by rounding. */
const ROUNDING = 1e-9;

/** States of the assemblies of a subproblem, and how far the best of them is known to be that. */
export interface Refined {
  readonly states: readonly StateSpace[];
  /** Positions to either side of the nearest choice within which none is nearer; infinite where there are no more. */
  readonly within: number;
}

/** The nearest choice, and whether it meets the windows. */
interface Nearest {
  readonly found: Found;
  readonly inWindow: boolean;
}

/** @param terms of these assemblies only */
export function refine(given: readonly StateSpace[], terms: readonly Term[], work = new Work()): Refined {
  let states = given;
  let best = nearest(states, terms, work);
  if (!best) return { states, within: 0 };
  const weights = new Float64Array(terms.length).fill(1);
  const isHopeless = !mayMeet(states, terms);
  for (let round = 0; round < ROUNDS; round++) {
    states = seeded(states, terms, best.found, weights);
    const next: Nearest = nearest(states, terms, work)!;
    const isSame = !isBetter(next, best);
    best = next;
    if ((best.inWindow || isHopeless) && (isSame || given.length === 1 || round >= LAST_SEEDED)) break;
    if (!best.inWindow) weigh(weights, states, terms, best.found);
  }
  let within = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const about = neighbours(states, terms, best);
    states = about.states;
    const next: Nearest = nearest(states, terms, work)!;
    within = isBetter(next, best) ? 0 : about.within;
    if (!isBetter(next, best)) break;
    best = next;
  }
  return { states, within };
}

/** Rounds after which what does not meet the windows is taken not to. */
const TRIES = 4;

/** The states with some that meet the windows, if there are any, whatever they move. */
export function meeting(given: readonly StateSpace[], terms: readonly Term[], work: Work): readonly StateSpace[] {
  let states = given;
  const weights = new Float64Array(terms.length).fill(1);
  for (let round = 0; round < TRIES; round++) {
    const best = nearest(states, terms, work);
    if (!best || best.inWindow) break;
    if (round > 0) weigh(weights, states, terms, best.found);
    states = seeded(states, terms, best.found, weights, someSeedsOf);
  }
  return states;
}

/** Share of its whole range by which a term may come further than its ends, which are those of each adjuster by itself. */
const BEYOND = 0.1;

/** Least and most that a term can be, whatever the others are. */
function rangeOf(term: Term, states: readonly StateSpace[]): readonly [low: number, high: number] {
  const { parts } = indexTerm(term, states);
  let [low, high] = [term.constant, term.constant];
  for (const { assembly, at, factor } of parts) {
    const [least, most] = states[assembly]!.ranges[at]!;
    low += Math.min(factor * least, factor * most);
    high += Math.max(factor * least, factor * most);
  }
  const room = BEYOND * (high - low);
  return [low - room, high + room];
}

/** Whether every window is one that its term can come to, whatever the others do. */
export const mayMeet = (states: readonly StateSpace[], terms: readonly Term[]): boolean =>
  terms.every((term) => {
    if (term.hard || term.wish) return true;
    const [low, high] = rangeOf(term, states);
    return low <= term.window.high && high >= term.window.low;
  });

/** A distance that no setting comes below, listed or not: each term as near to its aim as it comes by itself. */
export const leastDistance = (states: readonly StateSpace[], terms: readonly Term[]): number =>
  terms.reduce((sum, term) => {
    if (term.hard || term.wish) return sum;
    const [low, high] = rangeOf(term, states);
    return sum + distanceOf(term, Math.min(high, Math.max(low, term.window.aim)));
  }, 0);

function nearest(states: readonly StateSpace[], terms: readonly Term[], work: Work): Nearest | undefined {
  const within = search(states, terms, { inWindow: true, effortFirst: false }, work);
  const found = within ?? search(states, terms, { inWindow: false, effortFirst: false }, work);
  return found && { found, inWindow: within !== undefined };
}

const isBetter = (one: Nearest, other: Nearest): boolean =>
  one.inWindow === other.inWindow ? one.found.distance < other.found.distance : one.inWindow;

/** What is out of its window is to count more: the nearest to the aims may leave one out where another choice meets all. */
function weigh(
  weights: Float64Array,
  states: readonly StateSpace[],
  terms: readonly Term[],
  { states: at }: Found,
): void {
  const numbers = at.map((state, a) => states[a]!.exact(state));
  terms.forEach((term, t) => {
    const { low, high } = term.window;
    if (term.hard || !(high < Number.POSITIVE_INFINITY)) return;
    const value = termAt(indexTerm(term, states), numbers);
    // 1 at either edge.
    const off = Math.abs(value - (low + high) / 2) / ((high - low) / 2);
    weights[t]! *= Math.min(4, Math.max(0.5, off));
  });
}

/** Each assembly with settings that suit what the others now have. */
function seeded(
  states: readonly StateSpace[],
  terms: readonly Term[],
  found: Found,
  weights: Float64Array,
  seeds = seedsOf,
): StateSpace[] {
  const indexed = terms.map((term) => indexTerm(term, states));
  return states.map((own, a) => {
    if (!(own instanceof FineSpace)) return own;
    const wanted = wantedOf(indexed, a, states, found, weights);
    return wanted.length > 0 ? own.with(seeds(new Completion(own.tables, wanted))) : own;
  });
}

/**
 * Each assembly with every setting about the found one that is no dearer by what the assembly decides alone; where the
 * windows are not met also those that are in all of its own.
 */
function neighbours(states: readonly StateSpace[], terms: readonly Term[], { found, inWindow }: Nearest): Refined {
  const indexed = terms.map((term) => indexTerm(term, states)).filter((one) => isOwn(one) && !one.term.hard);
  let within = Number.POSITIVE_INFINITY;
  const more = states.map((own, a) => {
    if (!(own instanceof FineSpace)) return own;
    const counted = indexed.filter(({ term, parts }) => parts[0]?.assembly === a && (inWindow || !term.wish));
    const met = inWindow ? 0 : counted.reduce((sum, { term }) => sum + mostWithin(term), 0);
    const wanted = wantedOf(counted, a, states, found);
    for (const reach of NEIGHBOURHOODS) {
      const cost = Math.max(found.distance, met);
      const there = wanted.length > 0 && settingsAbout(own, found.states[a]!, reach, wanted, cost);
      if (!there) continue;
      if (!there.isAll) within = Math.min(within, reach);
      return own.with(there.settings);
    }
    within = 0;
    return own;
  });
  return { states: more, within };
}

/** What a term costs at the most that is in its window. */
const mostWithin = ({ window: { low, aim, high, half } }: Term): number =>
  (Math.max(aim - low, high - aim, 0) / half) ** 2;

/** Nothing where there are too many. */
function settingsAbout(own: FineSpace, state: number, reach: number, wanted: readonly Wanted[], cost: number) {
  const tables = Number.isFinite(reach)
    ? new PairTables(own.assembly, own.stands, own.axes, { digits: own.digitsOf(state), within: reach })
    : own.tables;
  const completion = new Completion(tables, wanted);
  const all = [...tables.axes.keys()];
  const pivots = completion.pivots(all);
  const free = all
    .filter((axis) => !pivots.includes(axis))
    .map((axis): Free => ({ axis, ranks: Array.from(tables.axes[axis]!.digits.keys()) }));
  if (free.reduce((turns, { ranks }) => turns * ranks.length, 1) > MOST_TURNS) return undefined;
  const settings: number[][] = [];
  const limit = (Math.sqrt(cost + ROUNDING) + completion.looseness) ** 2;
  const done = completion.visit(free, pivots, (ranks) => settings.push(tables.digits(ranks)) <= MOST_SOLVED, limit);
  if (!done || !tables.isWhole) return undefined;
  return { settings, isAll: tables.axes.every(({ axis, digits }) => digits.length === axis.positions.length) };
}

/** What an assembly is wanted to do while the others stay where they are found. */
function wantedOf(
  indexed: readonly IndexedTerm[],
  assembly: number,
  states: readonly StateSpace[],
  found: Found,
  weights?: Float64Array,
): Wanted[] {
  const own = states[assembly]! as FineSpace;
  const numbers = found.states.map((state, a) =>
    a === assembly ? new Float64Array(own.stride) : states[a]!.exact(state),
  );
  return indexed.flatMap((one, t) => {
    const { term, parts } = one;
    if (term.hard || !parts.some((part) => part.assembly === assembly)) return [];
    const { aim, half } = term.window;
    const weight = (weights?.[t] ?? 1) / half;
    const factors = new Float64Array(own.tables.numbers);
    for (const part of parts) if (part.assembly === assembly) factors[part.at]! += part.factor * weight;
    return [{ factors, offset: (termAt(one, numbers) - aim) * weight }];
  });
}
