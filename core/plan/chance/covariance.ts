/**
 * What is not known of an assembly, and how far it can put a planned change off: hard points that a tape gives to its
 * tolerance only, moves that are made to their own tolerance only, a gauge that does not repeat. Each unknown stands
 * for itself, one standard deviation of it at a time; the change of the angles is linear in it for as small an error
 * (checked in the tests against a Monte Carlo of the full model).
 */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Corner, Gauge, Position, Settings, Vec3 } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { applyChange, type Change, changeOf } from '../../pose/change.ts';
import { type Fitted, Mechanism } from '../../pose/mechanism.ts';
import { CAMBER, CASTER, hasBody, LATERAL, numbersOf, PITCH, TOE } from '../../pose/numbers.ts';
import { samePosition } from '../states/axis.ts';
import { placeAmong } from '../states/state-space.ts';

/** The most that a taped coordinate is off, ± mm, where nothing else is said. Trade practice, no source. */
export const DEFAULT_TOLERANCE = 5;

/** Where the difference for a derivative is taken, mm: far above rounding, far below curvature. */
const STEP = 0.5;
/** A tolerance says where 95 % lie. */
const SIGMAS = 2;

/** Covariance of (re-measured − predicted) of one assembly's angles, degrees², square, row by row. */
export type Covariance = Float64Array;

/** A coordinate that is `STEP` off, and its standard deviation. */
interface Nudged {
  readonly model: Mechanism;
  readonly sigma: number;
  /** Its angles at `from`; absent where it has no pose there. */
  readonly stood: Float64Array | undefined;
}

export class Uncertainty {
  /** Angles of the assembly, and of its body where that counts. */
  readonly size: number;
  readonly #byPoints: boolean;
  #coordinates: readonly Nudged[] | undefined;
  #stood: Float64Array | undefined;

  /** @param from where the adjusters stand, a side each */
  constructor(
    private readonly assembly: Assembly,
    private readonly from: readonly Settings[],
    private readonly gauge: Required<Gauge>,
  ) {
    this.size = numbersOf(assembly.sides);
    this.#byPoints = assembly.sides.some(({ adjusters }) =>
      adjusters.some(({ kind }) => adjusterKinds[kind]?.byPoints),
    );
  }

  /** How many coordinates are not known for certain. */
  get coordinates(): number {
    return this.#nudged().length;
  }

  /**
   * What one standard deviation of each coordinate adds to the change from `from` to `to`, degrees: the assembly's angles,
   * coordinate by coordinate. Nothing where no pose exists.
   */
  slopes(to: readonly Settings[]): Float64Array | undefined {
    const { model } = this.assembly;
    this.#stood ??= anglesAt(model, this.from);
    const stood = this.#stood;
    const goes = anglesAt(model, to);
    if (!stood || !goes) return undefined;
    // What the moves change is the same wherever the points are, for all kinds but a few: worked out once.
    const change = this.#byPoints ? undefined : subtract(model.parameters(to), model.linkage.reference);
    const nudged = this.#nudged();
    const slopes = new Float64Array(nudged.length * this.size);
    const room = { params: new Float64Array(model.linkage.reference.length), angles: new Float64Array(this.size) };
    nudged.forEach((one, p) => {
      const there = one.stood && (change ? anglesBy(one.model, change, room) : anglesAt(one.model, to));
      // Near the end of what the links allow a nudge may find no pose: as well known as the rest.
      if (!there) return;
      for (let k = 0; k < this.size; k++) {
        const gain = there[k]! - one.stood![k]!;
        const asGiven = goes[k]! - stood[k]!;
        slopes[p * this.size + k] = ((gain - asGiven) / STEP) * one.sigma;
      }
    });
    return slopes;
  }

  /** What one standard deviation of the move of one adjuster to a position adds, degrees; nothing where it stays. */
  errors(side: number, id: string, position: Position): Float64Array[] {
    const { model } = this.assembly;
    const { adjuster, kind } = this.#fitted(side, id);
    const stood = this.#standing(side, id);
    if (samePosition(position, stood)) return [];
    const { tolerance } = kind;
    const by = ((adjuster.tolerance as number | undefined) ?? tolerance.usual) / SIGMAS;
    if (by === 0) return [];
    const at = this.from.map((settings, i) => (i === side ? { ...settings, [id]: position } : settings));
    if (!tolerance.error) {
      const beyond = at.map((settings, i) =>
        i === side ? { ...settings, [id]: tolerance.off?.(position, by) ?? (position as number) + by } : settings,
      );
      return gained(anglesAt(model, at), anglesAt(model, beyond));
    }
    const wheel = model.linkage.wheels[side]!;
    return tolerance
      .error(adjuster, stood, position, by)
      .flatMap((effect) => gained(anglesAt(model, at), anglesAt(model, at, changeOf(wheel, effect))));
  }

  #fitted(side: number, id: string): Fitted {
    return this.assembly.model.fitted[side]!.get(id)!;
  }

  #standing(side: number, id: string): Position {
    return this.from[side]?.[id] ?? this.#fitted(side, id).adjuster.reference;
  }

  /** Covariance of the error of what the rack shows after a change to `to`; twice the gauge, as it reads twice. */
  covariance(to: readonly Settings[]): Covariance {
    const key = JSON.stringify(to);
    const covariance = this.#covariances.get(key) ?? this.#covariance(to);
    this.#covariances.set(key, covariance);
    return covariance;
  }
  readonly #covariances = new Map<string, Covariance>();

  #covariance(to: readonly Settings[]): Covariance {
    const { size } = this;
    const covariance = new Float64Array(size * size);
    const { corners, sides } = this.assembly;
    const { gauge } = this;
    const put = (corner: Corner, angle: number, sigma: number): void => {
      covariance[placeAmong(corners, corner, angle) * (size + 1)] = 2 * sigma * sigma;
    };
    for (const corner of corners) {
      put(corner, CAMBER, gauge.camber);
      put(corner, CASTER, gauge.caster);
      put(corner, TOE, gauge.toe);
    }
    if (hasBody(sides)) {
      put(corners[0]!, PITCH, gauge.pinionAngle);
      put(corners[0]!, LATERAL, gauge.lateral);
    }
    const moved = to.flatMap((settings, side) =>
      Object.entries(settings)
        .filter(([id, position]) => !samePosition(position, this.#standing(side, id)))
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
    const { sides } = this.assembly;
    this.#coordinates ??= sides.flatMap(({ suspension }, s) => {
      const tolerance = suspension.tolerance ?? DEFAULT_TOLERANCE;
      if (tolerance === 0) return [];
      return Object.entries(suspension.points).flatMap(([name, point]) =>
        [0, 1, 2].map((axis): Nudged => {
          const points = { ...suspension.points, [name]: nudge(point, axis) };
          const elsewhere = sides.map((one, i) => (i === s ? { ...one, suspension: { ...suspension, points } } : one));
          const model = new Mechanism(elsewhere);
          return { model, sigma: tolerance / Math.sqrt(3), stood: anglesAt(model, this.from) };
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
      covariance[size * i + j]! += vector[at + i]! * vector[at + j]!;
    }
  }
}

/** An assembly's angles at these positions, with a further change if there is one; nothing where there is no pose. */
function anglesAt(model: Mechanism, at: readonly Settings[], further?: Change): Float64Array | undefined {
  const params = model.parameters(at);
  if (further) applyChange(params, further);
  return solved(model, params);
}

const subtract = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, i) => x - b[i]!);

/** What is written to, again and again. */
interface Room {
  readonly params: Float64Array;
  readonly angles: Float64Array;
}

/**
 * An assembly's angles with its parameters changed by so much; nothing where there is no pose. Plain loops, and no new
 * room: a plan asks for it thousands of times.
 */
function anglesBy(model: Mechanism, change: Float64Array, { params, angles }: Room): Float64Array | undefined {
  const { reference } = model.linkage;
  for (let i = 0; i < params.length; i++) params[i] = reference[i]! + change[i]!;
  return model.angles(params, angles) ? angles : undefined;
}

function solved(model: Mechanism, params: Float64Array): Float64Array | undefined {
  const angles = new Float64Array(model.numbers);
  return model.angles(params, angles) ? angles : undefined;
}

function gained(before: Float64Array | undefined, after: Float64Array | undefined): Float64Array[] {
  return before && after ? [after.map((value, k) => value - before[k]!)] : [];
}
