/** What a plan starts from, worked out once; and how good it is to go to some positions from there. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type AdjusterRef,
  CORNERS,
  type Corner,
  type Plan,
  type PlanRequest,
  type Reading,
  type Settings,
  type WheelReading,
} from '../contract.ts';
import { byCorner } from '../corners.ts';
import { type Assembly, type CarModel, compileCar } from '../pose/car-model.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, TOE } from '../pose/mechanism.ts';
import { DEFAULT_GAUGE } from '../reading/gauge.ts';
import type { SpecTerm } from '../reading/spec-terms.ts';
import { chanceOf, oddsOf } from './chance/chance.ts';
import { type Covariance, Uncertainty } from './chance/covariance.ts';
import { predictWith } from './predict.ts';
import { samePosition } from './states/axis.ts';
import { distanceOf, isIn, type Term, termsOf, termValue, wishesOf } from './terms.ts';

/** Where every adjuster of every corner stands. */
export type Positions = Record<Corner, Settings>;

export interface Problem {
  /** Validated. */
  readonly request: PlanRequest;
  readonly model: CarModel;
  readonly now: Positions;
  readonly terms: readonly Term[];
  /** What is wished beside the windows. */
  readonly wishes: readonly Term[];
  readonly unmeasured: readonly SpecTerm[];
  /** What is not known of each assembly. */
  readonly uncertainty: ReadonlyMap<Assembly, Uncertainty>;
}

/** @param request validated */
export function problemOf(request: PlanRequest): Problem {
  const model = compileCar(request.car);
  const now = complete(request);
  const gauge = request.gauge ?? DEFAULT_GAUGE;
  const uncertainty = new Map(
    model.map((assembly) => [assembly, new Uncertainty(assembly, settingsOf(assembly, now), gauge)]),
  );
  const wishes = wishesOf(request.wish ?? {}, request.reading);
  return { request, model, now, ...termsOf(request.spec, request.reading), wishes, uncertainty };
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

/** Each wheel's own angles at some positions, corner by corner, and what every term then is. */
export function valuesAt({ request, model, now, terms }: Problem, positions: Positions) {
  // The terms carry the thrust angle's share themselves.
  const own = predictWith(model, { ...request.reading, toeReference: 'centreline' }, now, positions);
  const angles = CORNERS.map((corner) => anglesOf(own[corner]));
  return { angles, values: new Map(terms.map((term) => [term, termValue(term, CORNERS, angles)])) };
}

export function evaluate(problem: Problem, positions: Positions): Evaluation {
  const { request, model, now, terms } = problem;
  const predicted = predictWith(model, request.reading, now, positions);
  const { angles, values } = valuesAt(problem, positions);
  const [byAssembly, covariances] = anglesAt(problem, angles, positions);
  return {
    predicted,
    deviation: deviationsOf(model, predicted, covariances),
    values,
    inWindow: terms.every((term) => isIn(term, values.get(term)!)),
    distance: terms.reduce((sum, term) => sum + distanceOf(term, values.get(term)!), 0),
    ...oddsOf(terms, model, byAssembly, covariances),
  };
}

/** The chance that some of the terms are met at some positions: as `evaluate` has it for all of them. */
export function chanceAt(problem: Problem, positions: Positions, terms: readonly Term[]): number {
  return chanceOf(terms, problem.model, ...anglesAt(problem, valuesAt(problem, positions).angles, positions));
}

/** Each assembly's angles at some positions, and how well they are known. */
function anglesAt({ model, uncertainty }: Problem, angles: readonly Float64Array[], positions: Positions) {
  const byAssembly = model.map(({ corners }) =>
    Float64Array.from(corners.flatMap((corner) => [...angles[CORNERS.indexOf(corner)]!])),
  );
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
export const kindOfAdjuster = (adjuster: Adjuster): AdjusterKind => adjusterKinds[adjuster.kind]!;
export const adjusterOf = ({ car }: Pick<PlanRequest, 'car'>, { corner, adjuster }: AdjusterRef): Adjuster =>
  adjustersOf(car, corner).find(({ id }) => id === adjuster)!;

export const nameOf = (request: Pick<PlanRequest, 'car'>, ref: AdjusterRef): string =>
  adjusterOf(request, ref).name ?? ref.adjuster;

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

function anglesOf(wheel: WheelReading = {}): Float64Array {
  const angles = new Float64Array(ANGLES_A_WHEEL);
  angles[CAMBER] = wheel.camber ?? 0;
  angles[CASTER] = wheel.caster ?? 0;
  angles[TOE] = wheel.toe ?? 0;
  return angles;
}

function deviationsOf(model: CarModel, predicted: Reading, covariances: readonly Covariance[]): Plan['deviation'] {
  const deviation: Partial<Record<Corner, WheelReading>> = {};
  model.forEach(({ corners }, a) => {
    corners.forEach((corner, side) => {
      const wheel = predicted[corner];
      if (!wheel) return;
      const place = (k: number): number => (ANGLES_A_WHEEL * side + k) * (ANGLES_A_WHEEL * corners.length + 1);
      const sigma = (k: number): number => Math.sqrt(covariances[a]![place(k)]!);
      deviation[corner] = {
        ...(wheel.camber !== undefined && { camber: sigma(CAMBER) }),
        ...(wheel.caster !== undefined && { caster: sigma(CASTER) }),
        ...(wheel.toe !== undefined && { toe: sigma(TOE) }),
      };
    });
  });
  return deviation;
}
