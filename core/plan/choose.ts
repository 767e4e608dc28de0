/** Which positions to go to: the exact choice by style, or every choice that is not worse in both work and distance. */
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { Adjuster, Corner, PlanStyle } from '../contract.ts';
import { axleOf } from '../reading/axle-angles.ts';
import type { Unit } from './car-model.ts';
import { doubtsOf } from './doubt.ts';
import { Drawer } from './drawer.ts';
import { place } from './placed.ts';
import { type Found, type Goal, SAME_EFFORT, search } from './search.ts';
import { byCorner, type Positions, type Situation, settingsOf } from './situation.ts';
import { type Stand, UnitStates } from './states.ts';
import { Stock } from './stock.ts';
import { groups, type Term, tiesOf, tieTerms } from './terms.ts';
import type { Unknowns } from './unknowns.ts';

/** Units that terms tie together, with all their states. */
interface Problem {
  readonly units: readonly Unit[];
  readonly states: readonly UnitStates[];
  readonly terms: readonly Term[];
  /** Where shims are counted. */
  readonly stock?: Stock;
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
    const { request, model, now } = situation;
    const isLocked = (corner: Corner, { id }: Adjuster): boolean =>
      (request.locked ?? []).some((ref) => ref.corner === corner && ref.adjuster === id);
    const movableAt = (corner: Corner): readonly Adjuster[] =>
      request.reading[corner] ? adjustersOf(request.car, corner).filter((adjuster) => !isLocked(corner, adjuster)) : [];
    const drawer = request.drawer && new Drawer(request.drawer, movableAt, now);
    this.drawer = drawer;
    const stand = (corner: Corner): Stand => ({
      measured: request.reading[corner] ?? {},
      current: now[corner],
      movable: movableAt(corner),
      ties: tiesOf(request.car[axleOf(corner)]),
      ...(drawer && { allows: ({ id }, position) => drawer.allows({ corner, adjuster: id }, position) }),
    });
    const terms = [...situation.terms, ...tieTerms(request.car, now)];
    const apart = groups(terms, model);
    this.#problems = (drawer ? drawer.join(apart) : apart).map((units) => {
      const corners = units.flatMap((unit) => unit.corners);
      const states = units.map((unit) => new UnitStates(unit, unit.corners.map(stand)));
      const counts = drawer?.packs.some(({ corner }) => corners.includes(corner));
      return {
        ...{ units, states, terms: terms.filter(({ parts }) => corners.includes(parts[0]?.corner as Corner)) },
        ...(drawer && counts ? { stock: new Stock(drawer, states) } : {}),
      };
    });
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
    const positions = byCorner((corner) => this.situation.now[corner]);
    this.#problems.forEach(({ states }, p) => {
      states.forEach((own, i) => {
        own.settings(answer[p]?.states[i] as number).forEach((settings, side) => {
          positions[own.corners[side] as Corner] = settings;
        });
      });
    });
    return positions;
  }
}

/** Mostly there are shims enough for the best of all: only where not does the search have to count them on its way. */
function solve({ states, terms, stock }: Problem, goal: Goal): Found | undefined {
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
