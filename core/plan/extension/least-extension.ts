/**
 * What would let a car meet its windows where its adjusters cannot: how much further one adjuster, or two, would have to
 * go. Each is tried beyond its end by the exact search that a plan is made with, all others free as they are; the least
 * that does is told. An adjuster that was not to be moved is tried as if it could be.
 */

import { CORNERS, type Corner, type PlanRequest, type Position } from '../../contract.ts';
import { cornersOf } from '../../corners.ts';
import { InputError } from '../../input-error.ts';
import { FineSpace } from '../fine/fine-space.ts';
import { mayMeet, meeting } from '../fine/refine.ts';
import { type Positions, type Problem, problemOf, valuesAt } from '../problem.ts';
import { search } from '../search/branch-and-bound.ts';
import type { Found, Goal } from '../search/goal.ts';
import type { Work } from '../search/work.ts';
import { samePosition } from '../states/axis.ts';
import type { StateSpace } from '../states/state-space.ts';
import { type Subproblem, settingsIn, solve, stateSpaceOf, subproblemsOf } from '../subproblem.ts';
import { distanceOf, isIn, type Term } from '../terms.ts';
import { type BareFreeChange, type ExtendedTravel, extendedTravels, withOffsets } from './extended-travel.ts';

/** Wheels that cannot have everything in its window, and what would let them: each way alone. */
export interface BareStuck {
  /** The wheels whose windows are not met. */
  readonly corners: readonly Corner[];
  /** The likeliest first; none where neither one adjuster nor a pair would do within what is tried. */
  readonly ways: readonly (readonly BareFreeChange[])[];
}

/** For every set of wheels that cannot have all in its window, the least further travel that would let it. Takes validated input. */
export function leastExtensions({ drawer: _, ...request }: PlanRequest): BareStuck[] {
  // Shims that the drawer lacks can be bought: a plan's notes name them.
  const { asked, offsets } = withOffsets(request);
  const problem = problemOf(asked);
  return subproblemsOf(problem).flatMap((subproblem) => {
    if (solve(subproblem, { inWindow: true, effortFirst: false })) return [];
    const nearest = solve(subproblem, { inWindow: false, effortFirst: false });
    if (!nearest) return [];
    const stands = { ...problem.now, ...settingsIn(subproblem, nearest) };
    const { values } = valuesAt(problem, stands);
    const out = problem.terms.filter((term) => subproblem.terms.includes(term) && !isIn(term, values.get(term)!));
    const corners = CORNERS.filter((corner) => out.some(({ where }) => cornersOf(where).includes(corner)));
    const travels = corners.flatMap((corner) => extendedTravels(request, corner, offsets));
    const worth = (one: ExtendedTravel): boolean => isWorth(problem, one, stands, out);
    const ways = new LeastExtension(problem, subproblem)
      .ways(travels, worth)
      .sort((a, b) => a.rank(stands) - b.rank(stands));
    return [{ corners, ways: ways.map(told) }];
  });
}

/** Share of what is out that a way has to take away over all its travel, on the slope where it begins. */
const WORTH = 0.1;

/**
 * Whether going further that way brings nearer what the nearest plan leaves out. Most ways do not, and there are
 * many pairs, each a search of its own: only those that do are paired, and what is not to be moved or has no slope.
 */
function isWorth(
  problem: Problem,
  { corner, levels, begin }: ExtendedTravel,
  stands: Positions,
  out: readonly Term[],
): boolean {
  const first = levels[0]?.further;
  if (!first || !begin) return levels.length > 0;
  const far = (positions: Positions): number => {
    const { values } = valuesAt(problem, positions);
    return out.reduce((sum, term) => sum + distanceOf(term, values.get(term)!), 0);
  };
  const here = far(stands);
  const gained = here - far({ ...stands, [corner]: { ...stands[corner], ...begin(stands[corner], first.by) } });
  return gained * ((levels.at(-1)?.further?.by ?? 0) / first.by) > WORTH * here;
}

/** Travels that together meet the windows, each at the least level that does. */
class Extended {
  constructor(
    readonly travels: readonly ExtendedTravel[],
    readonly levels: readonly number[],
  ) {}

  /** Less is likelier: what only has to be let move, what the nearest plan has at that end, how much of what was tried. */
  rank(stands: Positions): number {
    const ranks = this.travels.map((one, i) => {
      const at = stands[one.corner][one.adjuster];
      const isAtEnd = at !== undefined && one.last.some((position) => samePosition(position, at));
      const share = this.levels[i]! / one.levels.length;
      return one.levels.some(({ further }) => further) ? share + (isAtEnd ? 0 : 1) : -1;
    });
    return Math.max(...ranks);
  }
}

const told = ({ travels, levels }: Extended): BareFreeChange[] =>
  travels.map(({ corner, adjuster, levels: all }, i) => {
    const further = all[levels[i]! - 1]?.further;
    return { corner, adjuster, ...(further && { further }) };
  });

class LeastExtension {
  constructor(
    private readonly problem: Problem,
    private readonly subproblem: Subproblem,
  ) {}

  /** Single adjusters; where none does, left and right of a name; where none does, two of a corner. */
  ways(travels: readonly ExtendedTravel[], isWorthPairing: (one: ExtendedTravel) => boolean): Extended[] {
    const singles = travels.flatMap((one) => this.#least([one]) ?? []);
    if (singles.length > 0) return singles;
    const likely = new Set(travels.filter(isWorthPairing));
    const pairs = travels.flatMap((a, i) => travels.slice(i + 1).map((b) => [a, b] as const));
    const both = pairs.filter(([a, b]) => likely.has(a) && likely.has(b));
    // The other one may only have to take back what the first does to another angle.
    const one = pairs.filter(([a, b]) => likely.has(a) !== likely.has(b));
    for (const some of [both, one].flatMap((some) => [some.filter(isAcross), some.filter(isOfOneCorner)])) {
      const found = some.flatMap((one) => this.#least(one) ?? []);
      if (found.length > 0) return found;
    }
    return [];
  }

  /** The least levels, alike at first and then each by itself. */
  #least(travels: readonly ExtendedTravel[]): Extended | undefined {
    const most = Math.max(...travels.map(({ levels }) => levels.length));
    const alike = (level: number) => travels.map(({ levels }) => Math.min(level, levels.length));
    if (travels.some(({ levels }) => levels.length === 0) || !this.#meets(travels, alike(most))) return undefined;
    let levels = alike(least(most, (level) => this.#meets(travels, alike(level))));
    if (travels.length > 1) {
      travels.forEach((_, i) => {
        const set = (level: number) => levels.map((own, k) => (k === i ? level : own));
        levels = set(least(levels[i]!, (level) => this.#meets(travels, set(level))));
      });
    }
    return new Extended(travels, levels);
  }

  #meets(travels: readonly ExtendedTravel[], levels: readonly number[]): boolean {
    const instead = new Map<Corner, Map<string, readonly Position[]>>();
    travels.forEach(({ corner, levels: all }, i) => {
      const own = all[levels[i]! - 1]?.instead ?? [];
      instead.set(corner, new Map([...(instead.get(corner) ?? []), ...own]));
    });
    const { assemblies, states, terms, work } = this.subproblem;
    try {
      const tried = assemblies.map((assembly, a) =>
        assembly.corners.some((corner) => instead.has(corner))
          ? stateSpaceOf(this.problem, assembly, { instead, isBare: true })
          : states[a]!,
      );
      const goal = { inWindow: true, effortFirst: false };
      return (search(tried, terms, goal, work) ?? sought(tried, terms, goal, work)) !== undefined;
    } catch (error) {
      // The request itself was taken: more combinations than can be searched are not tried.
      if (error instanceof InputError) return false;
      throw error;
    }
  }
}

type Pair = readonly [ExtendedTravel, ExtendedTravel];
const isAcross = ([a, b]: Pair): boolean => a.corner !== b.corner && a.adjuster === b.adjuster;
const isOfOneCorner = ([a, b]: Pair): boolean => a.corner === b.corner && a.adjuster !== b.adjuster;

/** What meets the windows among states that are not all listed; nothing where all are. */
function sought(states: readonly StateSpace[], terms: readonly Term[], goal: Goal, work: Work): Found | undefined {
  if (!states.some((own) => own instanceof FineSpace) || !mayMeet(states, terms)) return undefined;
  return search(meeting(states, terms, work), terms, goal, work);
}

/** The least of 1…most that will do, where `most` does and so does whatever is above one that does. */
function least(most: number, does: (level: number) => boolean): number {
  let [low, high] = [0, most];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (does(middle)) high = middle;
    else low = middle;
  }
  return high;
}
