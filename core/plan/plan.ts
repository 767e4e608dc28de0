/** From what was read and what is wanted to the moves, in working order, with what the rack shows after each. */
import type { CarSettings, Move, Plan, PlanRequest, PlanStyle, Position } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { cornerOf } from '../pose/car-model.ts';
import { notesOf } from './answer/notes.ts';
import { shortfallOf } from './answer/shortfall.ts';
import { isLowerCam, rankOf, roleOf } from './answer/working-order.ts';
import { Choices } from './choose.ts';
import { predictWith } from './predict.ts';
import { evaluate, kindOfAdjuster, minutesOf, movedTo, type Positions, type Problem, problemOf } from './problem.ts';
import { type Drawer, shimsOf } from './shims/drawer.ts';
import { shimNotes } from './shims/shim-notes.ts';

/**
 * The moves that bring the car into its windows: the global optimum over every position of every adjuster.
 *
 * `closest` minimises Σ((value − aim)/(half window))² over every spec given, with everything in its window if any
 * combination does that; `least-work` first the minutes of the adjusters moved, then the same sum; `surest` goes for the
 * chance that the re-measure is in every window, as surest.ts has it, and is never less sure than the other two. Where no
 * combination has everything in its window, the plan is the one with the least sum, or for `surest` the one that is
 * likelier to read in the windows all the same. With `maxEffort` it is the nearest that takes no more minutes, in the
 * window all the same.
 * @param given readings, windows and angles in degrees, signs as in the contract; positions as their kinds have them
 * @throws InputError naming the field, the value and what is allowed
 */
export function planMoves(given: PlanRequest): Plan {
  const problem = problemOf(given);
  const choices = new Choices(problem);
  const { style = 'closest', maxEffort } = problem.request;
  const enough = maxEffort === undefined ? [] : choices.tradeOff();
  const positions =
    (enough.find(({ effort }) => effort <= (maxEffort as number)) ?? enough.at(-1))?.positions ?? choices.best(style);
  return planTo(problem, positions, choices);
}

function planTo(problem: Problem, positions: Positions, choices: Choices): Plan {
  const judged = evaluate(problem, positions);
  const moves = inOrder(problem, positions, choices.drawer);
  const { predicted, deviation, inWindow, chance, distance } = judged;
  return {
    ...{ moves, positions, predicted, deviation, inWindow, chance, distance },
    effort: workOf(problem, positions),
    optimum: { proven: true, combinations: choices.combinations },
    shortfall: shortfallOf(problem, judged, positions),
    notes: [...shimNotes(problem, choices, moves, inWindow), ...notesOf(problem, moves, positions)],
    unmeasured: problem.unmeasured.map(({ where, angle }) => ({ where, angle })),
  };
}

/** Minutes. */
const workOf = (problem: Problem, positions: Positions): number =>
  movedTo(problem, positions).reduce((sum, { adjuster }) => sum + minutesOf(adjuster), 0);

function inOrder(problem: Problem, positions: Positions, drawer?: Drawer): Move[] {
  const { request, model, now } = problem;
  const steps = movedTo(problem, positions)
    .map((step) => {
      const role = roleOf(cornerOf(model, step.corner, now), step.adjuster);
      return { ...step, rank: rankOf(step.corner, role, request.car[axleOf(step.corner)].adjusters.some(isLowerCam)) };
    })
    .sort((a, b) => a.rank - b.rank);
  const stacks = drawer?.serve((pack) => positions[pack.corner][pack.adjuster] as Position);
  let stands: CarSettings = now;
  return steps.map(({ corner, adjuster, from, to }) => {
    stands = { ...stands, [corner]: { ...stands[corner], [adjuster.id]: to } };
    const pack = drawer?.find({ corner, adjuster: adjuster.id });
    const shims = pack && shimsOf(stacks?.get(pack) ?? new Map());
    return {
      ...{ corner, adjuster: adjuster.id, from, to, ...(shims && { shims }) },
      instruction: kindOfAdjuster(adjuster).instruction(adjuster, from, to, corner, shims),
      expectAfter: predictWith(model, request.reading, now, stands),
    };
  });
}

/** One of several plans that are worth a choice. */
export interface PlanChoice {
  /** Asks for it again: fields of a request. */
  readonly ask: Pick<PlanRequest, 'style' | 'maxEffort'>;
  /** The styles whose plan it is; none for one between the closest and the least work. */
  readonly styles: readonly PlanStyle[];
  readonly moves: number;
  /** Minutes. */
  readonly effort: number;
  readonly inWindow: boolean;
  /** As a plan has it. */
  readonly distance: number;
  /** How far from their aims the angles are, root mean square: 0 on the aim, 1 at the edges of the windows. */
  readonly offAim: number;
  /** 0…1, as a plan has it. */
  readonly chance: number;
}

/** How many plans a person chooses among. */
const FEW = 5;

/**
 * The plans worth choosing among: the surest, then from the closest to the least work those of which none is worse than
 * another in both minutes and distance; where there are many, a few that are spread evenly. Where the windows cannot
 * all be met the nearest stands in for them.
 * @throws InputError naming the field, the value and what is allowed
 */
export function planChoices(given: PlanRequest): PlanChoice[] {
  const problem = problemOf(given);
  const choices = new Choices(problem);
  const front = choices.tradeOff();
  const last = Math.max(0, front.length - 1);
  const spread = Array.from({ length: FEW }, (_, i) => Math.round((i * last) / (FEW - 1)));
  const found = new Map<string, { ask: PlanChoice['ask']; positions: Positions; styles: PlanStyle[] }>();
  const add = (positions: Positions, ask: PlanChoice['ask'], ...styles: PlanStyle[]): void => {
    const key = JSON.stringify(positions);
    const known = found.get(key) ?? { ask, positions, styles: [] };
    known.styles.push(...styles);
    found.set(key, known);
  };
  add(choices.best('surest'), { style: 'surest' }, 'surest');
  if (front.length === 0) add(choices.best('closest'), { style: 'closest' }, 'closest');
  for (const place of front.length === 0 ? [] : new Set(spread)) {
    const { effort, positions } = front[place] as (typeof front)[number];
    const styles: PlanStyle[] = [
      ...(place === 0 ? (['closest'] as const) : []),
      ...(place === last ? (['least-work'] as const) : []),
    ];
    const [style] = styles;
    add(positions, style ? { style } : { style: 'closest', maxEffort: effort }, ...styles);
  }
  return [...found.values()].map(({ positions, ...rest }) => {
    const { inWindow, distance, chance } = evaluate(problem, positions);
    const offAim = Math.sqrt(distance / Math.max(1, problem.terms.length));
    const moves = movedTo(problem, positions).length;
    return { ...rest, moves, effort: workOf(problem, positions), inWindow, distance, offAim, chance };
  });
}
