/**
 * Whether it pays to measure before all moves of a plan are made: what the first of them do, once it is read, tells how the
 * car is built, so that the rest comes surer. How well it will be known then is worked out before anything is moved, as the
 * covariance after a reading does not hang on what is read (a Kalman update; any text on estimation, such as Y. Bar-Shalom,
 * X. R. Li, T. Kirubarajan, Estimation with Applications to Tracking and Navigation, ch. 5; from memory).
 */
import { jobsOf } from '../adjuster/job.ts';
import type { AdjusterRef, BarePlan, CarSettings, LearnedPart, Move, PlanRequest } from '../contract.ts';
import { Uncertainty } from '../plan/chance/covariance.ts';
import { learnedAbout, learnedUnknowns, rootOfPart } from '../plan/chance/learned-part.ts';
import { predictWith } from '../plan/predict.ts';
import { complete, evaluate, type Positions, problemOf, settingsOf } from '../plan/problem.ts';
import { type Assembly, compileCar } from '../pose/car-model.ts';
import { DEFAULT_AXLE_GAUGE, DEFAULT_GAUGE } from '../reading/gauge.ts';
import { Definite } from './algebra.ts';
import { gaugeNumbers, numbersRead } from './evidence.ts';
import { priorOf } from './taught.ts';

/** A reading in between that pays. */
export interface FirstMove {
  /** The jobs to make before it, as the plan has them in their order. */
  readonly jobs: number;
  /** The adjusters of the last of them. */
  readonly last: readonly AdjusterRef[];
  /** 0…1: of the plan as it is, and of the rest once that was read. */
  readonly now: number;
  readonly after: number;
}

/** A plan that is surer needs no reading in between. Trade practice, no source. */
const SURE = 0.85;
/** Chance that a reading in between has to bring. */
const GAIN = 0.1;
/** As good as the best: fewer moves before it are taken. */
const NEARLY = 0.03;
/** Jobs after which it is tried at the most. */
const MOST_JOBS = 5;

/** @param request validated; @param plan of it */
export function firstMoveOf(request: PlanRequest, plan: Pick<BarePlan, 'moves' | 'positions' | 'chance' | 'inWindow'>) {
  const jobs = jobsOf(plan.moves);
  if (!plan.inWindow || plan.chance >= SURE) return undefined;
  const tried = jobs.slice(0, Math.min(MOST_JOBS, jobs.length - 1)).map((last, i): FirstMove => {
    const made = jobs.slice(0, i + 1).flat();
    return {
      jobs: i + 1,
      last: last.map(({ corner, adjuster }) => ({ corner, adjuster })),
      now: plan.chance,
      after: chanceAfter(request, made, plan.positions),
    };
  });
  const best = Math.max(0, ...tried.map(({ after }) => after));
  if (best < plan.chance + GAIN) return undefined;
  return tried.find(({ after }) => after >= best - NEARLY);
}

/** The chance of the rest of the plan, with what a reading after some of its moves will have taught. */
function chanceAfter(
  request: PlanRequest,
  made: readonly Pick<Move, 'corner' | 'adjuster' | 'to'>[],
  positions: Positions,
) {
  const { car } = request;
  const now = complete(request);
  let settings: CarSettings = now;
  for (const { corner, adjuster, to } of made) {
    settings = { ...settings, [corner]: { ...settings[corner], [adjuster]: to } };
  }
  const model = compileCar(car);
  const reading = predictWith(model, request.reading, now, settings);
  const parts = model.flatMap((assembly) => {
    const known = learnedAbout(car.learned?.parts, assembly);
    const isMoved = made.some(({ corner }) => assembly.corners.includes(corner));
    return isMoved
      ? [afterReading(request, assembly, known ?? priorOf(assembly), now, settings as Positions)]
      : (known ?? []);
  });
  const learned = { leftOut: [], ...car.learned, parts };
  const then = problemOf({ ...request, car: { ...car, learned }, settings, reading });
  return evaluate(then, positions).chance;
}

/** What is known of an assembly once what some moves do was read, each angle that was read before them. */
function afterReading(
  request: PlanRequest,
  assembly: Assembly,
  part: LearnedPart,
  stood: Positions,
  to: Positions,
): LearnedPart {
  const full = { ...DEFAULT_AXLE_GAUGE, ...DEFAULT_GAUGE, ...request.gauge };
  const goes = settingsOf(assembly, to);
  const uncertainty = new Uncertainty(assembly, settingsOf(assembly, stood), full, { learned: part });
  const slopes = uncertainty.slopes(goes);
  if (!slopes || slopes.length === 0) return part;
  const { size } = uncertainty;
  const unknowns = learnedUnknowns(part, assembly);
  const count = unknowns.length;
  const values = numbersRead(assembly, request.reading);
  const read = [...values.keys()].filter((k) => !Number.isNaN(values[k]!));
  const sigmas = gaugeNumbers(assembly, full);
  const errors = goes.flatMap((own, side) =>
    Object.entries(own).flatMap(([id, position]) => uncertainty.errors(side, id, position)),
  );
  const seen = Float64Array.from({ length: read.length ** 2 }, (_, at) => {
    const [i, j] = [read[Math.floor(at / read.length)]!, read[at % read.length]!];
    let sum = i === j ? 2 * sigmas[i]! ** 2 : 0;
    for (let k = 0; k < count; k++) sum += slopes[k * size + i]! * slopes[k * size + j]!;
    for (const error of errors) sum += error[i]! * error[j]!;
    return sum;
  });
  const held = new Definite(seen, read.length);
  // What an unknown and each reading have in common: σ·L·slopes.
  const root = rootOfPart(part, unknowns);
  const shared = unknowns.map(({ sigma }, i) =>
    Float64Array.from(read, (number) => {
      let sum = 0;
      for (let k = 0; k <= i; k++) sum += root[i * count + k]! * slopes[k * size + number]!;
      return sigma * sum;
    }),
  );
  const told = shared.map((own) => held.solve(own));
  let at = 0;
  const covariance = unknowns.flatMap((_, i) =>
    Array.from({ length: i + 1 }, (__, j) => {
      const gained = shared[j]!.reduce((sum, x, k) => sum + x * told[i]![k]!, 0);
      return part.covariance[at++]! - gained;
    }),
  );
  return { ...part, covariance };
}
