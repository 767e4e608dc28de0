/**
 * The drawer as the search sees it. Whether some classes of states can be served together is decided exactly; of boxes
 * that hold several classes, by the least that each must use: of every counted size, and of all counted shims together
 * in mm.
 */
import type { StateSpace } from '../states/state-space.ts';
import type { Drawer } from './drawer.ts';
import { ShimClasses, type Use, type Weight, weigh } from './shim-classes.ts';

/** Shims are counted in whole ones, and mm in sums of millionths. */
const NOISE = 1e-6;

export class ShimBound {
  /** The classes of each assembly's states. */
  readonly assemblies: readonly ShimClasses[];
  /** How much there is of each counted thing for the packs that the states move. */
  readonly #there: Float64Array;
  readonly #served = new Map<string, boolean>();

  constructor(
    private readonly drawer: Drawer,
    states: readonly StateSpace[],
  ) {
    const { supply } = drawer;
    const weights: readonly Weight[] = [
      ...[...supply.keys()].map((size) => (one: number) => (one === size ? 1 : 0)),
      (one) => (supply.has(one) ? one : 0),
    ];
    this.assemblies = states.map((own) => new ShimClasses(own, drawer, weights));
    const moved = this.assemblies.flatMap(({ packs }) => packs);
    const kept = drawer.packs.filter((pack) => !moved.includes(pack));
    this.#there = Float64Array.from(weights, (weight) =>
      kept.reduce((sum, { holds }) => sum - weigh(holds, weight), weigh(supply, weight)),
    );
  }

  /** Whether there may be shims enough for some choice of states, one of each assembly; certain where each has one class. */
  mayServe(uses: readonly Use[]): boolean {
    for (let k = 0; k < this.#there.length; k++) {
      let sum = 0;
      for (const { least } of uses) sum += least[k]!;
      if (sum > this.#there[k]! + NOISE) return false;
    }
    return !uses.every(({ first, last }) => first === last) || this.#serves(uses.map(({ first }) => first));
  }

  /** Whether there are shims enough for these states, one of each assembly. */
  serves(states: readonly number[]): boolean {
    return this.#serves(states.map((state, a) => this.assemblies[a]!.classes[state]!));
  }

  #serves(classes: readonly number[]): boolean {
    const key = classes.join();
    const known = this.#served.get(key);
    if (known !== undefined) return known;
    const at = new Map(classes.flatMap((one, a) => this.assemblies[a]!.positions(one)));
    const served = this.drawer.serve((pack) => at.get(pack) ?? pack.now) !== undefined;
    this.#served.set(key, served);
    return served;
  }
}
