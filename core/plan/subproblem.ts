/** What has to be decided together: corners that windows, or shims in the drawer, tie to one another. */
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { Adjuster, Corner, PlanRequest } from '../contract.ts';
import type { Unit } from '../pose/car-model.ts';
import { axleOf } from '../reading/axle-angles.ts';
import type { Positions, Situation } from './problem.ts';
import { type Found, type Goal, search } from './search/branch-and-bound.ts';
import type { Drawer } from './shims/drawer.ts';
import { Stock } from './shims/shim-bound.ts';
import { type Instead, type Stand, UnitStates } from './states/state-space.ts';
import { groups, type Term, tiesOf, tieTerms } from './terms.ts';

/** Units that terms tie together, with all their states. */
export interface Problem {
  readonly units: readonly Unit[];
  readonly states: readonly UnitStates[];
  readonly terms: readonly Term[];
  /** Where shims are counted. */
  readonly stock?: Stock;
}

/** All that has to be decided, in as many problems as are free of one another; a drawer ties those that share it. */
export function problemsOf(situation: Situation, drawer?: Drawer): Problem[] {
  const { request, model, now } = situation;
  const terms = [...situation.terms, ...tieTerms(request.car, now)];
  const apart = groups(terms, model);
  return (drawer ? drawer.join(apart) : apart).map((units) => {
    const corners = units.flatMap((unit) => unit.corners);
    const states = units.map((unit) => statesOf(situation, unit, { drawer }));
    const counts = drawer?.packs.some(({ corner }) => corners.includes(corner));
    return {
      ...{ units, states, terms: terms.filter(({ parts }) => corners.includes(parts[0]?.corner as Corner)) },
      ...(drawer && counts ? { stock: new Stock(drawer, states) } : {}),
    };
  });
}

interface StatesOptions {
  /** Positions of a corner's adjusters that are to be tried in place of their own; such a one is not locked. */
  readonly instead?: ReadonlyMap<Corner, Instead>;
  readonly drawer?: Drawer | undefined;
}

export function statesOf(
  { request, now }: Situation,
  unit: Unit,
  { instead = new Map(), drawer }: StatesOptions = {},
): UnitStates {
  const stand = (corner: Corner): Stand => {
    const own = instead.get(corner) ?? new Map();
    return {
      measured: request.reading[corner] ?? {},
      current: now[corner],
      movable: movableAt(request, corner, own),
      ties: tiesOf(request.car[axleOf(corner)]),
      instead: own,
      ...(drawer && { allows: ({ id }, position) => drawer.allows({ corner, adjuster: id }, position) }),
    };
  };
  return new UnitStates(unit, unit.corners.map(stand));
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

/** Where a choice has the adjusters of the problem's corners. */
export const settingsIn = ({ states }: Problem, found: Found): Partial<Positions> =>
  Object.fromEntries(
    states.flatMap((own, u) =>
      own.settings(found.states[u] as number).map((settings, side) => [own.corners[side], settings] as const),
    ),
  );

/** Mostly there are shims enough for the best of all: only where not does the search have to count them on its way. */
export function solve({ states, terms, stock }: Problem, goal: Goal): Found | undefined {
  const found = search(states, terms, goal);
  if (!found || !stock || stock.serves(found.states.map((state, u) => stock.units[u]?.classes[state] as number))) {
    return found;
  }
  return search(states, terms, { ...goal, stock });
}
