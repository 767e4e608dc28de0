/**
 * The plan whose re-measure has the best chance to be in every window.
 *
 * The chance of all windows together does not part into a sum over corners, as an exact search needs. What stands for it
 * does: −2 ln of the chance of every window that one assembly decides alone, and for a window that ties assemblies together the
 * parabola that −2 ln of its chance is near its middle, on what its square is expected to be. What is equally sure is
 * chosen by its distance. Of the optimum of that sum, the closest plan and the one with the least work the surest is
 * the one with the best chance: none of those styles is ever surer. Where the windows cannot all be met the sum is
 * minimised over what misses them by so little that it may still read in them, and the nearest plan stands beside it.
 */
import { type Problem, settingsOf } from '../problem.ts';
import type { Found, Goal } from '../search/goal.ts';
import { type IndexedTerm, indexTerm, isOwn, termAt } from '../states/indexed-term.ts';
import { type Subproblem, solve } from '../subproblem.ts';
import type { Term } from '../terms.ts';
import { chanceOf } from './chance.ts';
import { ChanceCost } from './chance-cost.ts';
import type { Covariance } from './covariance.ts';
import { bendOf, chanceWithin } from './normal.ts';

/** How much a square of the distance counts beside −2 ln of a chance. */
const NEAR = 0.1;

/** What is less likely is no likelier than this. */
const LEAST_CHANCE = 1e-6;

/** Standard deviations by which a window that cannot be met may be missed and still have a chance. */
const ROOM = 2;

/** What a search for the likeliest is asked beside. */
export interface Asked extends Pick<Goal, 'maxEffort' | 'known'> {
  /** For each assembly what a state costs beside; infinite where it is not to be chosen. */
  readonly beside?: readonly ((state: number) => number)[];
}

/** Searches of one subproblem for what is likely to read in its windows. */
export class Likeliest {
  /** The nearest to the aims, in the windows where they can be met. */
  readonly closest: Found | undefined;
  readonly nearest: Found;
  readonly #within: Subproblem;
  readonly #extra: readonly ((state: number) => number)[];
  readonly #judged: readonly Term[];

  /** @param counts whether a window counts for the chance */
  constructor(
    readonly subproblem: Subproblem,
    private readonly problem: Problem,
    counts: (term: Term) => boolean = () => true,
  ) {
    const { assemblies, states } = subproblem;
    this.closest = solve(subproblem, { inWindow: true, effortFirst: false });
    this.nearest = this.closest ?? solve(subproblem, { inWindow: false, effortFirst: false })!;
    const spread = this.#spreadOf(this.nearest);
    const terms = subproblem.terms.map((term) => weighed(indexTerm(term, states), spread));
    const indexed = terms.map((term) => indexTerm(term, states));
    this.#extra = assemblies.map((assembly, a) => {
      const uncertainty = problem.uncertainty.get(assembly)!;
      const from = settingsOf(assembly, problem.now);
      const cost = new ChanceCost(states[a]!, indexed, a, uncertainty, from, this.nearest.states[a]!);
      return remembered(states[a]!.count, (state) => cost.cost(state));
    });
    const room = (one: IndexedTerm): Term => widened(one, ROOM * sigmaOf(one, spread));
    this.#within = { ...subproblem, terms: this.closest ? terms : indexed.map(room) };
    this.#judged = subproblem.terms.filter((term) => !term.hard && !term.wish && counts(term));
  }

  /** Whether the windows can all be met. */
  get inWindow(): boolean {
    return this.closest !== undefined;
  }

  /** The optimum of the sum that stands for the chance; nothing where none meets the windows. */
  best({ beside, ...goal }: Asked = {}): Found | undefined {
    return solve(this.#within, { inWindow: true, effortFirst: false, extra: this.#with(beside), ...goal });
  }

  #with(beside: Asked['beside']): readonly ((state: number) => number)[] {
    if (!beside) return this.#extra;
    return this.#extra.map((own, a) => (state: number) => {
      const more = beside[a]!(state);
      return more === Number.POSITIVE_INFINITY ? more : more + own(state);
    });
  }

  /**
   * The optimum of the sum with the windows that tie assemblies together counted as they are at a choice: far from its
   * middle −2 ln of a chance is steeper than the parabola there.
   */
  sharper(at: Found, { beside, ...goal }: Asked = {}): Found | undefined {
    const { states } = this.subproblem;
    const spread = this.#spreadOf(at);
    const numbers = states.map((own, a) => own.exact(at.states[a]!));
    const terms = this.subproblem.terms.map((term, t) =>
      steepened(indexTerm(term, states), this.#within.terms[t]!, spread, numbers),
    );
    return solve(
      { ...this.#within, terms },
      { inWindow: true, effortFirst: false, extra: this.#with(beside), ...goal },
    );
  }

  /** The nearest to the aims. */
  nearestOf({ beside, ...goal }: Asked): Found | undefined {
    return solve(this.subproblem, { inWindow: true, effortFirst: false, ...(beside && { extra: beside }), ...goal });
  }

  /** The one with the least work. */
  leastWork(beside?: Asked['beside']): Found | undefined {
    if (!this.closest) return undefined;
    if (beside) return solve(this.subproblem, { inWindow: true, effortFirst: true, extra: beside });
    this.#leastWork ??= solve(this.subproblem, { inWindow: true, effortFirst: true });
    return this.#leastWork;
  }
  #leastWork: Found | undefined;

  /** Share of draws in which all is in its windows. */
  chance(found: Found): number {
    const key = found.states.join();
    const chance = this.#chances.get(key) ?? this.#chanceOf(found);
    this.#chances.set(key, chance);
    return chance;
  }
  readonly #chances = new Map<string, number>();

  #chanceOf(found: Found): number {
    const { assemblies, states } = this.subproblem;
    const angles = states.map((own, a) => own.exact(found.states[a]!));
    return chanceOf(this.#judged, assemblies, angles, this.#spreadOf(found));
  }

  #spreadOf(found: Found): Covariance[] {
    const { assemblies, states } = this.subproblem;
    return assemblies.map((assembly, a) =>
      this.problem.uncertainty.get(assembly)!.covariance(states[a]!.settings(found.states[a]!)),
    );
  }
}

/** A choice with its chance. */
export interface Likely {
  readonly found: Found;
  readonly chance: number;
}

/** Best of the subproblem's states, whether or not its windows can all be met. */
export function surest(search: Likeliest): Likely {
  return [search.nearest, search.best(), search.leastWork()]
    .flatMap((found) => (found ? [{ found, chance: search.chance(found) }] : []))
    .reduce((best, one) => (one.chance > best.chance ? one : best));
}

/** Each worked out once. */
function remembered(count: number, costOf: (state: number) => number): (state: number) => number {
  const known = new Float64Array(count).fill(Number.NaN);
  return (state) => {
    const before = known[state]!;
    if (!Number.isNaN(before)) return before;
    const cost = costOf(state);
    known[state] = cost;
    return cost;
  };
}

/** Standard deviation of a term, given how well the assemblies' angles are known. */
function sigmaOf({ parts }: IndexedTerm, spread: readonly Covariance[]): number {
  let variance = 0;
  for (const a of parts) {
    for (const b of parts) {
      if (a.assembly !== b.assembly) continue;
      const covariance = spread[a.assembly]!;
      variance += a.factor * b.factor * covariance[a.at * Math.sqrt(covariance.length) + b.at]!;
    }
  }
  return Math.sqrt(Math.max(0, variance));
}

/** A term with the weight that its square has. */
function weighed(one: IndexedTerm, spread: readonly Covariance[]): Term {
  const { term } = one;
  if (term.hard) return term;
  const { half } = term.window;
  const weight = isOwn(one) || term.wish ? NEAR : Math.max(NEAR, bendOf(sigmaOf(one, spread) / half));
  return { ...term, window: { ...term.window, half: half / Math.sqrt(weight) } };
}

/** A term with the weight that −2 ln of its chance has at these numbers, where that is more than it has. */
function steepened(
  one: IndexedTerm,
  weighed: Term,
  spread: readonly Covariance[],
  numbers: readonly Float64Array[],
): Term {
  const { term } = one;
  if (term.hard || term.wish || isOwn(one)) return weighed;
  const { low, aim, high, half } = term.window;
  const value = termAt(one, numbers);
  const off = ((value - aim) / half) ** 2;
  const sigma = sigmaOf(one, spread);
  if (!(off > 0 && sigma > 0)) return weighed;
  const weight = (-2 * Math.log(Math.max(LEAST_CHANCE, chanceWithin(low, high, value, sigma)))) / off;
  return { ...weighed, window: { ...weighed.window, half: Math.min(weighed.window.half, half / Math.sqrt(weight)) } };
}

function widened({ term }: IndexedTerm, by: number): Term {
  if (term.hard) return term;
  const { low, high } = term.window;
  return { ...term, window: { ...term.window, low: low - by, high: high + by } };
}
