/** From what was read and what is wanted to the moves, in working order, with what the rack shows after each. */
import { sideOf } from '../adjuster/of-corner.ts';
import {
  type BareMove,
  type BarePlan,
  type CarSettings,
  type PlanRequest,
  WHEEL_ANGLES,
  type WheelReading,
} from '../contract.ts';
import { cornerOf } from '../pose/car-model.ts';
import { bestFoundNotes } from './answer/best-found.ts';
import { notesOf } from './answer/notes.ts';
import { oddsAt } from './answer/odds.ts';
import { shortfallOf } from './answer/shortfall.ts';
import { hasLowerCams, rankOf, roleOf } from './answer/working-order.ts';
import { Choices, type Proof } from './choose.ts';
import { predictWith } from './predict.ts';
import { evaluate, kindOfAdjuster, minutesOf, movedTo, type Positions, type Problem, problemOf } from './problem.ts';
import { type Drawer, shimsOf } from './shims/drawer.ts';
import { shimNotes } from './shims/shim-notes.ts';

/**
 * The plan of a validated request.
 * @param most states of one corner that are all gone through; of more the best are sought (see fine/)
 */
export function planOf(request: PlanRequest, most?: number): BarePlan {
  const problem = problemOf(request);
  const choices = new Choices(problem, most);
  const { style = 'closest', maxEffort } = problem.request;
  const enough = maxEffort === undefined ? [] : choices.tradeOff();
  const within = enough.find(({ effort }) => effort <= maxEffort!) ?? enough.at(-1);
  const proof = within ? { proven: choices.fine.length === 0 } : choices.proofOf(style);
  return planTo(problem, within?.positions ?? choices.best(style), choices, proof);
}

function planTo(problem: Problem, positions: Positions, choices: Choices, proof: Proof): BarePlan {
  const optimum = { ...proof, combinations: choices.combinations };
  const judged = evaluate(problem, positions);
  const moves = inOrder(problem, positions, choices.drawer);
  const { predicted, deviation, inWindow, chance, distance } = judged;
  return {
    ...{ moves, positions, predicted, deviation, inWindow, chance, distance },
    odds: oddsAt(problem, judged, positions, (term) => choices.isFixed(term)),
    effort: workOf(problem, positions),
    optimum,
    shortfall: shortfallOf(problem, judged, positions),
    noted: [
      ...bestFoundNotes(choices.fine, proof, distance),
      ...shimNotes(problem, choices, moves, inWindow),
      ...notesOf(problem, moves, positions),
    ],
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
      const role = roleOf(cornerOf(model, step.corner, now), step.adjuster);
      return { ...step, rank: rankOf(step.corner, role, hasLowerCams(sideOf(request.car, step.corner))) };
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
    read = expectAfter;
    return {
      corner,
      adjuster: adjuster.id,
      from,
      to,
      ...(shims && { shims }),
      act: kindOfAdjuster(adjuster).act(adjuster, from, to, { corner, shims, gains }),
      expectAfter,
    };
  });
}

/** Degrees that a wheel's angles gain, as far as they were measured. */
const gainsOf = (before: WheelReading = {}, after: WheelReading = {}) =>
  Object.fromEntries(
    WHEEL_ANGLES.flatMap((angle) => {
      const [was, is] = [before[angle], after[angle]];
      return was === undefined || is === undefined ? [] : [[angle, is - was]];
    }),
  );
