/** Which positions to go to: the exact choice by style, or every choice that is not worse in both work and distance. */
import type { PlanStyle } from '../contract.ts';
import { byCorner } from '../corners.ts';
import { Likeliest, type Likely, surest } from './chance/surest.ts';
import type { Reachable } from './out-of-reach.ts';
import { partOf, practical } from './practical.ts';
import type { Positions, Problem } from './problem.ts';
import { type Found, type Goal, SAME_EFFORT } from './search/goal.ts';
import { Drawer } from './shims/drawer.ts';
import { movableAt, reachableSubproblems, type Subproblem, settingsIn, solve } from './subproblem.ts';
import type { Term } from './terms.ts';

/** One choice for each subproblem. */
type Answer = readonly Found[];

export class Choices {
  /** How many combinations there are. */
  readonly combinations: number;
  /** Where shims are counted. */
  readonly drawer: Drawer | undefined;
  readonly #subproblems: readonly Subproblem[];
  readonly #reachable: Reachable;
  #likeliest: readonly Likeliest[] | undefined;
  #sure: readonly Likely[] | undefined;

  constructor(private readonly problem: Problem) {
    const { request, now } = problem;
    this.drawer = request.drawer && new Drawer(request.drawer, (corner) => movableAt(request, corner), now);
    const { subproblems, reachable, states } = reachableSubproblems(problem, this.drawer);
    this.#subproblems = subproblems;
    this.#reachable = reachable;
    this.combinations = states.reduce((product, { count }) => product * count, 1);
  }

  /**
   * The positions that are best in a style: everything in its window if any combination does that, else the nearest to
   * the aims, or for the surest what is likelier to read in the windows all the same. Parts that nothing ties are planned
   * each for itself.
   */
  best(style: PlanStyle): Positions {
    if (style === 'surest') return this.#positions(this.#surest().map(({ found }) => found));
    if (style === 'practical') return this.#practical();
    const goal: Goal = { inWindow: true, effortFirst: style === 'least-work' };
    // What cannot be met in one part changes nothing in the others.
    return this.#positions(
      this.#subproblems.map(
        (subproblem) => solve(subproblem, goal) ?? solve(subproblem, { inWindow: false, effortFirst: false })!,
      ),
    );
  }

  /** Whether no adjuster that may be moved changes a term. */
  isFixed(term: Term): boolean {
    return this.#reachable.isFixed(term);
  }

  /**
   * All choices with everything in its window of which none is worse than another in both minutes and distance; the
   * nearest to the aims first, the least work last. None where the windows cannot all be met.
   */
  tradeOff(): { readonly effort: number; readonly positions: Positions }[] {
    const fronts = this.#subproblems.map((subproblem) => front(subproblem));
    const all = fronts.reduce<readonly Answer[]>(
      (answers, next) => notWorse(answers.flatMap((answer) => next.map((found) => [...answer, found]))),
      [[]],
    );
    return all.map((answer) => ({ effort: sum(answer, 'effort'), positions: this.#positions(answer) }));
  }

  /** The searches for what is likely, one a subproblem: the surest and the practical start from the same. */
  #searches(): readonly Likeliest[] {
    this.#likeliest ??= this.#subproblems.map((subproblem) => new Likeliest(subproblem, this.problem));
    return this.#likeliest;
  }

  #surest(): readonly Likely[] {
    this.#sure ??= this.#searches().map(surest);
    return this.#sure;
  }

  #practical(): Positions {
    const answer = practical(
      this.problem,
      this.#searches().map((search, p) => partOf(this.problem, search, this.#surest()[p]!, this.#reachable)),
      (found) => this.#positions(found),
    );
    return this.#positions(answer);
  }

  #positions(answer: Answer): Positions {
    const moved = this.#subproblems.map((subproblem, p) => settingsIn(subproblem, answer[p]!));
    return byCorner((corner) => moved.find((own) => own[corner])?.[corner] ?? this.problem.now[corner]);
  }
}

const sum = (answer: Answer, what: 'effort' | 'distance'): number =>
  answer.reduce((total, found) => total + found[what], 0);

/** The nearest, then the nearest of those that take less work, and so on. */
function front(subproblem: Subproblem): Found[] {
  const found: Found[] = [];
  let next = solve(subproblem, { inWindow: true, effortFirst: false });
  while (next) {
    found.push(next);
    // Further below than two sums that are taken for the same.
    const maxEffort = next.effort - 2 * SAME_EFFORT;
    next = maxEffort < 0 ? undefined : solve(subproblem, { inWindow: true, effortFirst: false, maxEffort });
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
