/** What a plan starts from, worked out once; and how good it is to go to some positions from there. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import { adjusterName } from '../adjuster/names.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type AdjusterRef,
  type AxleName,
  type AxleReading,
  CORNERS,
  type Corner,
  type Gauge,
  type Plan,
  type PlanRequest,
  type Reading,
  type Settings,
  type WheelReading,
} from '../contract.ts';
import { axleOf, byCorner } from '../corners.ts';
import { type Assembly, type CarModel, compileCar } from '../pose/car-model.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, hasBody, LATERAL, numbersOf, PITCH, TOE } from '../pose/numbers.ts';
import { DEFAULT_AXLE_GAUGE, DEFAULT_GAUGE } from '../reading/gauge.ts';
import type { SpecTerm } from '../reading/spec-terms.ts';
import { specFor } from './axle-kept.ts';
import { chanceOf, oddsOf } from './chance/chance.ts';
import { type Covariance, Uncertainty } from './chance/covariance.ts';
import { learnedAbout } from './chance/learned-part.ts';
import { liveOf, Order } from './live.ts';
import { OwnAngles } from './own-angles.ts';
import { predictWith } from './predict.ts';
import { Work } from './search/work.ts';
import { samePosition } from './states/axis.ts';
import { placeAmong } from './states/state-space.ts';
import { withWheelLevel } from './straight-wheel.ts';
import { distanceOf, isIn, type Term, termsOf, termValue, wishesOf } from './terms.ts';

/** Where every adjuster of every corner stands. */
export type Positions = Record<Corner, Settings>;

export interface Problem {
  /** Validated; its front toe with the steering wheel level. */
  readonly request: PlanRequest;
  /** Degrees that the steering wheel stood off level while toe was read, + to the right; absent: it did not. */
  readonly stoodOff?: number;
  readonly model: CarModel;
  readonly now: Positions;
  readonly terms: readonly Term[];
  /** What is wished beside the windows. */
  readonly wishes: readonly Term[];
  readonly unmeasured: readonly SpecTerm[];
  /** What each wheel shows at other positions. */
  readonly own: OwnAngles;
  /** In which moves are made. */
  readonly order: Order;
  /** What is not known of each assembly. */
  readonly uncertainty: ReadonlyMap<Assembly, Uncertainty>;
  /** What all searches for it together may do. */
  readonly work: Work;
}

/** @param asked validated */
export function problemOf(asked: PlanRequest, work = new Work()): Problem {
  const request = withWheelLevel(asked);
  const model = compileCar(request.car);
  const now = complete(request);
  const judged = termsOf(specFor(request), request.reading, request.car);
  const order = new Order(request.car, model, now);
  const uncertainty = new Map(
    model.map((assembly) => {
      const gauge = gaugeOf(request, axleOf(assembly.corners[0]!));
      const { parts, places: known = [] } = request.car.learned ?? {};
      const learned = learnedAbout(parts, assembly);
      const places = [...(request.unsure ?? []), ...known];
      const live = request.live?.length ? liveOf(request, assembly, judged.terms, order) : undefined;
      const beside = { learned, places, live, methods: request.reading.methods };
      return [assembly, new Uncertainty(assembly, settingsOf(assembly, now), gauge, beside)] as const;
    }),
  );
  const own = new OwnAngles(model, request.reading, now);
  const wishes = wishesOf(request.wish ?? {}, request.reading, request.car);
  const stoodOff = asked.reading.steeringWheel;
  return {
    ...{ request, model, now, own, order, wishes, uncertainty, work },
    ...judged,
    ...(stoodOff && { stoodOff }),
  };
}

/** How well what is read at an axle repeats. What nobody measures on it has no gauge that could be off. */
function gaugeOf({ gauge = DEFAULT_GAUGE, reading }: PlanRequest, axle: AxleName): Required<Gauge> {
  const { pinionAngle, lateral } = { ...DEFAULT_AXLE_GAUGE, ...gauge };
  const read = reading[axle] ?? {};
  return {
    ...gauge,
    pinionAngle: read.pinionAngle === undefined ? 0 : pinionAngle,
    lateral: read.lateral === undefined ? 0 : lateral,
  };
}

/** What the rack will read at some positions, and how that stands to the windows. */
export interface Evaluation {
  readonly predicted: Reading;
  readonly deviation: Plan['deviation'];
  readonly values: ReadonlyMap<Term, number>;
  readonly inWindow: boolean;
  readonly distance: number;
  readonly chance: number;
  /** Of each term alone, 0…1. */
  readonly alone: ReadonlyMap<Term, number>;
}

/** Each corner's own angles at some positions, and what every term then is. */
export function valuesAt({ own, terms }: Problem, positions: Positions) {
  const angles = own.at(positions);
  return { angles, values: new Map(terms.map((term) => [term, termValue(term, CORNERS, angles)])) };
}

export function evaluate(problem: Problem, positions: Positions): Evaluation {
  const { request, model, now, terms } = problem;
  const predicted = predictWith(model, request.reading, now, positions);
  const { angles, values } = valuesAt(problem, positions);
  const [byAssembly, covariances] = anglesAt(problem, angles, positions);
  // What nobody typed gives way: where it is exceeded that is told, and the rest is judged without it.
  const counted = terms.filter((term) => !term.window.assumed || isIn(term, values.get(term)!));
  return {
    predicted,
    deviation: deviationsOf(model, predicted, covariances),
    values,
    inWindow: counted.every((term) => isIn(term, values.get(term)!)),
    distance: terms.reduce((sum, term) => sum + distanceOf(term, values.get(term)!), 0),
    ...oddsOf(counted, model, byAssembly, covariances),
  };
}

/** The chance that some of the terms are met at some positions: as `evaluate` has it for all of them. */
export function chanceAt(problem: Problem, positions: Positions, terms: readonly Term[]): number {
  return chanceOf(terms, problem.model, ...anglesAt(problem, valuesAt(problem, positions).angles, positions));
}

/** The same, and the chance of each of them alone. */
export function oddsOfTerms(problem: Problem, positions: Positions, terms: readonly Term[]) {
  return oddsOf(terms, problem.model, ...anglesAt(problem, valuesAt(problem, positions).angles, positions));
}

/** Each assembly's angles at some positions, and how well they are known. */
function anglesAt({ model, uncertainty }: Problem, angles: readonly Float64Array[], positions: Positions) {
  const byAssembly = model.map(({ corners, sides }) => {
    const numbers = corners.flatMap((corner) => [...angles[CORNERS.indexOf(corner)]!.subarray(0, ANGLES_A_WHEEL)]);
    const body = angles[CORNERS.indexOf(corners[0]!)]!.subarray(ANGLES_A_WHEEL);
    return Float64Array.from(hasBody(sides) ? [...numbers, ...body] : numbers);
  });
  const covariances = model.map((assembly) => uncertainty.get(assembly)!.covariance(settingsOf(assembly, positions)));
  return [byAssembly, covariances] as const;
}

/** Adjusters that stand elsewhere at these positions than now. */
export function movedTo({ request: { car }, now }: Problem, positions: Positions) {
  return CORNERS.flatMap((corner) =>
    adjustersOf(car, corner).flatMap((adjuster) => {
      const from = now[corner][adjuster.id]!;
      const to = positions[corner][adjuster.id]!;
      return samePosition(from, to) ? [] : [{ corner, adjuster, from, to }];
    }),
  );
}

/** Minutes. */
export const minutesOf = (adjuster: Adjuster): number => adjuster.effort ?? kindOfAdjuster(adjuster).effort;
/** The same of all that is moved to get to some positions. */
export const workOf = (problem: Problem, positions: Positions): number =>
  movedTo(problem, positions).reduce((sum, { adjuster }) => sum + minutesOf(adjuster), 0);
export const kindOfAdjuster = (adjuster: Adjuster): AdjusterKind => adjusterKinds[adjuster.kind]!;
export const adjusterOf = ({ car }: Pick<PlanRequest, 'car'>, { corner, adjuster }: AdjusterRef): Adjuster =>
  adjustersOf(car, corner).find(({ id }) => id === adjuster)!;

export const nameOf = (request: Pick<PlanRequest, 'car'>, ref: AdjusterRef): string =>
  adjusterName(adjusterOf(request, ref));

export const settingsOf = ({ corners }: Assembly, positions: Positions): Settings[] =>
  corners.map((corner) => positions[corner]);

/** Where every adjuster stands, those that were not given at their reference. */
export function complete({ car, settings }: Pick<PlanRequest, 'car' | 'settings'>): Positions {
  return byCorner((corner) =>
    Object.fromEntries(
      adjustersOf(car, corner).map(({ id, reference }) => [id, settings[corner]?.[id] ?? reference] as const),
    ),
  );
}

function deviationsOf(model: CarModel, predicted: Reading, covariances: readonly Covariance[]): Plan['deviation'] {
  const wheels: Partial<Record<Corner, WheelReading>> = {};
  const axles: Partial<Record<AxleName, AxleReading>> = {};
  model.forEach(({ corners, sides }, a) => {
    const sigma = (corner: Corner, angle: number): number =>
      Math.sqrt(covariances[a]![placeAmong(corners, corner, angle) * (numbersOf(sides) + 1)]!);
    for (const corner of corners) {
      const wheel = predicted[corner];
      if (!wheel) continue;
      wheels[corner] = {
        ...(wheel.camber !== undefined && { camber: sigma(corner, CAMBER) }),
        ...(wheel.caster !== undefined && { caster: sigma(corner, CASTER) }),
        ...(wheel.toe !== undefined && { toe: sigma(corner, TOE) }),
      };
    }
    const [first] = corners;
    const { pinionAngle, lateral } = predicted[axleOf(first!)] ?? {};
    if (!hasBody(sides) || (pinionAngle === undefined && lateral === undefined)) return;
    axles[axleOf(first!)] = {
      ...(pinionAngle !== undefined && { pinionAngle: sigma(first!, PITCH) }),
      ...(lateral !== undefined && { lateral: sigma(first!, LATERAL) }),
    };
  });
  return { ...wheels, ...axles };
}
