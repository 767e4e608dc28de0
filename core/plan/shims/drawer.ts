/**
 * Shims that are counted. A plan may use those in the drawer and those that the packs which it changes are known to hold
 * now; a pack that stays as it is keeps its own, whatever they are. What nobody knows to be in a pack is not counted on.
 */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Adjuster, AdjusterRef, CarPacks, Corner, Position, ShimCount } from '../../contract.ts';
import { CORNERS } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { type Bolt, countOf, fewestShims, millionths, type Stack, stacksFrom } from '../../units/shim-drawer.ts';
import { shimStack } from '../../units/shim-stack.ts';
import { samePosition } from '../states/axis.ts';

/** A pack that may be changed. Thicknesses and sizes in millionths of a millimetre. */
export interface Pack extends AdjusterRef, Bolt {
  readonly now: Position;
  readonly max: number;
  /** What is in it; nothing where that is not known. */
  readonly holds: Stack;
  readonly known: boolean;
  /** The fewest shims that make a thickness; none where its sizes do not make it. */
  readonly fewest: (position: Position) => Stack;
}

export class Drawer {
  readonly packs: readonly Pack[];
  /** Shims in the drawer and in the packs, of the sizes that are counted. */
  readonly supply: ReadonlyMap<number, number>;
  readonly #made = new Map<Pack, ReadonlyMap<number, number>>();

  /**
   * @param movable the adjusters of a corner that may be moved
   * @param packs what is in packs, where it is known; absent: the fewest shims, as an instruction would have had it
   */
  constructor(
    readonly counts: readonly ShimCount[],
    movable: (corner: Corner) => readonly Adjuster[],
    now: Readonly<Record<Corner, Readonly<Record<string, Position>>>>,
    packs?: CarPacks,
  ) {
    const supply = new Map(counts.map(({ size, count }) => [millionths(size), count]));
    const counted = new Set(supply.keys());
    this.packs = CORNERS.flatMap((corner) =>
      movable(corner).flatMap((adjuster) => packOf(corner, adjuster, now[corner][adjuster.id]!, packs)),
    ).filter(({ sizes }) => sizes.some((size) => counted.has(size)));
    for (const { holds } of this.packs) {
      for (const [size, count] of holds) if (counted.has(size)) supply.set(size, (supply.get(size) ?? 0) + count);
    }
    this.supply = supply;
  }

  find({ corner, adjuster }: AdjusterRef): Pack | undefined {
    return this.packs.find((pack) => pack.corner === corner && pack.adjuster === adjuster);
  }

  /** Groups of assemblies that share its shims are planned together. */
  join(groups: readonly (readonly Assembly[])[]): (readonly Assembly[])[] {
    const shares = (group: readonly Assembly[]) =>
      this.packs.some(({ corner }) => group.some(({ corners }) => corners.includes(corner)));
    const together = groups.filter(shares).flat();
    return [...groups.filter((group) => !shares(group)), ...(together.length > 0 ? [together] : [])];
  }

  /** Whether an adjuster could go to a position if it had every shim that there is. */
  allows(ref: AdjusterRef, position: Position): boolean {
    const pack = this.find(ref);
    return !pack || samePosition(pack.now, position) || this.made(pack).has(millionths(position as number));
  }

  /** Every thickness that one pack can have with all shims to itself. */
  made(pack: Pack): ReadonlyMap<number, number> {
    const made = this.#made.get(pack) ?? fewestShims(pack, pack.max, this.supply);
    this.#made.set(pack, made);
    return made;
  }

  /** The stacks of the packs that are changed at these positions; nothing where there are not shims enough. */
  serve(at: (pack: Pack) => Position): ReadonlyMap<Pack, Stack> | undefined {
    const changed = this.packs.filter((pack) => !samePosition(pack.now, at(pack)));
    const supply = new Map(this.supply);
    for (const pack of this.packs) if (!changed.includes(pack)) take(supply, pack.holds);
    // The fewest shims in each is what a person would take, where there are enough for that.
    const plain = changed.map((pack) => pack.fewest(at(pack)));
    const left = new Map(supply);
    const stacks = plain.every((stack) => take(left, stack))
      ? plain
      : stacksFrom(
          supply,
          changed.map((pack) => ({ ...pack, thickness: millionths(at(pack) as number) })),
        );
    return stacks && new Map(changed.map((pack, i) => [pack, stacks[i]!]));
  }

  /** Counted shims, beside those there are, that the packs would need at these positions. */
  lacking(at: (pack: Pack) => Position): ShimCount[] {
    const left = new Map(this.supply);
    for (const pack of this.packs) take(left, samePosition(pack.now, at(pack)) ? pack.holds : pack.fewest(at(pack)));
    return shimsOf(new Map([...left].flatMap(([size, count]) => (count < 0 ? [[size, -count]] : []))));
  }
}

function packOf(corner: Corner, adjuster: Adjuster, now: Position, packs?: CarPacks): Pack[] {
  const stack = adjusterKinds[adjuster.kind]?.stack?.(adjuster);
  if (!stack) return [];
  const told = packs?.[corner]?.[adjuster.id];
  const fewest = fewestOf(stack.sizes.map((size) => millionths(size) / 1e6));
  return [
    {
      corner,
      adjuster: adjuster.id,
      now,
      fewest,
      holds: told ? stackOf(told) : packs ? new Map() : fewest(now),
      known: told !== undefined,
      sizes: stack.sizes.map(millionths),
      most: stack.maxCount ?? Number.POSITIVE_INFINITY,
      max: millionths(stack.max),
    },
  ];
}

/** The fewest shims that make a thickness, none where none do; each worked out once. */
function fewestOf(sizes: readonly number[]): Pack['fewest'] {
  const known = new Map<Position, Stack>();
  return (position) => {
    const before = known.get(position);
    if (before) return before;
    const { exact, shims } = shimStack(position as number, sizes);
    const stack = new Map(exact ? shims.map(({ size, count }) => [millionths(size), count]) : []);
    known.set(position, stack);
    return stack;
  };
}

/** Takes a stack's counted shims out; whether there were enough. */
function take(supply: Map<number, number>, stack: Stack): boolean {
  let enough = true;
  for (const [size, count] of stack) {
    if (!supply.has(size)) continue;
    const left = countOf(supply, size) - count;
    supply.set(size, left);
    if (left < 0) enough = false;
  }
  return enough;
}

const stackOf = (shims: readonly ShimCount[]): Stack => {
  const stack = new Map<number, number>();
  for (const { size, count } of shims) stack.set(millionths(size), (stack.get(millionths(size)) ?? 0) + count);
  return stack;
};

/** Thickest first. */
export const shimsOf = (stack: Stack): ShimCount[] =>
  [...stack].sort(([a], [b]) => b - a).map(([size, count]) => ({ size: size / 1e6, count }));
