/**
 * The drawer as the search sees it. States of an assembly that hold the same packs are a class. Whether some classes can be
 * served together is decided exactly; of boxes that hold several classes, by the least that each must use: of every
 * counted size, and of all counted shims together in mm.
 */
import type { Position } from '../../contract.ts';
import { lightest, millionths } from '../../units/shim-drawer.ts';
import { samePosition } from '../states/axis.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Drawer, Pack } from './drawer.ts';

/** The classes of some states of one assembly, and the least that any of them uses of each counted thing. */
export interface Use {
  readonly first: number;
  readonly last: number;
  readonly least: Float64Array;
}

/** A pack that the states of an assembly move. */
interface MovedPack {
  readonly pack: Pack;
  readonly axis: number;
  readonly positions: readonly Position[];
}

/** Shims are counted in whole ones, and mm in sums of millionths. */
const NOISE = 1e-6;

export class ShimBound {
  /** Of each assembly's states, and what each class uses at least: numbers of `kinds`, class by class. */
  readonly assemblies: readonly { readonly classes: Uint32Array; readonly least: Float64Array }[];
  readonly kinds: number;
  readonly #there: Float64Array;
  readonly #moved: readonly (readonly MovedPack[])[];
  readonly #served = new Map<string, boolean>();

  constructor(
    private readonly drawer: Drawer,
    states: readonly StateSpace[],
  ) {
    const { supply } = drawer;
    const sizes = [...supply.keys()];
    const weights = [
      ...sizes.map((size) => (one: number) => (one === size ? 1 : 0)),
      (one: number) => (supply.has(one) ? one : 0),
    ];
    this.kinds = weights.length;
    this.#there = Float64Array.from(weights, (weight) =>
      [...supply].reduce((sum, [size, count]) => sum + count * weight(size), 0),
    );
    this.#moved = states.map(({ axes, corners }) =>
      axes.flatMap(({ side, adjuster, positions }, axis) => {
        const pack = drawer.find({ corner: corners[side]!, adjuster: adjuster.id });
        return pack ? [{ pack, axis, positions }] : [];
      }),
    );
    const moved = this.#moved.flat().map(({ pack }) => pack);
    const kept = drawer.packs.filter((pack) => !moved.includes(pack));
    weights.forEach((weight, k) => {
      for (const { holds } of kept) this.#there[k]! -= weigh(holds, weight);
    });
    this.assemblies = states.map((own, u) => {
      const packs = this.#moved[u]!;
      const tables = packs.map((one) => weights.map((weight) => this.#leastOf(one, weight)));
      const count = packs.reduce((product, { positions }) => product * positions.length, 1);
      const least = new Float64Array(count * this.kinds);
      for (let one = 0; one < count; one++) {
        this.#digits(u, one).forEach((digit, p) => {
          tables[p]?.forEach((table, k) => {
            least[one * this.kinds + k]! += table[digit]!;
          });
        });
      }
      return { classes: own.partOf(packs.map(({ axis }) => axis)), least };
    });
  }

  /** Whether there may be shims enough for some choice of states, one of each assembly; certain where each has one class. */
  mayServe(uses: readonly Use[]): boolean {
    for (let k = 0; k < this.kinds; k++) {
      let sum = 0;
      for (const { least } of uses) sum += least[k]!;
      if (sum > this.#there[k]! + NOISE) return false;
    }
    return !uses.every(({ first, last }) => first === last) || this.#serves(uses.map(({ first }) => first));
  }

  /** Whether there are shims enough for these states, one of each assembly. */
  serves(states: readonly number[]): boolean {
    return this.#serves(states.map((state, u) => this.assemblies[u]!.classes[state]!));
  }

  #serves(classes: readonly number[]): boolean {
    const key = classes.join();
    const known = this.#served.get(key);
    if (known !== undefined) return known;
    const at = new Map<Pack, Position>();
    classes.forEach((one, u) => {
      const digits = this.#digits(u, one);
      this.#moved[u]?.forEach(({ pack, positions }, p) => {
        at.set(pack, positions[digits[p]!]!);
      });
    });
    const served = this.drawer.serve((pack) => at.get(pack) ?? pack.now) !== undefined;
    this.#served.set(key, served);
    return served;
  }

  /** Which position each pack of an assembly has in a class. */
  #digits(assembly: number, one: number): number[] {
    let rest = one;
    return this.#moved[assembly]!.map(({ positions }) => positions.length).reduceRight<number[]>((digits, length) => {
      digits.unshift(rest % length);
      rest = Math.floor(rest / length);
      return digits;
    }, []);
  }

  /** The least that a pack's shims weigh, position by position. */
  #leastOf({ pack, positions }: MovedPack, weight: (size: number) => number): number[] {
    const least = lightest(pack, this.drawer.made(pack), this.drawer.supply, weight);
    return positions.map((position) =>
      samePosition(position, pack.now) ? weigh(pack.holds, weight) : (least.get(millionths(position as number)) ?? 0),
    );
  }
}

const weigh = (stack: Pack['holds'], weight: (size: number) => number): number =>
  [...stack].reduce((sum, [size, count]) => sum + count * weight(size), 0);
