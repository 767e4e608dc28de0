/** What a person must know where shims are counted: when they are what is missing, and which to take out early. */

import { say } from '../../adjuster/steps.ts';
import type { Move, ShimCount } from '../../contract.ts';
import { millionths } from '../../units/shim-drawer.ts';
import { Choices } from '../choose.ts';
import { adjusterOf, evaluate, type Problem } from '../problem.ts';
import type { Drawer } from './drawer.ts';

export function shimNotes(problem: Problem, { drawer }: Choices, moves: readonly Move[], inWindow: boolean): string[] {
  if (!drawer) return [];
  return [...(inWindow ? [] : missing(problem, drawer)), ...borrowed(problem, drawer, moves)];
}

/** Where the windows could be met with more shims: which would do. */
function missing(problem: Problem, drawer: Drawer): string[] {
  const { drawer: _, ...request } = problem.request;
  const plenty = { ...problem, request };
  const positions = new Choices(plenty).best('closest');
  if (!evaluate(plenty, positions).inWindow) return [];
  const lacking = drawer.lacking(({ corner, adjuster }) => positions[corner][adjuster] as number);
  return [`The shims in the drawer keep the windows out of reach: ${words(lacking)} more would do.`];
}

/** Shims that go into a pack before they come out of another. */
function borrowed({ request }: Problem, drawer: Drawer, moves: readonly Move[]): string[] {
  const ready = new Map(drawer.counts.map(({ size, count }) => [millionths(size), count]));
  const changes = moves.map((move) => {
    const holds = drawer.find(move)?.holds ?? new Map<number, number>();
    const goes = new Map((move.shims ?? []).map(({ size, count }) => [millionths(size), count]));
    const change = new Map([...holds.keys(), ...goes.keys()].map((s) => [s, (goes.get(s) ?? 0) - (holds.get(s) ?? 0)]));
    return { move, change };
  });
  const name = (move: Move): string => `${move.corner} ${adjusterOf(request, move).name ?? move.adjuster}`;
  return changes.flatMap(({ move, change }, i) => {
    const early: ShimCount[] = [];
    for (const [size, count] of change) {
      if (!ready.has(size)) continue;
      const left = ready.get(size)! - count;
      ready.set(size, Math.max(0, left));
      if (left >= 0) continue;
      early.push({ size: size / 1e6, count: -left });
      // They are taken out now, so that later they are not there to come out again.
      let owed = -left;
      for (const later of changes.slice(i + 1)) {
        const out = Math.min(owed, Math.max(0, -(later.change.get(size) ?? 0)));
        later.change.set(size, (later.change.get(size) ?? 0) + out);
        owed -= out;
      }
    }
    if (early.length === 0) return [];
    const givers = moves.slice(i + 1).filter((later) =>
      early.some(({ size }) => {
        const holds = drawer.find(later)?.holds.get(millionths(size)) ?? 0;
        return holds > (later.shims?.find((one) => one.size === size)?.count ?? 0);
      }),
    );
    return [`${name(move)} takes ${words(early)} out of ${givers.map(name).join(' and ')}: open that first.`];
  });
}

/** "1 × 3 mm and 2 × 1.5 mm"; a line never breaks within one of them, where it reads as another sum. */
function words(shims: readonly ShimCount[]): string {
  const each = shims.map(({ size, count }) => `${count}\u00a0×\u00a0${say(size, 4)}\u00a0mm`);
  return [each.slice(0, -1).join(', '), ...each.slice(-1)].filter(Boolean).join(' and ');
}
