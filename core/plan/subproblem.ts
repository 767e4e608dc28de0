/** What has to be decided together: corners that windows, or shims in the drawer, tie to one another. */
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { Adjuster, Corner, PlanRequest } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import type { Assembly } from '../pose/car-model.ts';
import { FineSpace, statesOf } from './fine/fine-space.ts';
import { refine } from './fine/refine.ts';
import { Reachable } from './out-of-reach.ts';
import type { Positions, Problem } from './problem.ts';
import { search } from './search/branch-and-bound.ts';
import type { Found, Goal } from './search/goal.ts';
import type { Work } from './search/work.ts';
import type { Drawer } from './shims/drawer.ts';
import { ShimBound } from './shims/shim-bound.ts';
import type { CornerStand, Instead } from './states/corner-stand.ts';
import type { StateSpace } from './states/state-space.ts';
import { groups, type Term, tiesOf, tieTerms, unlimited } from './terms.ts';

/** Assemblies that terms tie together, with all their states. */
export interface Subproblem {
  readonly assemblies: readonly Assembly[];
  readonly states: readonly StateSpace[];
  readonly terms: readonly Term[];
  /** What all searches together may do. */
  readonly work: Work;
  /** Where shims are counted. */
  readonly shimBound?: ShimBound;
  /**
   * Where there are too many states to list all: positions to either side of the nearest choice within which none is
   * nearer; infinite where none is at all.
   */
  readonly within?: number;
}

/** All that has to be decided, in as many subproblems as are free of one another; a drawer ties those that share it. */
export function subproblemsOf(problem: Problem, drawer?: Drawer): Subproblem[] {
  const terms = allTerms(problem);
  return partsOf(problem, terms, (assembly) => stateSpaceOf(problem, assembly, { drawer }), drawer);
}

const allTerms = ({ request, terms, wishes, now }: Problem): Term[] => [
  ...terms,
  ...wishes,
  ...tieTerms(request.car, now),
];

/**
 * The same as given, and `within` once more without the windows that nothing can be done about (see out-of-reach.ts).
 * @returns beside them the assemblies' states, and what they can reach
 */
export function bothSubproblems(problem: Problem, { drawer, most }: StatesOptions = {}) {
  const { model } = problem;
  const terms = allTerms(problem);
  const states = new Map(
    groups(terms, model)
      .flat()
      .map((assembly) => [assembly, stateSpaceOf(problem, assembly, { drawer, most })] as const),
  );
  const given = partsOf(problem, terms, (assembly) => states.get(assembly)!, drawer);
  // Where not all states are listed, what can be reached is told by those that were found.
  for (const { assemblies, states: found } of given) {
    assemblies.forEach((assembly, a) => {
      states.set(assembly, found[a]!);
    });
  }
  const reachable = new Reachable(model, (assembly) => states.get(assembly)!);
  const within = (): readonly Subproblem[] => {
    const worth = reachable.worthIt(terms).map((term) => reachable.untied(term));
    const isSame = worth.length === terms.length && worth.every((term, t) => term === terms[t]);
    return isSame ? given : partsOf(problem, worth, (assembly) => states.get(assembly)!, drawer);
  };
  return { given, within, reachable, states: [...states.values()] };
}

function partsOf(
  { model, work }: Problem,
  terms: readonly Term[],
  statesOf: (assembly: Assembly) => StateSpace,
  drawer?: Drawer,
): Subproblem[] {
  const apart = groups(terms, model);
  return (drawer ? drawer.join(apart) : apart).map((assemblies) => {
    const corners = assemblies.flatMap((assembly) => assembly.corners);
    const own = terms.filter(({ parts }) => corners.includes(parts[0]!.corner));
    const counts = drawer?.packs.some(({ corner }) => corners.includes(corner));
    const given = refined({ assemblies, states: assemblies.map(statesOf), terms: own, work });
    const kept = yielding(drawer && counts ? counted(given, drawer) : given);
    if (kept.terms === given.terms) return kept;
    const again = refined(kept);
    return drawer && counts && again !== kept ? counted(again, drawer) : again;
  });
}

/** The same with its shims counted. */
const counted = ({ within, ...given }: Subproblem, drawer: Drawer): Subproblem => ({
  ...given,
  ...(within !== undefined && { within: 0 }),
  shimBound: new ShimBound(drawer, given.states),
});

/** The same with more states where not all are listed. */
function refined(subproblem: Subproblem): Subproblem {
  if (!subproblem.states.some((states) => states instanceof FineSpace)) return subproblem;
  const { states, within } = refine(subproblem.states, subproblem.terms, subproblem.work);
  // What is about the nearest is not what is about the nearest that the drawer can serve.
  return { ...subproblem, states, within: subproblem.shimBound ? 0 : within };
}

/**
 * What nobody typed is kept where all that was typed can be met with it. Where not it is no limit any more, and only
 * costs what its square does.
 */
function yielding(subproblem: Subproblem): Subproblem {
  const { terms } = subproblem;
  if (!terms.some(({ window }) => window.assumed)) return subproblem;
  if (solve(subproblem, { inWindow: true, effortFirst: false })) return subproblem;
  return { ...subproblem, terms: terms.map((term) => (term.window.assumed ? unlimited(term) : term)) };
}

interface StatesOptions {
  /** Positions of a corner's adjusters that are to be tried in place of their own; such a one is not locked. */
  readonly instead?: ReadonlyMap<Corner, Instead>;
  readonly drawer?: Drawer | undefined;
  /** States of one corner that are listed in full; of more some are. */
  readonly most?: number | undefined;
  /** Of more only as it stands, for those to be sought that meet the windows. */
  readonly isBare?: boolean;
}

/** @throws InputError where the adjusters stand so that no pose exists, or where there are far too many states */
export function stateSpaceOf(
  { request, now }: Problem,
  assembly: Assembly,
  { instead = new Map(), drawer, most, isBare }: StatesOptions = {},
): StateSpace {
  const stand = (corner: Corner): CornerStand => {
    const own = instead.get(corner) ?? new Map();
    return {
      measured: request.reading[corner] ?? {},
      current: now[corner],
      movable: movableAt(request, corner, own),
      ties: tiesOf(request.car[axleOf(corner)]).map(([left, right]) => (isLeft(corner) ? left : right)),
      instead: own,
      ...(drawer && { allows: ({ id }, position) => drawer.allows({ corner, adjuster: id }, position) }),
    };
  };
  return statesOf(assembly, assembly.corners.map(stand), most, isBare);
}

/** Of a corner that was measured, what is not locked, or is to be tried all the same. */
export function movableAt(
  { car, reading, locked = [] }: PlanRequest,
  corner: Corner,
  instead: Instead = new Map(),
): readonly Adjuster[] {
  if (!reading[corner]) return [];
  const isHeld = ({ id }: Adjuster): boolean =>
    !instead.has(id) && locked.some((ref) => ref.corner === corner && ref.adjuster === id);
  return adjustersOf(car, corner).filter((adjuster) => !isHeld(adjuster));
}

/** Where a choice has the adjusters of the subproblem's corners. */
export const settingsIn = ({ states }: Subproblem, found: Found): Partial<Positions> =>
  Object.fromEntries(
    states.flatMap((own, a) =>
      own.settings(found.states[a]!).map((settings, side) => [own.corners[side], settings] as const),
    ),
  );

/** Mostly there are shims enough for the best of all: only where not does the search have to count them on its way. */
export function solve({ states, terms, shimBound, work }: Subproblem, goal: Goal): Found | undefined {
  const found = search(states, terms, goal, work);
  if (!found || !shimBound || shimBound.serves(found.states)) return found;
  return search(states, terms, { ...goal, shimBound }, work);
}
