/** Which positions to go to: the exact choice by style, or every choice that is not worse in both work and distance. */
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { Adjuster, Corner, PlanRequest, PlanStyle } from '../contract.ts';
import { axleOf } from '../reading/axle-angles.ts';
import type { Unit } from './car-model.ts';
import { doubtsOf } from './doubt.ts';
import { Drawer } from './drawer.ts';
import { place } from './placed.ts';
import { type Found, type Goal, SAME_EFFORT, search } from './search.ts';
import { byCorner, type Positions, type Situation, settingsOf } from './situation.ts';
import { type Instead, type Stand, UnitStates } from './states.ts';
import { Stock } from './stock.ts';
import { groups, type Term, tiesOf, tieTerms } from './terms.ts';
import type { Unknowns } from './unknowns.ts';

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

/** One choice for each problem. */
type Answer = readonly Found[];

export class Choices {
  /** How many combinations there are. */
  readonly combinations: number;
  /** Where shims are counted. */
  readonly drawer: Drawer | undefined;
  readonly #problems: readonly Problem[];

  constructor(private readonly situation: Situation) {
    const { request, now } = situation;
    this.drawer = request.drawer && new Drawer(request.drawer, (corner) => movableAt(request, corner), now);
    this.#problems = problemsOf(situation, this.drawer);
    this.combinations = this.#problems
      .flatMap(({ states }) => states)
      .reduce((product, { count }) => product * count, 1);
  }

  /**
   * The positions that are best in a style: everything in its window if any combination does that, else the nearest to
   * the aims whatever the style.
   */
  best(style: PlanStyle): Positions {
    const within = this.#solve(true, style);
    return this.#positions(within ?? (this.#solve(false, style) as Answer));
  }

  /**
   * All choices with everything in its window of which none is worse than another in both minutes and distance; the
   * nearest to the aims first, the least work last. None where the windows cannot all be met.
   */
  tradeOff(): { readonly effort: number; readonly positions: Positions }[] {
    const fronts = this.#problems.map((problem) => front(problem));
    const all = fronts.reduce<readonly Answer[]>(
      (answers, next) => notWorse(answers.flatMap((answer) => next.map((found) => [...answer, found]))),
      [[]],
    );
    return all.map((answer) => ({ effort: sum(answer, 'effort'), positions: this.#positions(answer) }));
  }

  #solve(inWindow: boolean, style: PlanStyle): Answer | undefined {
    const answers: Found[] = [];
    for (const problem of this.#problems) {
      const extra = style === 'surest' ? { extra: this.#doubts(problem) } : {};
      const effortFirst = inWindow && style === 'least-work';
      const found = solve(problem, { inWindow, effortFirst, ...extra });
      if (!found) return undefined;
      answers.push(found);
    }
    return answers;
  }

  readonly #known = new Map<Problem, readonly Float64Array[]>();
  #doubts(problem: Problem): readonly Float64Array[] {
    const known = this.#known.get(problem);
    if (known) return known;
    const { unknowns, now } = this.situation;
    const { units, states, terms } = problem;
    const placed = terms.map((term) => place(term, states));
    const doubts = units.map((unit, u) =>
      doubtsOf(states[u] as UnitStates, placed, u, unknowns.get(unit) as Unknowns, settingsOf(unit, now)),
    );
    this.#known.set(problem, doubts);
    return doubts;
  }

  #positions(answer: Answer): Positions {
    const moved = this.#problems.map((problem, p) => settingsIn(problem, answer[p] as Found));
    return byCorner((corner) => moved.find((own) => own[corner])?.[corner] ?? this.situation.now[corner]);
  }
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

const sum = (answer: Answer, what: 'effort' | 'distance'): number =>
  answer.reduce((total, found) => total + found[what], 0);

/** The nearest, then the nearest of those that take less work, and so on. */
function front(problem: Problem): Found[] {
  const found: Found[] = [];
  let next = solve(problem, { inWindow: true, effortFirst: false });
  while (next) {
    found.push(next);
    // Further below than two sums that are taken for the same.
    const maxEffort = next.effort - 2 * SAME_EFFORT;
    next = maxEffort < 0 ? undefined : solve(problem, { inWindow: true, effortFirst: false, maxEffort });
  }
  return found;
}

/** Without those that another one betters in both; from the nearest to the least work. */
function notWorse(answers: readonly Answer[]): Answer[] {
  const sorted = [...answers].sort(
    (a, b) => sum(a, 'distance') - sum(b, 'distance') || sum(a, 'effort') - sum(b, 'effort'),
  );
  let least = Number.POSITIVE_INFINITY;
  return sorted.filter((answer) => {
    const effort = sum(answer, 'effort');
    if (effort > least - SAME_EFFORT) return false;
    least = effort;
    return true;
  });
}
