/** States of one assembly that hold the same packs, as classes, and the least that each class uses of each counted thing. */
import type { Position } from '../../contract.ts';
import { lightest, millionths } from '../../units/shim-drawer.ts';
import { samePosition } from '../states/axis.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Drawer, Pack } from './drawer.ts';

/** How much of a counted thing one shim of a size is. */
export type Weight = (size: number) => number;

/** The classes of some states, and the least that any of them uses of each counted thing. */
export interface Use {
  readonly first: number;
  readonly last: number;
  readonly least: Float64Array;
}

/** A pack that the states of the assembly move. */
interface MovedPack {
  readonly pack: Pack;
  readonly axis: number;
  readonly positions: readonly Position[];
}

export class ShimClasses {
  /** The class of each state. */
  readonly classes: Uint32Array;
  readonly #moved: readonly MovedPack[];
  readonly #kinds: number;
  /** What each class uses at least: numbers of `#kinds`, class by class. */
  readonly #least: Float64Array;
  /** Which position each pack has, class by class, where not all states are listed. */
  #listed: readonly (readonly number[])[] | undefined;

  /** @param weights of the counted things */
  constructor(states: StateSpace, drawer: Drawer, weights: readonly Weight[]) {
    const { axes, corners } = states;
    this.#moved = axes.flatMap(({ side, adjuster, positions }, axis) => {
      const pack = drawer.find({ corner: corners[side]!, adjuster: adjuster.id });
      return pack ? [{ pack, axis, positions }] : [];
    });
    const parts = this.#moved.map(({ axis }) => axis);
    this.classes = states.listed ? this.#number(states, parts) : states.partOf(parts);
    this.#kinds = weights.length;
    const tables = this.#moved.map((one) => weights.map((weight) => leastOf(one, drawer, weight)));
    const all = this.#moved.reduce((product, { positions }) => product * positions.length, 1);
    const count = this.#listed?.length ?? all;
    this.#least = new Float64Array(count * weights.length);
    for (let one = 0; one < count; one++) {
      this.#digits(one).forEach((digit, p) => {
        tables[p]!.forEach((table, k) => {
          this.#least[one * weights.length + k]! += table[digit]!;
        });
      });
    }
  }

  /** The packs that the states move. */
  get packs(): Pack[] {
    return this.#moved.map(({ pack }) => pack);
  }

  use(states: Uint32Array): Use {
    const least = new Float64Array(this.#kinds).fill(Number.POSITIVE_INFINITY);
    let first = Number.POSITIVE_INFINITY;
    let last = 0;
    let before = -1;
    for (const state of states) {
      const one = this.classes[state]!;
      if (one === before) continue;
      before = one;
      if (one < first) first = one;
      if (one > last) last = one;
      for (let k = 0; k < this.#kinds; k++) least[k] = Math.min(least[k]!, this.#least[one * this.#kinds + k]!);
    }
    return { first, last, least };
  }

  /** Where a class has each of the packs. */
  positions(one: number): (readonly [Pack, Position])[] {
    const digits = this.#digits(one);
    return this.#moved.map(({ pack, positions }, p) => [pack, positions[digits[p]!]!] as const);
  }

  /** Numbers the classes that occur, where there are far more than that. */
  #number(states: StateSpace, axes: readonly number[]): Uint32Array {
    const known = new Map<string, number>();
    const digits: number[][] = [];
    this.#listed = digits;
    return Uint32Array.from({ length: states.count }, (_, state) => {
      const own = axes.map((axis) => states.digit(state, axis));
      const key = own.join();
      const before = known.get(key);
      if (before !== undefined) return before;
      known.set(key, digits.length);
      return digits.push(own) - 1;
    });
  }

  /** Which position each pack has in a class. */
  #digits(one: number): readonly number[] {
    if (this.#listed) return this.#listed[one]!;
    let rest = one;
    return this.#moved.reduceRight<number[]>((digits, { positions: { length } }) => {
      digits.unshift(rest % length);
      rest = Math.floor(rest / length);
      return digits;
    }, []);
  }
}

/** The least that a pack's shims weigh, position by position. */
function leastOf({ pack, positions }: MovedPack, drawer: Drawer, weight: Weight): number[] {
  const least = lightest(pack, drawer.made(pack), drawer.supply, weight);
  return positions.map((position) =>
    samePosition(position, pack.now) ? weigh(pack.holds, weight) : (least.get(millionths(position as number)) ?? 0),
  );
}

export const weigh = (stack: Pack['holds'], weight: Weight): number =>
  [...stack].reduce((sum, [size, count]) => sum + count * weight(size), 0);
