/** From what was read and what is wanted to the moves, in working order, with what the rack shows after each. */
import { isOnce } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type BareMove,
  type BarePlan,
  type Car,
  type CarSettings,
  type Corner,
  type LiveAngle,
  type PlanRequest,
  WHEEL_ANGLES,
  type WheelReading,
} from '../contract.ts';
import { AXLES, axleOf } from '../corners.ts';
import type { JobPart } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { bestFoundNotes } from './answer/best-found.ts';
import { inJobs } from './answer/jobs.ts';
import { notesOf } from './answer/notes.ts';
import { oddsAt } from './answer/odds.ts';
import { shortfallOf } from './answer/shortfall.ts';
import { betweenMarks } from './between/between-marks.ts';
import type { SetBy } from './chance/covariance.ts';
import { Choices, type Proof } from './choose.ts';
import { leaving, limitNotes } from './leave.ts';
import { angleAt, numberAt } from './live.ts';
import { predictWith } from './predict.ts';
import {
  evaluate,
  kindOfAdjuster,
  movedTo,
  type Positions,
  type Problem,
  problemOf,
  settingsOf,
  workOf,
} from './problem.ts';
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
  const { positions: left, asPlanned } = leaving(problem, within?.positions ?? choices.best(style));
  // What the rack leads on the same wheels is turned to its windows all the same, wherever what is left has them.
  const touched = problem.model
    .map(({ corners }) => corners)
    .filter((own) => own.some((corner) => isLeft(request, corner)));
  const positions = asPlanned ? left : betweenMarks(problem, left, style, Number.POSITIVE_INFINITY, touched.flat());
  const isWhole = choices.fine.length === 0 && !problem.work.isCut;
  const proof = within ? { proven: isWhole && !request.live?.length } : choices.proofOf(style);
  return planTo(problem, positions, choices, { proof: asPlanned ? proof : { proven: false }, asPlanned });
}

const isLeft = ({ leave = [] }: PlanRequest, of: Corner): boolean => leave.some(({ corner }) => corner === of);

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

function inOrder(problem: Problem, positions: Positions, drawer?: Drawer): BareMove[] {
  const { request, model, now, order } = problem;
  const steps = movedTo(problem, positions).map(({ corner, adjuster, ...step }) => {
    const rack = setBy(problem, positions, corner, adjuster.id);
    const rank = order.rank({ corner, adjuster: adjuster.id }, rack !== undefined);
    return { ...step, corner, adjuster, rank, ...(rack && { rack, byRack: true }) };
  });
  const stacks = drawer?.serve((pack) => positions[pack.corner][pack.adjuster]!);
  let stands: CarSettings = now;
  let read = request.reading;
  const move = ({ corner, adjuster, from, to, job, rack }: Step) => {
    stands = { ...stands, [corner]: { ...stands[corner], [adjuster.id]: to } };
    const pack = drawer?.find({ corner, adjuster: adjuster.id });
    const holds = request.packs?.[corner]?.[adjuster.id];
    const shims = pack && shimsOf(stacks?.get(pack) ?? pack.fewest(to));
    const expectAfter = predictWith(model, request.reading, now, stands);
    const gains = gainsOf(read[corner], expectAfter[corner]);
    const both = hangOn(request.car, corner, adjuster)?.map((one) => gainsOf(read[one], expectAfter[one]));
    const before = read[corner];
    read = expectAfter;
    return {
      corner,
      adjuster: adjuster.id,
      from,
      to,
      ...(rack && byRack(rack, before, expectAfter[corner])),
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

type Step = ReturnType<typeof movedTo>[number] & { readonly job?: JobPart; readonly rack?: Rack };

/** How a move is watched: by which angle of its wheel, how well its end is known, and what the gauge then shows of the wheel. */
interface Rack extends Pick<SetBy, 'within'> {
  readonly angle: LiveAngle;
  readonly shown: Record<LiveAngle, number>;
}

/** How a move of the plan is watched, if it goes by the rack. */
function setBy({ model, uncertainty }: Problem, positions: Positions, corner: Corner, id: string): Rack | undefined {
  const assembly = model.find(({ corners }) => corners.includes(corner))!;
  const own = uncertainty.get(assembly)!.setBy(settingsOf(assembly, positions));
  const one = own.find(({ side, id: moved }) => assembly.corners[side] === corner && moved === id);
  if (!one) return undefined;
  const shown = WHEEL_ANGLES.map((angle) => [angle, one.shown[numberAt(assembly, corner, angle)]!] as const);
  return {
    angle: angleAt(one.at),
    within: one.within,
    shown: Object.fromEntries(shown) as unknown as Record<LiveAngle, number>,
  };
}

/**
 * What a move that goes by the rack says of it, from what its wheel reads before and after; nothing where there is no pose for
 * the wheel on the way, so that the rack has nothing to show: such a move goes by its mark.
 */
function byRack({ angle, within, shown }: Rack, before?: WheelReading, after?: WheelReading) {
  if (before?.[angle] === undefined || after?.[angle] === undefined) return {};
  const others = WHEEL_ANGLES.filter((one) => one !== angle && after[one] !== undefined);
  const deviation = Object.fromEntries(others.map((one) => [one, shown[one]]));
  return { setBy: { angle, value: after[angle] }, watched: { from: before[angle], within, deviation } };
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
