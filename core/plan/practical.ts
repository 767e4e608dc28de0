/**
 * The plan that an experienced hand would make: of all whose chance is at least 95 %, or within 2 points of the best there
 * is, the one with the least work, and among those of the same work what a careful hand would do (preferences.ts).
 *
 * Parts that nothing ties are free of one another, so that their chances multiply. For each part the likeliest within ever
 * less work makes a list in which both fall; of each list one entry is taken, so that the sum of work is the least for
 * which the product of chances is enough. What a careful hand avoids is left out from the beginning, where the windows
 * can be met without, and the best there is is then the best without; unless that costs so much chance that the careful
 * hand would rather not. A window that no state can meet is eased to the nearest that can be, and judged no more.
 */
import { Likeliest, type Likely, surest } from './chance/surest.ts';
import type { Reachable } from './out-of-reach.ts';
import { PreferenceCost } from './preference-cost.ts';
import { chanceAt, type Positions, type Problem } from './problem.ts';
import { type Found, SAME_EFFORT } from './search/goal.ts';
import { indexTerm, termAt } from './states/indexed-term.ts';
import { type Subproblem, solve } from './subproblem.ts';
import type { Term } from './terms.ts';

/** Surer than this is not worth more work. */
export const SURE = 0.95;
/** Nor is a chance that is better by less. */
export const ABOUT_AS_SURE = 0.02;
/** What preferences may cost of the chance that the same work could have. */
const FOR_PREFERENCES = 0.01;
/** What it may cost to leave out what a careful hand avoids. */
const FOR_CARE = 0.15;
/** How much preferences count, most first: less where that costs too much chance. */
const SHARES = [4, 1, 0.25];
/** Ways to look for the likeliest beside the first. */
const LOOKS = 3;
/** Draws may fall a little otherwise for the whole car than for its parts. */
const STEP = 0.004;
const TRIES = 6;

/** What is decided together. */
export interface Part {
  readonly search: Likeliest;
  readonly best: Likely;
  /** The terms that count for the chance; none where the windows cannot all be met together. */
  readonly judged: readonly Term[];
  readonly preferences: readonly PreferenceCost[];
  /** Leaves out what a careful hand avoids. */
  readonly careful?: readonly ((state: number) => number)[];
}

export function partOf(problem: Problem, search: Likeliest, best: Likely, reachable: Reachable): Part {
  const { subproblem } = search;
  const preferences = subproblem.states.map(
    (states, a) => new PreferenceCost(states, subproblem.assemblies[a]!, problem.now),
  );
  const counting = (terms: readonly Term[]): Term[] => terms.filter(({ hard, wish }) => !hard && !wish);
  if (search.inWindow) return { search, best, judged: counting(subproblem.terms), preferences };
  const terms = eased(subproblem, reachable);
  if (!terms) return { search, best, judged: [], preferences };
  const judged = counting(terms);
  const without = new Likeliest({ ...subproblem, terms }, problem, (term) => judged.includes(term));
  if (!without.inWindow) return { search, best, judged: [], preferences };
  return { search: without, best: surest(without), judged, preferences };
}

/** Half windows that an angle may stay short of the nearest that it can come to. */
const SHORT = 0.25;
/** How much more than another a window counts that is to be missed by as little as can be. */
const FIRST = 10;

/**
 * The terms with the windows that no state can meet widened to about as near as they come with the others met; nothing
 * where the others cannot be met together.
 */
function eased(subproblem: Subproblem, reachable: Reachable): Term[] | undefined {
  const nearest = new Map(
    subproblem.terms.flatMap((term) => {
      const missed = reachable.missed(term);
      return missed === undefined ? [] : [[term, missed] as const];
    }),
  );
  const open = subproblem.terms.map((term): Term => {
    const aim = nearest.get(term);
    if (aim === undefined) return term;
    const half = term.window.half / FIRST;
    return { ...term, wish: true, window: { low: -Infinity, aim, high: Infinity, half } };
  });
  const found = nearest.size > 0 && solve({ ...subproblem, terms: open }, { inWindow: true, effortFirst: false });
  if (!found) return undefined;
  const numbers = subproblem.states.map((states, a) => states.exact(found.states[a]!));
  return subproblem.terms.map((term): Term => {
    if (!nearest.has(term)) return term;
    const { low, high, half } = term.window;
    const aim = termAt(indexTerm(term, subproblem.states), numbers);
    // It is not met, so that it costs no chance: what it should come near to is what it can.
    const window = { low: Math.min(low, aim - SHORT * half), aim, high: Math.max(high, aim + SHORT * half), half };
    return { ...term, wish: true, window };
  });
}

/** @param toPositions where the adjusters stand with a choice for each part */
export function practical(
  problem: Problem,
  all: readonly Part[],
  toPositions: (answer: readonly Found[]) => Positions,
): readonly Found[] {
  const parts = all.map((part) => carefully(part) ?? part);
  const judged = problem.terms.filter(({ where, angle }) =>
    parts.some((part) => part.judged.some((one) => one.where === where && one.angle === angle)),
  );
  const chance = (answer: readonly Found[]): number => chanceAt(problem, toPositions(answer), judged);
  const sure = parts.map(({ best }) => best.found);
  const enough = Math.min(SURE, chance(sure) - ABOUT_AS_SURE);
  let asked = enough;
  for (let tried = 0; tried < TRIES; tried++) {
    const answer = leastWork(parts, asked);
    if (!answer) break;
    const liked = preferred(answer, asked);
    if (chance(liked) >= enough) return liked;
    const plain = answer.map(({ likely }) => likely.found);
    if (chance(plain) >= enough) return plain;
    asked += STEP;
  }
  return sure;
}

const product = (chances: readonly number[]): number => chances.reduce((all, one) => all * one, 1);

const isOpen = ({ judged, search }: Part): boolean => search.inWindow && judged.length > 0;

/** The part without what a careful hand avoids; nothing where its windows cannot be met so, or not nearly as surely. */
function carefully(part: Part): Part | undefined {
  const { search, best, preferences } = part;
  if (!search.inWindow || !preferences.some(({ avoids }) => avoids)) return undefined;
  const careful = preferences.map(
    (own) =>
      (state: number): number =>
        own.isAvoided(state) ? Number.POSITIVE_INFINITY : 0,
  );
  if (best.found.states.every((state, a) => !preferences[a]!.isAvoided(state))) return { ...part, careful };
  const without = likeliest(
    [search.best({ beside: careful }), search.nearestOf({ beside: careful }), search.leastWork(careful)].map((found) =>
      likely(part, found),
    ),
  );
  return without && without.chance >= best.chance - FOR_CARE ? { ...part, careful, best: without } : undefined;
}

const likeliest = (all: readonly (Likely | undefined)[]): Likely | undefined =>
  all.reduce((best, one) => (best && !(one && one.chance > best.chance) ? best : one), undefined);

/** One choice of a part's list. */
interface Entry {
  readonly part: Part;
  readonly likely: Likely;
}

/** The least sum of work for which the product of chances is enough, of equal work the likeliest. */
function leastWork(parts: readonly Part[], enough: number): Entry[] | undefined {
  const best = product(parts.filter(isOpen).map((part) => part.best.chance));
  let sums: { entries: Entry[]; effort: number; chance: number }[] = [{ entries: [], effort: 0, chance: 1 }];
  const alone = parts.filter(isOpen).length === 1;
  for (const part of parts) {
    const need = (enough * part.best.chance) / best;
    const list = !isOpen(part) ? [part.best] : alone ? [least(part, need)] : listOf(part, need);
    const all = sums.flatMap(({ entries, effort, chance }) =>
      list.map((likely) => ({
        entries: [...entries, { part, likely }],
        effort: effort + likely.found.effort,
        chance: isOpen(part) ? chance * likely.chance : chance,
      })),
    );
    sums = notWorse(all);
  }
  return sums.find(({ chance }) => chance >= enough)?.entries;
}

/** Of sums of work and chance those that no other betters in both; the least work first. */
function notWorse<T extends { readonly effort: number; readonly chance: number }>(all: readonly T[]): T[] {
  const sorted = [...all].sort((a, b) => a.effort - b.effort || b.chance - a.chance);
  let most = -1;
  return sorted.filter(({ chance }) => {
    if (chance <= most) return false;
    most = chance;
    return true;
  });
}

/** From the best down to the least work of which enough is left: the likeliest within ever less work. */
function listOf(part: Part, need: number): Likely[] {
  const list = [part.best];
  const lightest = likely(part, part.search.leastWork(part.careful));
  if (!lightest) return list;
  if (lightest.chance >= need) list.push(lightest);
  const { work } = part.search.subproblem;
  for (let one: Likely | undefined = part.best; one && one.chance >= need && !work.isSpent(); ) {
    one = within(part, one.found.effort - 2 * SAME_EFFORT, lightest, need);
    if (one) list.push(one);
  }
  return list;
}

/** The least work of which enough is left, by halving the sums of minutes that there are: more work is never less sure. */
function least(part: Part, need: number): Likely {
  const lightest = likely(part, part.search.leastWork(part.careful));
  if (!lightest) return part.best;
  // The least work is enough: the likeliest of as little.
  if (lightest.chance >= need) return likeliest([lightest, within(part, lightest.found.effort, lightest, need)])!;
  const levels = minutesOf(part).filter(
    (minutes) => minutes > lightest.found.effort - SAME_EFFORT && minutes < part.best.found.effort + SAME_EFFORT,
  );
  let best = part.best;
  let [low, high] = [0, levels.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    const one = within(part, levels[middle]!, lightest, need);
    if (one && one.chance >= need) {
      best = one;
      high = middle;
    } else low = middle + 1;
  }
  return best;
}

/**
 * The likeliest of no more than so many minutes, and where that is not enough other ways to look for it: what stands for
 * the chance in a search is not the chance itself.
 */
function within({ search, careful }: Part, maxEffort: number, { found }: Likely, need: number): Likely | undefined {
  if (maxEffort < found.effort - SAME_EFFORT) return undefined;
  const asked = { maxEffort, known: found.states, ...(careful && { beside: careful }) };
  let last = likely({ search }, search.best(asked));
  let most = last;
  for (let look = 0; last && most!.chance < need && look < LOOKS; look++) {
    last = likely({ search }, look === LOOKS - 1 ? search.nearestOf(asked) : search.sharper(last.found, asked));
    if (last && last.chance > most!.chance) most = last;
  }
  return most;
}

const likely = ({ search }: Pick<Part, 'search'>, found: Found | undefined): Likely | undefined =>
  found && { found, chance: search.chance(found) };

/** So many sums of minutes are told apart; of more, those that are about the same are taken for one. */
const MOST_SUMS = 5000;

/** Every sum of minutes that the states of a part may take, the least first; added up as theirs are. */
function minutesOf({ search: { subproblem } }: Part): number[] {
  let sums = [0];
  for (const { axes } of subproblem.states) {
    let own = [0];
    for (const { minutes, positions } of axes) {
      if (positions.length > 1) own = few(own.flatMap((sum) => [sum, Math.fround(sum + minutes)]));
    }
    sums = few(sums.flatMap((sum) => own.map((minutes) => Math.round((sum + minutes) * 1e3) / 1e3)));
  }
  return sums.sort((a, b) => a - b);
}

/** Each once; of too many the next whole minutes above them, or tens, or hundreds. */
function few(sums: readonly number[]): number[] {
  let each = [...new Set(sums)];
  for (let step = 1; each.length > MOST_SUMS; step *= 10) {
    each = [...new Set(each.map((sum) => Math.ceil(sum / step) * step))];
  }
  return each;
}

/** What a careful hand does with the same work, at the cost of no more than a point of chance and none that is needed. */
function preferred(answer: readonly Entry[], enough: number): Found[] {
  const now = answer.map(({ likely }) => likely);
  answer.forEach(({ part, likely: { found, chance } }, p) => {
    if (!part.search.inWindow) return;
    const others = product(now.flatMap((one, i) => (i !== p && isOpen(answer[i]!.part) ? [one.chance] : [])));
    const need = Math.max(enough / others, chance - FOR_PREFERENCES);
    const { preferences, careful } = part;
    for (const share of SHARES) {
      const beside = preferences.map(
        (own, a) => (state: number) => (careful ? careful[a]!(state) : 0) + share * own.cost(state),
      );
      const liked = part.search.best({ beside, maxEffort: found.effort, known: found.states });
      if (!liked) return;
      const likedChance = part.search.chance(liked);
      if (likedChance < need) continue;
      now[p] = { found: liked, chance: likedChance };
      return;
    }
  });
  return now.map(({ found }) => found);
}
