/**
 * What is not known of a unit, and how far it can put a planned change off: hard points that a tape gives to its
 * tolerance only, moves that are made to their own tolerance only, a gauge that does not repeat. Each unknown stands
 * for itself, one standard deviation of it at a time; the change of the angles is linear in it for as small an error
 * (checked in the tests against a Monte Carlo of the full model).
 */
import type { Gauge, Position, Settings, Vec3 } from '../contract.ts';
import { applyChange, type Change, changeOf } from '../pose/change.ts';
import type { Wheel } from '../pose/linkage.ts';
import { ANGLES, CAMBER, CASTER, type Fitted, TOE, UnitModel } from '../pose/unit.ts';
import { samePosition } from './axis.ts';
import type { Unit } from './car-model.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** The most that a taped coordinate is off, mm. */
export const DEFAULT_TOLERANCE = 5;

/** Where the difference for a derivative is taken, mm: far above rounding, far below curvature. */
const STEP = 0.5;
/** A tolerance says where 95 % lie. */
const SIGMAS = 2;

/** Covariance of (re-measured − predicted) of one unit's angles, degrees², square, row by row. */
export type Covariance = Float64Array;

/** A coordinate that is `STEP` off, and its standard deviation. */
interface Nudged {
  readonly model: UnitModel;
  readonly sigma: number;
}

export class Unknowns {
  /** Angles of the unit. */
  readonly size: number;
  #coordinates: readonly Nudged[] | undefined;

  /** @param from where the adjusters stand, a side each */
  constructor(
    private readonly unit: Unit,
    private readonly from: readonly Settings[],
    private readonly gauge: Gauge,
  ) {
    this.size = ANGLES * unit.sides.length;
  }

  /** How many coordinates are not known for certain. */
  get coordinates(): number {
    return this.#nudged().length;
  }

  /**
   * What one standard deviation of each coordinate adds to the change from `from` to `to`, degrees: the unit's angles,
   * coordinate by coordinate. Nothing where no pose exists.
   */
  slopes(to: readonly Settings[]): Float64Array | undefined {
    const asGiven = changeBetween(this.unit.model, this.from, to);
    if (!asGiven) return undefined;
    const nudged = this.#nudged();
    const slopes = new Float64Array(nudged.length * this.size);
    nudged.forEach(({ model, sigma }, p) => {
      const off = changeBetween(model, this.from, to);
      // Near the end of what the links allow a nudge may find no pose: as well known as the rest.
      off?.forEach((value, k) => {
        slopes[p * this.size + k] = ((value - (asGiven[k] as number)) / STEP) * sigma;
      });
    });
    return slopes;
  }

  /** What one standard deviation of the move of one adjuster to a position adds, degrees; nothing where it stays. */
  errors(side: number, id: string, position: Position): Float64Array[] {
    const { model } = this.unit;
    const { adjuster, kind } = this.#fitted(side, id);
    const stood = this.#stood(side, id);
    if (samePosition(position, stood)) return [];
    const { tolerance } = kind;
    const by = ((adjuster.tolerance as number | undefined) ?? tolerance.usual) / SIGMAS;
    if (by === 0) return [];
    const at = this.from.map((settings, i) => (i === side ? { ...settings, [id]: position } : settings));
    if (!tolerance.error) {
      const beyond = at.map((settings, i) =>
        i === side ? { ...settings, [id]: (position as number) + by } : settings,
      );
      const off = changeBetween(model, at, beyond);
      return off ? [off] : [];
    }
    const wheel = model.linkage.wheels[side] as Wheel;
    return tolerance.error(adjuster, stood, position, by).flatMap((effect) => {
      const off = changeBy(model, at, changeOf(wheel, effect));
      return off ? [off] : [];
    });
  }

  #fitted(side: number, id: string): Fitted {
    return (this.unit.model.fitted[side] as ReadonlyMap<string, Fitted>).get(id) as Fitted;
  }

  #stood(side: number, id: string): Position {
    return this.from[side]?.[id] ?? this.#fitted(side, id).adjuster.reference;
  }

  /** Covariance of the error of what the rack shows after a change to `to`; twice the gauge, as it reads twice. */
  covariance(to: readonly Settings[]): Covariance {
    const { size } = this;
    const covariance = new Float64Array(size * size);
    for (let i = 0; i < size; i += ANGLES) {
      for (const [place, sigma] of [
        [CAMBER, this.gauge.camber],
        [CASTER, this.gauge.caster],
        [TOE, this.gauge.toe],
      ] as const) {
        covariance[(i + place) * (size + 1)] = 2 * sigma * sigma;
      }
    }
    const moved = to.flatMap((settings, side) =>
      Object.entries(settings)
        .filter(([id, position]) => !samePosition(position, this.#stood(side, id)))
        .map(([id, position]) => [side, id, position] as const),
    );
    if (moved.length === 0) return covariance;
    for (const error of moved.flatMap((one) => this.errors(...one))) addSquare(covariance, error, 0, size);
    const slopes = this.slopes(to);
    for (let at = 0; slopes && at < slopes.length; at += size) addSquare(covariance, slopes, at, size);
    return covariance;
  }

  /** A coordinate that is off by at most t, anywhere within equally likely, has the standard deviation t/√3. */
  #nudged(): readonly Nudged[] {
    const { sides } = this.unit;
    this.#coordinates ??= sides.flatMap(({ suspension }, s) => {
      const tolerance = suspension.tolerance ?? DEFAULT_TOLERANCE;
      if (tolerance === 0) return [];
      return Object.entries(suspension.points).flatMap(([name, point]) =>
        [0, 1, 2].map((axis): Nudged => {
          const points = { ...suspension.points, [name]: nudge(point, axis) };
          const elsewhere = sides.map((one, i) => (i === s ? { ...one, suspension: { ...suspension, points } } : one));
          return { model: new UnitModel(elsewhere), sigma: tolerance / Math.sqrt(3) };
        }),
      );
    });
    return this.#coordinates;
  }
}

const nudge = (point: Vec3, axis: number): Vec3 => point.map((x, i) => (i === axis ? x + STEP : x)) as unknown as Vec3;

function addSquare(covariance: Covariance, vector: Float64Array, at: number, size: number): void {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      covariance[size * i + j] =
        (covariance[size * i + j] as number) + (vector[at + i] as number) * (vector[at + j] as number);
    }
  }
}

function changeBetween(model: UnitModel, from: readonly Settings[], to: readonly Settings[]): Float64Array | undefined {
  const a = new Float64Array(ANGLES * model.sides.length);
  const b = new Float64Array(a.length);
  if (!model.angles(model.parameters(from), a) || !model.angles(model.parameters(to), b)) return undefined;
  return b.map((value, k) => value - (a[k] as number));
}

function changeBy(model: UnitModel, at: readonly Settings[], change: Change): Float64Array | undefined {
  const a = new Float64Array(ANGLES * model.sides.length);
  const b = new Float64Array(a.length);
  if (!model.angles(model.parameters(at), a)) return undefined;
  const params = model.parameters(at);
  applyChange(params, change);
  if (!model.angles(params, b)) return undefined;
  return b.map((value, k) => value - (a[k] as number));
}
