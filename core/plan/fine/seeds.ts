/**
 * Settings that are worth a look, for every choice of adjusters that are moved: most adjusters are tried at a few positions
 * spread over their travel, and the pivots go where that comes nearest to what is wanted.
 */
import type { Completion, Free } from './completion.ts';
import type { Ranked } from './nodes.ts';

/** Choices of positions that are tried, all together. */
const TRIED = 1.5e4;
/** Kept of each choice of adjusters. */
const KEPT = 10;
/** Fewer adjusters than this are all listed anyhow. */
const LEAST_MOVED = 3;
/** More choices of adjusters are not gone through: those of few adjusters come first. */
const MOST_CHOICES = 1500;

/** Their digits. */
export const seedsOf = (completion: Completion): number[][] => {
  const choices = choicesOf(movable(completion)).slice(0, MOST_CHOICES);
  return nearestBy(completion, choices, TRIED);
};

/** Choices of positions that are tried where it does not matter how many adjusters are moved. */
const FEW_TRIED = 600;

/** The same whatever is moved, and of fewer. */
export const someSeedsOf = (completion: Completion): number[][] =>
  nearestBy(completion, [movable(completion)], FEW_TRIED);

const movable = ({ tables: { axes } }: Completion): number[] =>
  [...axes.keys()].filter((i) => axes[i]!.digits.length > 1);

function nearestBy(completion: Completion, choices: readonly (readonly number[])[], tried: number): number[][] {
  const each = tried / Math.max(1, choices.length);
  const found = new Map<string, { ranks: number[]; cost: number }>();
  for (const moved of choices) {
    for (const one of nearestOf(completion, moved, each)) found.set(one.ranks.join(), one);
  }
  const all = [...found.values()].sort((a, b) => a.cost - b.cost);
  return all.map(({ ranks }) => completion.tables.digits(ranks));
}

/** Every set of at least so many, the smallest first. */
function choicesOf(axes: readonly number[]): number[][] {
  let sets: number[][] = [[]];
  for (const axis of axes) sets = [...sets, ...sets.map((set) => [...set, axis])];
  return sets.filter((set) => set.length >= LEAST_MOVED).sort((a, b) => a.length - b.length);
}

function nearestOf(completion: Completion, moved: readonly number[], tried: number) {
  const { axes } = completion.tables;
  const pivots = completion.pivots(moved);
  const others = moved.filter((axis) => !pivots.includes(axis));
  const most = Math.max(2, Math.floor(tried ** (1 / Math.max(1, others.length))));
  const free = others.map((axis): Free => ({ axis, ranks: spreadOver(axes[axis]!, most) }));
  const kept: { ranks: number[]; cost: number }[] = [];
  completion.visit(free, pivots, (ranks, cost) => {
    if (kept.length < KEPT || cost < kept.at(-1)!.cost) {
      kept.push({ ranks: [...ranks], cost });
      kept.sort((a, b) => a.cost - b.cost);
      if (kept.length > KEPT) kept.pop();
    }
    return true;
  });
  return kept;
}

/** Ranks other than the middle one, so many at the most, evenly spread from end to end. */
function spreadOver({ digits, middle }: Ranked, most: number): number[] {
  const all = [...digits.keys()].filter((rank) => rank !== middle);
  if (all.length <= most) return all;
  return Array.from({ length: most }, (_, i) => all[Math.round((i * (all.length - 1)) / (most - 1))]!);
}
