/** Shims that are counted, judged apart from the planner: every stack of every pack is tried. */
import type { Adjuster, Corner, PlanRequest, Settings, ShimCount } from '../../core/contract.ts';
import { shimStack } from '../../core/index.ts';
import { adjustersAt } from './brute-force.ts';
import { oneOf, type Random, shims } from './random-cars.ts';

const SIZES = [[1.5], [1, 2], [1, 1.5, 3], [0.5, 2]] as const;

/** A pack of one to three sizes, not many positions. */
export function mixedPack(random: Random, id: string, at: string): Adjuster {
  const sizes = oneOf(random, SIZES);
  const max = sizes[0] === 0.5 ? 3 : 4.5;
  const maxCount = random() < 0.4 ? { maxCount: 3 } : {};
  return { ...shims(random, id, at), sizes, max, ...maxCount, reference: oneOf(random, [0, 1, 2]) * sizes[0] };
}

/** @param below how many of a size there are at the most, and one more */
export function randomDrawer(random: Random, below: number): ShimCount[] {
  const listed = [0.5, 1, 1.5, 2, 3].filter(() => random() < 0.8);
  return listed.map((size) => ({ size, count: random() < 0.4 ? 0 : Math.floor(random() * below) }));
}

type Counts = ReadonlyMap<number, number>;

/** Every way to make a thickness of these sizes. */
function stacksOf({ sizes, maxCount = Number.POSITIVE_INFINITY }: Adjuster, thickness: number): Counts[] {
  const all: Counts[] = [];
  const go = (i: number, left: number, slots: number, counts: Counts): void => {
    if (Math.abs(left) < 1e-9) all.push(counts);
    if (left < 1e-9 || i === sizes.length || slots <= 0) return;
    const size = sizes[i] as number;
    go(i + 1, left, slots, counts);
    for (let n = 1; n <= slots && n * size < left + 1e-9; n++) {
      const next = new Map([...counts, [size, n]]);
      if (Math.abs(left - n * size) < 1e-9) all.push(next);
      else go(i + 1, left - n * size, slots - n, next);
    }
  };
  go(0, thickness, maxCount, new Map());
  return all;
}

const heldBy = ({ sizes, reference }: Adjuster): Counts => {
  const { exact, shims: stack } = shimStack(reference as number, sizes);
  return new Map(exact ? stack.map(({ size, count }) => [size, count]) : []);
};

/**
 * Whether the drawer and what comes out of the packs that change make the packs of these positions; packs stand at
 * their reference now.
 */
export function judgeOf({ car, drawer = [] }: PlanRequest): (at: Partial<Record<Corner, Settings>>) => boolean {
  const known = new Map<string, boolean>();
  const stacks = new Map<string, Counts[]>();
  return (at) => {
    const changed = Object.entries(at).flatMap(([corner, settings]) =>
      adjustersAt(car, corner as Corner)
        .filter((one) => one.kind === 'shim-pack' && settings[one.id] !== one.reference)
        .map((pack) => ({ pack, key: `${corner} ${pack.id} ${settings[pack.id]}`, to: settings[pack.id] as number })),
    );
    const key = changed.map((one) => one.key).join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const ready = new Map(drawer.map(({ size, count }) => [size, count]));
    for (const { pack } of changed) {
      for (const [size, count] of heldBy(pack)) if (ready.has(size)) ready.set(size, (ready.get(size) ?? 0) + count);
    }
    const tries = changed.map(({ pack, key: own, to }) => {
      const made = stacks.get(own) ?? stacksOf(pack, to);
      stacks.set(own, made);
      return made;
    });
    const go = (i: number): boolean =>
      i === tries.length ||
      (tries[i] as Counts[]).some((stack) => {
        for (const [size, n] of stack) if (ready.has(size)) ready.set(size, (ready.get(size) as number) - n);
        const enough = [...stack.keys()].every((size) => (ready.get(size) ?? 0) >= 0);
        const ends = enough && go(i + 1);
        for (const [size, n] of stack) if (ready.has(size)) ready.set(size, (ready.get(size) as number) + n);
        return ends;
      });
    const found = go(0);
    known.set(key, found);
    return found;
  };
}
