/**
 * Other moves by the rack than the best plan in whole marks has: where no whole marks meet a window, that plan need not even
 * move what would meet it between marks. Wherever it leaves an assembly's windows unsure, every choice of what can be led by
 * the rack there is tried, turned to the aims as finely as a hand turns (nearest.ts).
 */
import { isLive } from '../../adjuster/live.ts';
import type { PlanStyle } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { limitNotes } from '../leave.ts';
import { ABOUT_AS_SURE, SURE } from '../practical.ts';
import {
  chanceAt,
  kindOfAdjuster,
  oddsOfTerms,
  type Positions,
  type Problem,
  settingsOf,
  valuesAt,
  workOf,
} from '../problem.ts';
import { samePosition } from '../states/axis.ts';
import { movableAt } from '../subproblem.ts';
import { distanceOf, isIn, type Term } from '../terms.ts';
import { aimOf, type Free, marksOf, middleOf, moved, nearest } from './nearest.ts';

/** Adjusters of an assembly of which every choice is tried; of more all, and all but one. */
const EVERY = 3;
/** Times that assemblies whose windows hang on one another are gone through. */
const PASSES = 2;
/** Times that what is surer by its mark is set to one, and the rest turned again. */
const SETTLES = 3;
/** A window that is met less often than this is none that is met. */
const HOPELESS = 0.02;
/** What counts as better. */
const LEAST = 1e-9;

/** A choice that was tried, and how it stands to the windows of its assembly. */
interface Tried {
  readonly positions: Positions;
  readonly minutes: number;
  readonly distance: number;
  readonly met: readonly Term[];
}

/** @param planned the best in whole marks, what it sets by the rack set between them */
export function otherMoves(problem: Problem, planned: Positions, style: PlanStyle): Positions {
  if (!problem.request.live?.length) return planned;
  let best = planned;
  for (let pass = 0; pass < PASSES; pass++) {
    const before = best;
    for (const assembly of problem.model) best = betterAt(problem, assembly, best, style);
    if (best === before) break;
  }
  return best;
}

function betterAt(problem: Problem, assembly: Assembly, planned: Positions, style: PlanStyle): Positions {
  const terms = problem.terms.filter(({ parts }) => parts.some(({ corner }) => assembly.corners.includes(corner)));
  const free = terms.length > 0 ? turnable(problem, assembly, planned) : [];
  if (!free.some((one) => isCoarse(problem, terms, planned, one))) return planned;
  if (isGoodEnough(problem, terms, free, planned, style)) return planned;
  const bare = withoutMoves(problem, planned, free);
  const targets = style === 'closest' || style === 'least-work' || terms.every(isEven) ? [aimOf] : [aimOf, middleOf];
  const tried = choicesOf(free).flatMap((some) =>
    targets.flatMap((target) => {
      const positions = turned(problem, assembly, terms, bare, some, target);
      const broken = positions && limitNotes(problem, positions).length > limitNotes(problem, planned).length;
      return positions && !broken ? [triedAt(problem, positions, terms)] : [];
    }),
  );
  return bestOf(problem, [triedAt(problem, planned, terms), ...tried], terms, style).positions;
}

/** Whether a step of it moves some number by more than half of its window: between finer ones there is little to find. */
function isCoarse(problem: Problem, terms: readonly Term[], planned: Positions, one: Free): boolean {
  const at = planned[one.corner][one.adjuster] as number;
  const beside = at + one.step > one.high ? at - one.step : at + one.step;
  const [here, there] = [planned, moved(planned, [one], [beside])].map((places) => valuesAt(problem, places).values);
  return terms.some((term) => !(Math.abs(there!.get(term)! - here!.get(term)!) <= term.window.half));
}

const isEven = (term: Term): boolean => aimOf(term) === middleOf(term);

/** Whether there is nothing to gain: only then is the search for more worth its time. */
function isGoodEnough(
  problem: Problem,
  terms: readonly Term[],
  free: readonly Free[],
  planned: Positions,
  style: PlanStyle,
): boolean {
  if (style === 'surest' || style === 'practical') return chanceAt(problem, planned, terms) >= SURE;
  if (style === 'closest' || movesOf(problem, planned, free) > 1) return false;
  const { values } = valuesAt(problem, planned);
  return terms.every((term) => isIn(term, values.get(term)!));
}

const movesOf = ({ now }: Problem, planned: Positions, free: readonly Free[]): number =>
  free.filter(({ corner, adjuster }) => !samePosition(planned[corner][adjuster]!, now[corner][adjuster]!)).length;

/** What can be turned while the rack shows what it does; not what was done in this round and stays. */
function turnable({ request, uncertainty, now }: Problem, assembly: Assembly, planned: Positions): Free[] {
  const { done = [] } = request;
  const shown = uncertainty.get(assembly)!.byRack?.shown;
  return assembly.corners.flatMap((corner, side) =>
    movableAt(request, corner).flatMap((adjuster): Free[] => {
      const { id } = adjuster;
      const marks = marksOf(kindOfAdjuster(adjuster), adjuster);
      if (!marks || !isLive(adjuster) || !shown?.({ side, id }).length) return [];
      const stays =
        done.some((ref) => ref.corner === corner && ref.adjuster === id) &&
        samePosition(planned[corner][id]!, now[corner][id]!);
      return stays ? [] : [{ corner, adjuster: id, ...marks }];
    }),
  );
}

/** Some of what is free: every choice of it, the fewest first. */
function choicesOf(free: readonly Free[]): (readonly Free[])[] {
  if (free.length > EVERY) return [...free.map((one) => free.filter((other) => other !== one)), free];
  const all = Array.from({ length: 2 ** free.length - 1 }, (_, i) => free.filter((__, bit) => ((i + 1) >> bit) & 1));
  return all.sort((a, b) => a.length - b.length);
}

/** What is free back where it stands. */
function withoutMoves({ now }: Problem, planned: Positions, free: readonly Free[]): Positions {
  return moved(
    planned,
    free,
    free.map(({ corner, adjuster }) => now[corner][adjuster] as number),
  );
}

/** Turned to the targets by the rack; what is surer by its mark goes to one. Nothing where that finds no end. */
function turned(
  problem: Problem,
  assembly: Assembly,
  terms: readonly Term[],
  start: Positions,
  some: readonly Free[],
  target: (term: Term) => number,
): Positions | undefined {
  let from = start;
  let free = some;
  for (let i = 0; i < SETTLES; i++) {
    const positions = nearest(problem, terms, from, free, target);
    const led = problem.uncertainty.get(assembly)!.setBy(settingsOf(assembly, positions));
    const isLed = ({ corner, adjuster }: Free): boolean =>
      samePosition(positions[corner][adjuster]!, problem.now[corner][adjuster]!) ||
      led.some(({ side, id }) => assembly.corners[side] === corner && id === adjuster);
    const byMark = free.filter((one) => !isLed(one));
    if (byMark.length === 0) return positions;
    free = free.filter((one) => !byMark.includes(one));
    const whole = byMark.map(({ corner, adjuster, step, low }) => {
      const at = positions[corner][adjuster] as number;
      return low + Math.round((at - low) / step) * step;
    });
    from = moved(positions, byMark, whole);
    if (free.length === 0) return from;
  }
  return undefined;
}

function triedAt(problem: Problem, positions: Positions, terms: readonly Term[]): Tried {
  const { values } = valuesAt(problem, positions);
  return {
    positions,
    minutes: workOf(problem, positions),
    distance: terms.reduce((sum, term) => sum + distanceOf(term, values.get(term)!), 0),
    met: terms.filter((term) => isIn(term, values.get(term)!)),
  };
}

/** By the style; the first, which was planned in whole marks, where another is no better. */
function bestOf(problem: Problem, tried: readonly Tried[], terms: readonly Term[], style: PlanStyle): Tried {
  const most = Math.max(...tried.map(({ met }) => met.length));
  const nearer = (best: Tried, one: Tried): Tried => (one.distance < best.distance - LEAST ? one : best);
  const lighter = (best: Tried, one: Tried): Tried => {
    const more = one.minutes - best.minutes;
    return Math.abs(more) > LEAST ? (more < 0 ? one : best) : nearer(best, one);
  };
  const meeting = tried.filter(({ met }) => met.length === most);
  if (style === 'closest') return meeting.reduce(nearer);
  if (style === 'least-work') return most === terms.length ? meeting.reduce(lighter) : meeting.reduce(nearer);
  // Out of a window by what is likeliest it is no surer; what was planned may be so for what counts more.
  const odds = tried
    .filter((one, i) => i === 0 || one.met.length === most)
    .map((one) => ({ one, ...oddsOfTerms(problem, one.positions, terms) }));
  // What none meets says nothing about which is surer.
  const met = terms.filter((term) => odds.some(({ alone }) => alone.get(term)! > HOPELESS));
  const sure = odds.map(({ one, chance }) => ({
    one,
    chance: met.length === terms.length ? chance : chanceAt(problem, one.positions, met),
  }));
  const surest = sure.reduce((best, one) => (one.chance > best.chance + LEAST ? one : best));
  if (style === 'surest') return surest.one;
  const enough = sure.filter(({ chance }) => Math.min(chance, SURE) >= Math.min(surest.chance, SURE) - ABOUT_AS_SURE);
  return enough.map(({ one }) => one).reduce(lighter);
}
