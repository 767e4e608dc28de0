/**
 * Which packs a limited number of shims makes. Thicknesses are whole millionths of a millimetre here, so that sums are
 * exact and a size is found by its number.
 */

export const millionths = (mm: number): number => Math.round(mm * 1e6);

/** How many shims there are of a size; of one that is absent there are plenty. */
export type Supply = ReadonlyMap<number, number>;
/** How many shims of each size. */
export type Stack = ReadonlyMap<number, number>;

export const countOf = (supply: Supply, size: number): number => supply.get(size) ?? Number.POSITIVE_INFINITY;

export interface Bolt {
  readonly sizes: readonly number[];
  /** Most shims. */
  readonly most: number;
}
export interface Wanted extends Bolt {
  readonly thickness: number;
}

/**
 * A stack for every pack wanted, all out of one supply, large shims first; nothing where the supply cannot serve them
 * all. Every way to share the shims out is tried, size by size, but none that leaves the same still to be made twice.
 */
export function stacksFrom(supply: Supply, wanted: readonly Wanted[]): Stack[] | undefined {
  const sizes = [...new Set(wanted.flatMap((one) => one.sizes))].sort((a, b) => b - a);
  const stacks = wanted.map(() => new Map<number, number>());
  const left = wanted.map(({ thickness }) => thickness);
  const room = wanted.map(({ most }) => most);
  const dead = new Set<string>();
  /** What this size and all smaller ones amount to. */
  const rest = sizes.map((_, s) => sizes.slice(s).reduce((sum, size) => sum + countOf(supply, size) * size, 0));

  const fromSize = (s: number): boolean => {
    const lacking = left.reduce((sum, x) => sum + x, 0);
    if (lacking === 0) return true;
    if (s === sizes.length || lacking > rest[s]!) return false;
    const state = `${s} ${left.join()} ${room.join()}`;
    if (dead.has(state)) return false;
    if (share(s, 0, countOf(supply, sizes[s]!))) return true;
    dead.add(state);
    return false;
  };
  const share = (s: number, pack: number, there: number): boolean => {
    if (pack === wanted.length) return fromSize(s + 1);
    const size = sizes[s]!;
    const [thickness, slots] = [left[pack]!, room[pack]!];
    const fits = wanted[pack]?.sizes.includes(size) ? Math.min(there, slots, Math.floor(thickness / size)) : 0;
    for (let n = fits; n >= 0; n--) {
      left[pack] = thickness - n * size;
      room[pack] = slots - n;
      if (share(s, pack + 1, there - n)) {
        if (n > 0) stacks[pack]?.set(size, n);
        return true;
      }
    }
    left[pack] = thickness;
    room[pack] = slots;
    return false;
  };
  return fromSize(0) ? stacks : undefined;
}

/**
 * For every thickness up to `max` that one pack can have out of a supply: the fewest shims that make it.
 */
export function fewestShims({ sizes, most }: Bolt, max: number, supply: Supply): Map<number, number> {
  return leastWeight(
    sizes,
    max,
    supply,
    () => 1,
    (_, count) => count <= most,
  );
}

/** For each of some thicknesses that a pack can have: the least that its shims may weigh together. */
export const lightest = (
  { sizes }: Bolt,
  thicknesses: ReadonlyMap<number, unknown>,
  supply: Supply,
  weight: (size: number) => number,
): Map<number, number> =>
  leastWeight(sizes, Number.POSITIVE_INFINITY, supply, weight, (thickness) => thicknesses.has(thickness));

function leastWeight(
  sizes: readonly number[],
  max: number,
  supply: Supply,
  weight: (size: number) => number,
  allowed: (thickness: number, weight: number) => boolean,
): Map<number, number> {
  const least = new Map([[0, 0]]);
  for (const size of new Set(sizes)) {
    for (const [thickness, before] of [...least]) {
      for (let n = 1; n <= countOf(supply, size) && thickness + n * size <= max; n++) {
        const [sum, total] = [thickness + n * size, before + n * weight(size)];
        // A stack that is allowed is made of stacks that are.
        if (!allowed(sum, total)) break;
        if (total < (least.get(sum) ?? Number.POSITIVE_INFINITY)) least.set(sum, total);
      }
    }
  }
  return least;
}
