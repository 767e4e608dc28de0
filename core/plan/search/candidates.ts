/** One assembly's states that may still be chosen, with what each costs by itself. */
import { type IndexedTerm, isOwn } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Goal } from './goal.ts';
import { ownCosts } from './own-costs.ts';

/** Room for what states cost. */
class Scratch {
  #costs: Float64Array | undefined;
  #tilted: Float64Array | undefined;

  constructor(private readonly count: number) {}

  get costs(): Float64Array {
    this.#costs ??= new Float64Array(this.count);
    return this.#costs;
  }

  get tilted(): Float64Array {
    this.#tilted ??= new Float64Array(this.count);
    return this.#tilted;
  }
}

const known = new WeakMap<StateSpace, Scratch>();
/** The same for the same states: a plan searches them again and again, and new room each time is soon in the way. */
export function scratchOf(states: StateSpace): Scratch {
  const scratch = known.get(states) ?? new Scratch(states.count);
  known.set(states, scratch);
  return scratch;
}

export class Candidates {
  /** What each state costs by itself: the terms that the assembly decides alone, and what the goal adds. */
  readonly costs: Float64Array;
  /** How much a degree of each number matters: half windows. */
  readonly weights: readonly number[];
  #order: Uint32Array;

  /**
   * @param terms all terms; those that hang on other assemblies give weights only
   * @param scratch what is written to, for as long as these candidates are asked
   */
  constructor(
    readonly states: StateSpace,
    assembly: number,
    terms: readonly IndexedTerm[],
    { inWindow, extra }: Goal,
    private readonly scratch: Scratch = new Scratch(states.count),
  ) {
    const own = terms.filter((one) => isOwn(one) && one.parts[0]?.assembly === assembly);
    const { costs, within } = ownCosts(states, own, inWindow);
    const more = extra?.[assembly];
    this.costs = more ? scratch.costs : costs;
    if (more) for (const state of within) this.costs[state] = costs[state]! + more(state);
    this.#order = more ? within.filter((state) => this.costs[state]! < Number.POSITIVE_INFINITY) : within.slice();
    this.weights = Array.from({ length: states.stride }, (_, at) => weightOf(terms, assembly, at));
  }

  /** Their numbers, in an order that is for the boxes to choose. */
  get order(): Uint32Array {
    return this.#order;
  }

  /** The one that costs least by itself; −1 where there is none. */
  get cheapest(): number {
    return this.least(new Float64Array(this.states.stride));
  }

  /** Minutes that the least laborious takes. */
  get leastEffort(): number {
    const { effort } = this.states;
    return this.#order.reduce((least, state) => Math.min(least, effort[state]!), Number.POSITIVE_INFINITY);
  }

  /** Forgets those that take more minutes. */
  keepEffort(most: number): void {
    const { effort } = this.states;
    this.#order = this.#order.filter((state) => effort[state]! <= most);
  }

  /** Forgets those that cost more by themselves. */
  keep(most: number): void {
    const order = this.#order;
    let kept = 0;
    for (const state of order) if (this.costs[state]! <= most) order[kept++] = state;
    this.#order = order.subarray(0, kept);
  }

  /**
   * The one that costs least with `slope`·v + v·`square`·v of its numbers v added; −1 where there is none.
   * @param square row by row
   */
  least(slope: Float64Array, square?: Float64Array, among: Uint32Array = this.#order): number {
    const { values, stride } = this.states;
    const { costs } = this;
    let best = -1;
    let lowest = Number.POSITIVE_INFINITY;
    for (let i = 0; i < among.length; i++) {
      const state = among[i]!;
      const at = state * stride;
      let cost = costs[state]!;
      for (let k = 0; k < stride; k++) {
        let steep = slope[k]!;
        if (square) for (let l = 0; l < stride; l++) steep += square[k * stride + l]! * values[at + l]!;
        cost += steep * values[at + k]!;
      }
      if (cost < lowest) {
        lowest = cost;
        best = state;
      }
    }
    return best;
  }

  /** Those whose numbers are all within `reach` half windows of a state's. */
  near(state: number, reach: number): Uint32Array {
    const { values, stride } = this.states;
    return this.#order.filter((other) => {
      for (let k = 0; k < stride; k++) {
        const away = Math.abs(values[other * stride + k]! - values[state * stride + k]!);
        if (away * this.weights[k]! > reach) return false;
      }
      return true;
    });
  }

  /** What each costs with `slope` for each of its numbers added, at the least that the slack allows. */
  tilted(slope: Float64Array): Float64Array {
    const { values, slack, stride } = this.states;
    const { tilted } = this.scratch;
    const allowance = slope.reduce((sum, x) => sum + Math.abs(x), 0) * slack;
    for (const state of this.#order) {
      let cost = this.costs[state]! - allowance;
      for (let k = 0; k < stride; k++) cost += slope[k]! * values[state * stride + k]!;
      tilted[state] = cost;
    }
    return tilted;
  }
}

/** A tie costs nothing, but boxes have to part by it: a millimetre or degree of it counts as a half window. */
const TIE_WEIGHT = 1;

/** The sharpest window that a number of an assembly's states takes part in. */
function weightOf(terms: readonly IndexedTerm[], assembly: number, at: number): number {
  let weight = 0;
  for (const { parts, term } of terms) {
    for (const part of parts) {
      if (part.assembly === assembly && part.at === at)
        weight = Math.max(weight, term.hard ? TIE_WEIGHT : Math.abs(part.factor) / term.window.half);
    }
  }
  return weight;
}
