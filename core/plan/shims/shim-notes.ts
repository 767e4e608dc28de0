/** What a person must know where shims are counted: when they are what is missing, and which to take out early. */

import type { BareMove, Position, ShimCount } from '../../contract.ts';
import type { Named, Note } from '../../said.ts';
import { millionths } from '../../units/shim-drawer.ts';
import { Choices } from '../choose.ts';
import { evaluate, nameOf, type Problem } from '../problem.ts';
import type { Drawer, Pack } from './drawer.ts';

/** @param enough whether the drawer keeps nothing out of its window */
export function shimNotes(problem: Problem, { drawer }: Choices, moves: readonly BareMove[], enough: boolean): Note[] {
  if (!drawer) return [];
  return [
    ...(enough ? [] : missing(problem, drawer)),
    ...short(drawer, moves),
    ...borrowed(problem, drawer, moves),
    ...unknown(problem, drawer, moves),
  ];
}

/** What lacks where a pack is left alone whose shims others were to have. */
function short(drawer: Drawer, moves: readonly BareMove[]): Note[] {
  const at = (pack: Pack): Position =>
    moves.find(({ corner, adjuster }) => corner === pack.corner && adjuster === pack.adjuster)?.to ?? pack.now;
  return drawer.serve(at) ? [] : [{ note: 'shims-short', shims: drawer.lacking(at) }];
}

/** Packs that are opened and of which nothing is counted, as nobody has said what is in them. */
function unknown({ request }: Problem, drawer: Drawer, moves: readonly BareMove[]): Note[] {
  if (!request.packs) return [];
  const packs = moves.filter((move) => drawer.find(move)?.known === false).map((move) => named(request, move));
  return packs.length > 0 ? [{ note: 'packs-unknown', packs }] : [];
}

const named = (request: Problem['request'], { corner, adjuster }: BareMove): Named => ({
  corner,
  adjuster,
  name: nameOf(request, { corner, adjuster }),
});

/** Where the windows could be met with more shims: which would do. */
function missing(problem: Problem, drawer: Drawer): Note[] {
  const { drawer: _, ...request } = problem.request;
  const plenty = { ...problem, request };
  const positions = new Choices(plenty).best('closest');
  if (!evaluate(plenty, positions).inWindow) return [];
  const lacking = drawer.lacking(({ corner, adjuster }) => positions[corner][adjuster] as number);
  return [{ note: 'shims-missing', shims: lacking }];
}

/** Shims that go into a pack before they come out of another. */
function borrowed({ request }: Problem, drawer: Drawer, moves: readonly BareMove[]): Note[] {
  const ready = new Map(drawer.counts.map(({ size, count }) => [millionths(size), count]));
  const changes = moves.map((move) => {
    const holds = drawer.find(move)?.holds ?? new Map<number, number>();
    const goes = new Map((move.shims ?? []).map(({ size, count }) => [millionths(size), count]));
    const change = new Map([...holds.keys(), ...goes.keys()].map((s) => [s, (goes.get(s) ?? 0) - (holds.get(s) ?? 0)]));
    return { move, change };
  });
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
    return [
      {
        note: 'shims-borrowed',
        by: named(request, move),
        shims: early,
        from: givers.map((one) => named(request, one)),
      },
    ];
  });
}
