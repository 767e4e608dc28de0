/** From what was read and what is wanted to the moves, in working order, with what the rack shows after each. */
import { isOnce, sideOf } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type BareMove,
  type BarePlan,
  type Car,
  type CarSettings,
  type Corner,
  type PlanRequest,
  WHEEL_ANGLES,
  type WheelReading,
} from '../contract.ts';
import { AXLES, axleOf } from '../corners.ts';
import { cornerOf } from '../pose/car-model.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { notesOf } from './answer/notes.ts';
import { oddsAt } from './answer/odds.ts';
import { shortfallOf } from './answer/shortfall.ts';
import { AFTERWARDS, hasLowerCams, rankOf, roleOf, steersBoth } from './answer/working-order.ts';
import { Choices } from './choose.ts';
import { predictWith } from './predict.ts';
import { evaluate, kindOfAdjuster, minutesOf, movedTo, type Positions, type Problem, problemOf } from './problem.ts';
import { type Drawer, shimsOf } from './shims/drawer.ts';
import { shimNotes } from './shims/shim-notes.ts';

/** The plan of a validated request. */
export function planOf(request: PlanRequest): BarePlan {
  const problem = problemOf(request);
  const choices = new Choices(problem);
  const { style = 'closest', maxEffort } = problem.request;
  const enough = maxEffort === undefined ? [] : choices.tradeOff();
  const within = enough.find(({ effort }) => effort <= maxEffort!) ?? enough.at(-1);
  // The search is exact for sums over corners, which a chance is not: of the surest only what stands for it is proven.
  const proven = within !== undefined || style === 'closest' || style === 'least-work';
  return planTo(problem, within?.positions ?? choices.best(style), choices, proven);
}

function planTo(problem: Problem, positions: Positions, choices: Choices, proven: boolean): BarePlan {
  const judged = evaluate(problem, positions);
  const moves = inOrder(problem, positions, choices.drawer);
  const { predicted, deviation, inWindow, chance, distance } = judged;
  return {
    ...{ moves, positions, predicted, deviation, inWindow, chance, distance },
    odds: oddsAt(problem, judged, positions, (term) => choices.isFixed(term)),
    effort: workOf(problem, positions),
    optimum: { proven, combinations: choices.combinations },
    shortfall: shortfallOf(problem, judged, positions),
    noted: [...shimNotes(problem, choices, moves, inWindow), ...notesOf(problem, moves, positions)],
    unmeasured: problem.unmeasured.map(({ where, angle }) => ({ where, angle })),
  };
}

/** Minutes. */
export const workOf = (problem: Problem, positions: Positions): number =>
  movedTo(problem, positions).reduce((sum, { adjuster }) => sum + minutesOf(adjuster), 0);

function inOrder(problem: Problem, positions: Positions, drawer?: Drawer): BareMove[] {
  const { request, model, now } = problem;
  const steps = movedTo(problem, positions)
    .map((step) => {
      const own = cornerOf(model, step.corner, now);
      const rank = rankOf(step.corner, roleOf(own, step.adjuster), hasLowerCams(sideOf(request.car, step.corner)));
      return { ...step, rank: rank + (steersBoth(own, step.adjuster) ? AFTERWARDS : 0) };
    })
    .sort((a, b) => a.rank - b.rank);
  const stacks = drawer?.serve((pack) => positions[pack.corner][pack.adjuster]!);
  let stands: CarSettings = now;
  let read = request.reading;
  return steps.map(({ corner, adjuster, from, to }) => {
    stands = { ...stands, [corner]: { ...stands[corner], [adjuster.id]: to } };
    const pack = drawer?.find({ corner, adjuster: adjuster.id });
    const shims = pack && shimsOf(stacks?.get(pack) ?? new Map());
    const expectAfter = predictWith(model, request.reading, now, stands);
    const gains = gainsOf(read[corner], expectAfter[corner]);
    const both = hangOn(request.car, corner, adjuster)?.map((one) => gainsOf(read[one], expectAfter[one]));
    read = expectAfter;
    return {
      corner,
      adjuster: adjuster.id,
      from,
      to,
      ...(shims && { shims }),
      act: kindOfAdjuster(adjuster).act(adjuster, from, to, { corner, shims, gains, ...(both && { both }) }),
      expectAfter,
    };
  });
}

/** The corners of both wheels, where their knuckles hang together by what it works on. */
function hangOn(car: Car, corner: Corner, adjuster: Adjuster): readonly Corner[] | undefined {
  const axle = car[axleOf(corner)];
  const knuckled = suspensionKinds[axle.suspension.kind]?.rigidAxle?.knuckles;
  return knuckled && isOnce(adjuster, axle) ? AXLES[axleOf(corner)] : undefined;
}

/** Degrees that a wheel's angles gain, as far as they were measured. */
const gainsOf = (before: WheelReading = {}, after: WheelReading = {}) =>
  Object.fromEntries(
    WHEEL_ANGLES.flatMap((angle) => {
      const [was, is] = [before[angle], after[angle]];
      return was === undefined || is === undefined ? [] : [[angle, is - was]];
    }),
  );
