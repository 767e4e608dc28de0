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
import type { JobPart } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { bestFoundNotes } from './answer/best-found.ts';
import { inJobs } from './answer/jobs.ts';
import { notesOf } from './answer/notes.ts';
import { oddsAt } from './answer/odds.ts';
import { shortfallOf } from './answer/shortfall.ts';
import { AFTERWARDS, hasLowerCams, rankOf, roleOf, steersBoth } from './answer/working-order.ts';
import { Choices, type Proof } from './choose.ts';
import { leaving, limitNotes } from './leave.ts';
import { predictWith } from './predict.ts';
import { evaluate, kindOfAdjuster, minutesOf, movedTo, type Positions, type Problem, problemOf } from './problem.ts';
import type { Work } from './search/work.ts';
import { type Drawer, shimsOf } from './shims/drawer.ts';
import { shimNotes } from './shims/shim-notes.ts';

/**
 * The plan of a validated request.
 * @param most states of one corner that are all gone through; of more the best are sought (see fine/)
 * @param work how much may be searched; what is then not proven is said
 */
export function planOf(request: PlanRequest, most?: number, work?: Work): BarePlan {
  const problem = problemOf(request, work);
  const choices = new Choices(problem, most);
  const { style = 'closest', maxEffort } = problem.request;
  const enough = maxEffort === undefined ? [] : choices.tradeOff();
  const within = enough.find(({ effort }) => effort <= maxEffort!) ?? enough.at(-1);
  const { positions, asPlanned } = leaving(problem, within?.positions ?? choices.best(style));
  const isWhole = choices.fine.length === 0 && !problem.work.isCut;
  const proof = within ? { proven: isWhole } : choices.proofOf(style);
  return planTo(problem, positions, choices, { proof: asPlanned ? proof : { proven: false }, asPlanned });
}

interface Made {
  readonly proof: Proof;
  /** Nothing that was planned is left. */
  readonly asPlanned: boolean;
}

function planTo(problem: Problem, positions: Positions, choices: Choices, { proof, asPlanned }: Made): BarePlan {
  const optimum = { ...proof, combinations: choices.combinations };
  const judged = evaluate(problem, positions);
  const moves = inOrder(problem, positions, choices.drawer);
  const { predicted, deviation, distance } = judged;
  // A plan is for places that exist; what is left of one may not be.
  const exists = asPlanned || !predicted.unreachable;
  const inWindow = exists && judged.inWindow;
  const chance = exists ? judged.chance : 0;
  return {
    ...{ moves, positions, predicted, deviation, inWindow, chance, distance },
    odds: oddsAt(problem, judged, positions, (term) => choices.isFixed(term)),
    effort: workOf(problem, positions),
    optimum,
    shortfall: shortfallOf(problem, judged, positions),
    noted: [
      ...(asPlanned ? bestFoundNotes(choices.fine, proof, judged, problem.work) : limitNotes(problem, positions)),
      ...shimNotes(problem, choices, moves, inWindow || !asPlanned),
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
  const steps = movedTo(problem, positions).map((step) => {
    const own = cornerOf(model, step.corner, now);
    const rank = rankOf(step.corner, roleOf(own, step.adjuster), hasLowerCams(sideOf(request.car, step.corner)));
    return { ...step, rank: rank + (steersBoth(own, step.adjuster) ? AFTERWARDS : 0) };
  });
  const stacks = drawer?.serve((pack) => positions[pack.corner][pack.adjuster]!);
  let stands: CarSettings = now;
  let read = request.reading;
  const move = ({ corner, adjuster, from, to, job }: Step) => {
    stands = { ...stands, [corner]: { ...stands[corner], [adjuster.id]: to } };
    const pack = drawer?.find({ corner, adjuster: adjuster.id });
    const holds = request.packs?.[corner]?.[adjuster.id];
    const shims = pack && shimsOf(stacks?.get(pack) ?? pack.fewest(to));
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
      ...(job && { job }),
      act: kindOfAdjuster(adjuster).act(adjuster, from, to, { corner, shims, holds, gains, ...(both && { both }) }),
      expectAfter,
    };
  };
  return inJobs(request.car, steps).flatMap((job) => {
    const made = job.map(move);
    // One side alone of what is one for the whole axle cannot be: there is nothing to read until both are made.
    return kindOfAdjuster(job[0]!.adjuster).wholeAxle ? made.map((one) => ({ ...one, expectAfter: read })) : made;
  });
}

type Step = ReturnType<typeof movedTo>[number] & { readonly job?: JobPart };
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
