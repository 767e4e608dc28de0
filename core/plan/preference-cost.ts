/** What the states of an assembly cost for what a careful hand would rather not do. */

import type { Assembly } from '../pose/car-model.ts';
import { type Felt, FeltBy } from './felt.ts';
import { type Made, MOVE_PREFERENCES, PAIR_PREFERENCES, WHEEL_PREFERENCES } from './preferences.ts';
import { kindOfAdjuster, type Positions } from './problem.ts';
import type { Axis } from './states/axis.ts';
import type { StateSpace } from './states/state-space.ts';

/** The same adjuster left and right, and what each pair of their positions costs: left by left. */
interface Pair {
  readonly left: number;
  readonly right: number;
  readonly costs: Float64Array;
}

export class PreferenceCost {
  /** Of each axis, position by position. */
  readonly #costs: readonly Float64Array[];
  readonly #never: readonly Uint8Array[];
  readonly #pairs: readonly Pair[];
  /** Of the state that is asked for: a plan asks for thousands. */
  readonly #digits: Uint32Array;

  /** Where the assembly is one wheel's own. */
  readonly #felt: FeltBy | undefined;

  constructor(
    private readonly states: StateSpace,
    assembly: Assembly,
    now: Positions,
  ) {
    const made = states.axes.map(movesOf);
    this.#digits = new Uint32Array(made.length);
    this.#costs = made.map((moves) => Float64Array.from(moves, costOf));
    this.#never = made.map((moves) => Uint8Array.from(moves, (move) => (move && isAvoided(move) ? 1 : 0)));
    const [corner, other] = assembly.corners;
    this.#felt = other ? undefined : new FeltBy(assembly, now[corner!], states.axes);
    this.#pairs = states.axes.flatMap((axis, left) => {
      const right = states.axes.findIndex((other) => other.side > axis.side && other.adjuster.id === axis.adjuster.id);
      return right < 0 ? [] : [{ left, right, costs: pairCosts(made[left]!, made[right]!) }];
    });
  }

  /** Whether some state is one that a careful hand avoids. */
  get avoids(): boolean {
    return this.#never.some((axis) => axis.includes(1));
  }

  isAvoided(state: number): boolean {
    return this.#never.some((axis, i) => axis[this.states.digit(state, i)] === 1);
  }

  /** What a state costs, in −2 ln of chance. */
  cost(state: number): number {
    const digits = this.#digits;
    let cost = 0;
    this.states.digits(state, digits);
    for (let i = digits.length - 1; i >= 0; i--) cost += this.#costs[i]![digits[i]!]!;
    for (const { left, right, costs } of this.#pairs) {
      cost += costs[digits[left]! * this.#costs[right]!.length + digits[right]!]!;
    }
    return this.#felt ? cost + wheelCost(this.#felt.at(digits)) : cost;
  }
}

function wheelCost(felt: Readonly<Felt>): number {
  let cost = 0;
  for (const { weight, of, full } of WHEEL_PREFERENCES) cost += weight * Math.min(1, felt[of] / full);
  return cost;
}

/** The move to each position of an axis; none where it stands. */
function movesOf({ adjuster, positions, current }: Axis): (Made | undefined)[] {
  const kind = kindOfAdjuster(adjuster);
  return positions.map((to, i) => (i === current ? undefined : { adjuster, kind, from: positions[current]!, to }));
}

const costOf = (made: Made | undefined): number =>
  made ? MOVE_PREFERENCES.reduce((sum, { weight, cost }) => sum + weight * cost(made), 0) : 0;

const isAvoided = (made: Made): boolean => MOVE_PREFERENCES.some(({ never, cost }) => never && cost(made) > 0);

/** One that is not moved stays where it stands. */
function pairCosts(lefts: readonly (Made | undefined)[], rights: readonly (Made | undefined)[]): Float64Array {
  const staying = (moves: readonly (Made | undefined)[]): Made => {
    const other = moves.find((one) => one)!;
    return { ...other, to: other.from };
  };
  const costs = new Float64Array(lefts.length * rights.length);
  if (lefts.length < 2 || rights.length < 2) return costs;
  const [l, r] = [staying(lefts), staying(rights)];
  lefts.forEach((left = l, i) => {
    rights.forEach((right = r, j) => {
      costs[i * rights.length + j] = PAIR_PREFERENCES.reduce(
        (sum, { weight, cost }) => sum + weight * cost(left, right),
        0,
      );
    });
  });
  return costs;
}
