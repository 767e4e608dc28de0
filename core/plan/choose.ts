/** Which positions to go to: the exact choice by style, or every choice that is not worse in both work and distance. */
import type { AdjusterRef, BarePlan, PlanStyle } from '../contract.ts';
import { byCorner } from '../corners.ts';
import { betweenMarks } from './between/between-marks.ts';
import { otherMoves } from './between/other-moves.ts';
import { Likeliest, type Likely, surest } from './chance/surest.ts';
import { keepingDone } from './done.ts';
import { FineSpace } from './fine/fine-space.ts';
import { isLeastWork } from './fine/least-proof.ts';
import { leastDistance } from './fine/refine.ts';
import type { Reachable } from './out-of-reach.ts';
import { partOf, practical } from './practical.ts';
import { evaluate, type Positions, type Problem } from './problem.ts';
import { type Found, type Goal, SAME_EFFORT } from './search/goal.ts';
import { Drawer } from './shims/drawer.ts';
import { bothSubproblems, movableAt, type Subproblem, settingsIn, solve } from './subproblem.ts';
import type { Term } from './terms.ts';

/** How far a plan is known to be the best there is: fields of `optimum`. */
export type Proof = Pick<BarePlan['optimum'], 'proven' | 'around' | 'bound'>;

/** One choice for each subproblem. */
type Answer = readonly Found[];

export class Choices {
  /** How many combinations there are. */
  readonly combinations: number;
  /** States of assemblies that have too many to list all. */
  readonly fine: readonly FineSpace[];
  /** Where shims are counted. */
  readonly drawer: Drawer | undefined;
  readonly #subproblems: readonly Subproblem[];
  /** The same without what cannot be reached; only the practical asks. */
  readonly #toWithin: () => readonly Subproblem[];
  #withinReach: readonly Subproblem[] | undefined;
  readonly #reachable: Reachable;
  #likeliest: readonly Likeliest[] | undefined;
  readonly #sure = new Map<Likeliest, Likely>();

  /** @param most states of one corner that are listed in full */
  constructor(
    private readonly problem: Problem,
    most?: number,
  ) {
    const { request, now } = problem;
    this.drawer =
      request.drawer && new Drawer(request.drawer, (corner) => movableAt(request, corner), now, request.packs);
    const { given, within, reachable, states } = bothSubproblems(problem, { drawer: this.drawer, most });
    this.#subproblems = given;
    this.#toWithin = within;
    this.#reachable = reachable;
    this.combinations = states.reduce((product, { all }) => product * all, 1);
    this.fine = states.filter((own) => own instanceof FineSpace);
  }

  /**
   * The positions that are best in a style: everything in its window if any combination does that, else the nearest to
   * the aims, or for the surest what is likelier to read in the windows all the same. For the practical parts that
   * nothing ties are planned each for itself: what cannot be met in one changes nothing in the others.
   */
  best(style: PlanStyle): Positions {
    return otherMoves(this.problem, betweenMarks(this.problem, this.#best(style), style), style);
  }

  #best(style: PlanStyle): Positions {
    const { done = [] } = this.problem.request;
    if (style === 'surest') return this.#surestOfAll();
    if (style === 'practical') return done.length > 0 ? this.#keeping(done) : this.#practical();
    const within = this.#solve({ inWindow: true, effortFirst: style === 'least-work' });
    return this.#positions(within ?? this.#solve({ inWindow: false, effortFirst: false })!);
  }

  /**
   * How far the best in a style is known to be that: against all where all states are listed. The searches are exact for
   * sums over corners, which a chance is not: of the surest and the practical only what stands for it is proven.
   */
  proofOf(style: PlanStyle): Proof {
    if (style !== 'closest' && style !== 'least-work') return { proven: false };
    // Between marks there is no end of positions.
    if (this.problem.work.isCut || this.problem.request.live?.length) return { proven: false };
    if (this.fine.length === 0) return { proven: true };
    const least = style === 'least-work' && this.#solve({ inWindow: true, effortFirst: true });
    if (least) return { proven: this.#subproblems.every((own, p) => isLeastWork(own.states, own.terms, least[p]!)) };
    const around = Math.min(...this.#subproblems.map(({ within = Number.POSITIVE_INFINITY }) => within));
    if (around === Number.POSITIVE_INFINITY) return { proven: true };
    const bound = this.#subproblems.reduce((sum, own) => sum + leastDistance(own.states, own.terms), 0);
    return { proven: false, bound, ...(around > 0 && { around }) };
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
    return all.map((answer) => ({
      effort: sum(answer, 'effort'),
      positions: betweenMarks(this.problem, this.#positions(answer), 'closest'),
    }));
  }

  #solve(goal: Goal): Answer | undefined {
    const answers: Found[] = [];
    for (const subproblem of this.#subproblems) {
      const found = solve(subproblem, goal);
      if (!found) return undefined;
      answers.push(found);
    }
    return answers;
  }

  get #within(): readonly Subproblem[] {
    this.#withinReach ??= this.#toWithin();
    return this.#withinReach;
  }

  /** The searches for what is likely, one a subproblem. */
  #searches(): readonly Likeliest[] {
    this.#likeliest ??= this.#subproblems.map((subproblem) => new Likeliest(subproblem, this.problem));
    return this.#likeliest;
  }

  /** The practical starts from the same searches as the surest where everything can be reached. */
  #searchesWithin(): readonly Likeliest[] {
    if (this.#within === this.#subproblems) return this.#searches();
    return this.#within.map((subproblem) => new Likeliest(subproblem, this.problem));
  }

  #surest(search: Likeliest): Likely {
    const known = this.#sure.get(search) ?? surest(search);
    this.#sure.set(search, known);
    return known;
  }

  /**
   * The surest of each part. For the whole car draws fall a little otherwise than for its parts: where the closest or
   * the least work of all is then surer, it is that.
   */
  #surestOfAll(): Positions {
    const searches = this.#searches();
    const sure = searches.map((search) => this.#surest(search).found);
    const others = [searches.map(({ nearest }) => nearest), searches.map((one) => one.leastWork() ?? one.nearest)];
    const apart = others.filter((answer) => statesOf(answer) !== statesOf(sure));
    if (apart.length === 0) return this.#positions(sure);
    return [sure, ...apart]
      .map((answer) => {
        const positions = this.#positions(answer);
        return { positions, chance: evaluate(this.problem, positions).chance };
      })
      .reduce((best, one) => (one.chance > best.chance ? one : best)).positions;
  }

  #practical(): Positions {
    const positions = (found: Answer): Positions => this.#positions(found, this.#within);
    const searches = this.#searchesWithin();
    const parts = searches.map((search) => partOf(this.problem, search, this.#surest(search), this.#reachable));
    return positions(practical(this.problem, parts, positions));
  }

  /** As surely as not much is gained by it, what was moved in this round stays. */
  #keeping(done: readonly AdjusterRef[]): Positions {
    const { request } = this.problem;
    return keepingDone(this.problem, done, (held) => {
      if (held.length === 0) return this.#practical();
      const locked = [...(request.locked ?? []), ...held];
      return new Choices({ ...this.problem, request: { ...request, locked } }).#practical();
    });
  }

  #positions(answer: Answer, subproblems = this.#subproblems): Positions {
    const moved = subproblems.map((subproblem, p) => settingsIn(subproblem, answer[p]!));
    return byCorner((corner) => moved.find((own) => own[corner])?.[corner] ?? this.problem.now[corner]);
  }
}

const statesOf = (answer: Answer): string => answer.map(({ states }) => states.join()).join(';');

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
    if (subproblem.work.isSpent()) break;
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
