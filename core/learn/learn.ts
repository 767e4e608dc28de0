/** What readings teach of a car: each assembly for itself, as nothing of one shows at another. */

import type { Side } from '../adjuster/of-corner.ts';
import { movedBy, unknownsOf } from '../adjuster/unknowns.ts';
import type { Car, CarModel, Corner, Gauge, Learned, LearnedPart } from '../contract.ts';
import { learnedAbout, learnedName, learnedUnknowns, rootBefore, rootOfPart } from '../plan/chance/learned-part.ts';
import { type Assembly, compileCar } from '../pose/car-model.ts';
import { ANGLES_A_WHEEL } from '../pose/numbers.ts';
import { DEFAULT_AXLE_GAUGE, roughest } from '../reading/gauge.ts';
import { built } from './built.ts';
import { type Evidence, evidenceOf, gaugeNumbers, type Sight, standing } from './evidence.ts';
import { type Fit, Fitting, type Prior } from './fit.ts';
import { worstOf } from './misfits.ts';
import { travelOf } from './places.ts';
import { seenIn } from './seen.ts';
import { asModelled, type Sitting } from './sittings.ts';

/** Readings of one assembly that are left out at the most, one after another. */
const MOST_LEFT_OUT = 20;

/**
 * The car as its readings have shown it.
 * @param car validated; one that has learned already learns on from there
 * @param sittings of this car, validated
 */
export function learned(car: Car, sittings: readonly Sitting[], gauge: Gauge): CarModel {
  const last = sittings.at(-1)?.rounds.at(-1);
  if (!last) return car;
  const read = sittings.map((one) => ({
    ...one,
    rounds: one.rounds.flatMap((round) => seenIn(asModelled(round, car), round.reading)),
  }));
  const readings = sittings.flatMap(({ rounds }) => rounds.map(({ reading }) => reading));
  const sure = roughest({ ...DEFAULT_AXLE_GAUGE, ...gauge }, readings);
  const taught = compileCar(car).map((assembly) => taughtOf(car, assembly, read, sure));
  const parts = taught.flatMap(({ part }) => part ?? []);
  const places = taught.flatMap((one) => one.places ?? []);
  const { id, at, reading, settings } = last;
  const shown: Learned = {
    parts,
    leftOut: taught.flatMap(({ leftOut }) => leftOut),
    ...(places.length > 0 && { places }),
    last: { ...(id !== undefined && { id }), ...(at !== undefined && { at }), reading, settings },
  };
  return taught.reduce<Car>((now, { sides, assembly }) => (sides ? built(now, assembly, sides) : now), {
    ...car,
    learned: shown,
  });
}

interface Taught {
  readonly assembly: Assembly;
  readonly sides?: readonly Side[];
  readonly part?: LearnedPart;
  readonly leftOut: Learned['leftOut'];
  readonly places?: Learned['places'];
}

function taughtOf(car: Car, assembly: Assembly, sittings: readonly Sitting[], gauge: Required<Gauge>): Taught {
  const before = learnedAbout(car.learned?.parts, assembly);
  const none = { assembly, ...(before && { part: before }), leftOut: [] };
  const unknowns = before ? learnedUnknowns(before, assembly) : unknownsOf(assembly.sides);
  if (unknowns.length === 0) return none;
  const root = before ? rootOfPart(before, unknowns) : rootBefore(assembly, unknowns);
  const prior: Prior = { unknowns, ...(root && { root }) };
  const evidence = evidenceOf(assembly, sittings);
  const { fit, leftOut } = fitted(assembly, evidence, prior, gaugeNumbers(assembly, gauge));
  if (!fit?.taught) return { ...none, leftOut };
  return {
    assembly,
    sides: movedBy(assembly.sides, unknowns, fit.by),
    part: {
      corners: assembly.corners,
      unknowns: unknowns.map((one) => learnedName(assembly, one)),
      covariance: lowerOf(fit.covariance, unknowns.length),
      by: unknowns.map((_, i) => fit.by[i]! + (before?.by?.[i] ?? 0)),
    },
    leftOut,
    places: placesOf(assembly, sittings.at(-1)!, evidence.at(-1)!, fit),
  };
}

/** Where adjusters of unknown place stood at the last round of the last sitting that lists them. */
function placesOf(
  assembly: Assembly,
  { rounds }: Sitting,
  sights: readonly Sight[],
  { places }: Fit,
): Learned['places'] {
  // Those of another day may stand anywhere by now.
  if (!rounds.includes(sights[0]!.round)) return [];
  const { corners, model } = assembly;
  return places.flatMap(({ place, at, deviation }) => {
    const own = sights.flatMap(({ lost }) => lost).find((one) => one.place === place);
    const travel = own && travelOf(model, own.side, own.id);
    if (!own || !travel) return [];
    const { side, id } = own;
    const ref = { corner: corners[side]!, adjuster: id };
    const last = rounds.findLast(({ unknown = [] }) =>
      unknown.some((one) => one.corner === ref.corner && one.adjuster === id),
    );
    const counted = last && standing(assembly, last)[side]![id];
    if (typeof counted !== 'number') return [];
    const stands = Math.min(travel.high, Math.max(travel.low, counted + at * travel.sigma));
    return [{ ...ref, at: stands, deviation: deviation * travel.sigma }];
  });
}

/** The fit to what can be, one reading after another left out that cannot. */
function fitted(assembly: Assembly, evidence: Evidence, prior: Prior, sigmas: Float64Array) {
  const leftOut: { readonly corner: Corner; readonly round?: string }[] = [];
  let left = evidence;
  for (let i = 0; left.length > 0 && i < MOST_LEFT_OUT; i++) {
    const fit: Fit | undefined = new Fitting(assembly, left, prior, sigmas).run();
    const sights = left.flat();
    const wheels = fit?.left.rows.map(({ sight, number }) => `${sight}/${wheelOf(assembly, number)}`) ?? [];
    const worst = fit ? worstOf(fit.left, wheels) : [];
    if (worst.length === 0) return { fit, leftOut };
    for (const key of worst) {
      const [sight, wheel] = key.split('/').map(Number) as [number, number];
      const { id } = sights[sight]!.round;
      leftOut.push({ corner: assembly.corners[wheel] ?? assembly.corners[0]!, ...(id !== undefined && { round: id }) });
    }
    left = without(assembly, left, new Set(worst));
  }
  return { leftOut };
}

/** Which wheel a number is of; the body comes after them. */
const wheelOf = ({ corners }: Assembly, number: number): number =>
  Math.min(corners.length, Math.floor(number / ANGLES_A_WHEEL));

function without(assembly: Assembly, evidence: Evidence, worst: ReadonlySet<string>): Evidence {
  let at = 0;
  return evidence
    .map((sights) =>
      sights.flatMap((sight): Sight[] => {
        const own = at++;
        const values = sight.values.map((value, number) =>
          worst.has(`${own}/${wheelOf(assembly, number)}`) ? Number.NaN : value,
        );
        return values.every(Number.isNaN) ? [] : [{ ...sight, values }];
      }),
    )
    .filter((sights) => sights.length > 1);
}

function lowerOf(square: Float64Array, size: number): readonly number[] {
  return Array.from({ length: size }, (_, i) => [...square.subarray(i * size, i * size + i + 1)]).flat();
}
