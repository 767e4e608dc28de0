/** One corner, compiled: positions of its adjusters in, angles of its wheel out. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind, Effect } from '../adjuster/kind.ts';
import type { Adjuster, CornerPose, Position, Settings, Suspension, Unreachable, Vec3, Verdict } from '../contract.ts';
import { sub } from '../geometry/vector.ts';
import { camberOf, casterOf, saiOf, spinAxis, toeOf } from '../geometry/wheel-angles.ts';
import { InputError } from '../input-error.ts';
import {
  ADD_CAMBER,
  ADD_CASTER,
  ADD_TOE,
  applyChange,
  type Change,
  changeOf,
  compile,
  type Linkage,
  SPIN_CAMBER,
  SPIN_TOE,
  tiltLine,
  without,
} from './linkage.ts';

export interface PoseOptions {
  /** Bump of the wheel centre against the body, mm, + up. */
  readonly travel?: number;
  /** How far the steering rack has pushed this corner's tie rod outboard, mm. */
  readonly rack?: number;
}

/** Angles of a wheel, degrees, at the places CAMBER, CASTER, TOE; caster stays 0 where the kind has no steering axis. */
export type Angles = Float64Array;
export const CAMBER = 0;
export const CASTER = 1;
export const TOE = 2;

interface Fitted {
  readonly adjuster: Adjuster;
  readonly kind: AdjusterKind;
  /** What the reference does: effects are relative to it. */
  readonly zero: Effect;
}

export class CornerModel {
  readonly linkage: Linkage;
  readonly fitted: ReadonlyMap<string, Fitted>;
  readonly #params: Float64Array;
  readonly #spin: Vec3;
  readonly #axis: Float64Array = new Float64Array(3);
  readonly #world: Float64Array = new Float64Array(3);

  /** Takes a validated suspension and adjusters; `field` is where they stand, for messages. */
  constructor(
    readonly suspension: Suspension,
    adjusters: readonly Adjuster[],
    field = 'suspension',
  ) {
    this.linkage = compile(suspension, field);
    this.#params = new Float64Array(this.linkage.reference.length);
    this.#spin = spinAxis(suspension.camber, suspension.toe);
    this.fitted = new Map(
      adjusters.map((adjuster) => {
        const kind = adjusterKinds[adjuster.kind] as AdjusterKind;
        return [adjuster.id, { adjuster, kind, zero: kind.effect(adjuster, adjuster.reference, suspension) }];
      }),
    );
  }

  /** What the adjuster at a position changes, relative to its reference. */
  change(id: string, position: Position): Change {
    const { adjuster, kind, zero } = this.fitted.get(id) as Fitted;
    return changeOf(this.linkage, without(kind.effect(adjuster, position, this.suspension), zero));
  }

  /** Parameters at these positions; an adjuster that is absent stands at its reference. */
  parameters(settings: Settings, options: PoseOptions = {}): Float64Array {
    const params = this.#params;
    params.set(this.linkage.reference);
    for (const [id, position] of Object.entries(settings)) applyChange(params, this.change(id, position));
    const { height } = this.linkage;
    if (options.travel && height !== undefined) params[height] = (params[height] as number) + options.travel;
    if (options.rack) this.#steer(params, options.rack);
    return params;
  }

  #steer(params: Float64Array, rack: number): void {
    const { kind, slots } = this.linkage;
    if (!kind.rack) throw new InputError('options.rack', rack, `absent: ${kind.name} has no steering rack`);
    applyChange(params, {
      at: (slots.get(kind.rack) as readonly number[]).map((slot) => slot + 1),
      by: (slots.get(kind.rack) as readonly number[]).map(() => rack),
    });
  }

  /** Solves for the parameters and writes the angles; false if no pose exists. The planner's inner loop. */
  angles(params: Float64Array, out: Angles): boolean {
    const { solver, angles } = this.linkage;
    tiltLine(this.linkage, params);
    if (solver && !solver.solve(params)) return false;
    const [sx, sy, sz] = this.#spinAt(params);
    const r = solver?.rotation ?? UPRIGHT;
    const x = (r[0] as number) * sx + (r[1] as number) * sy + (r[2] as number) * sz;
    const y = (r[3] as number) * sx + (r[4] as number) * sy + (r[5] as number) * sz;
    const z = (r[6] as number) * sx + (r[7] as number) * sy + (r[8] as number) * sz;
    const caster = this.#steeringAxis(params) ? casterOf([this.#axis[0] as number, 0, this.#axis[2] as number]) : 0;
    // A sum with 0 turns −0 into 0.
    out[CAMBER] = camberOf([x, y, z]) + (params[angles + ADD_CAMBER] as number);
    out[CASTER] = caster + (params[angles + ADD_CASTER] as number);
    out[TOE] = toeOf([x, y, z]) + (params[angles + ADD_TOE] as number);
    return true;
  }

  /** The spin axis in the upright; trigonometry only where a wedge has turned it. */
  #spinAt(params: Float64Array): Vec3 {
    const camber = params[this.linkage.angles + SPIN_CAMBER] as number;
    const toe = params[this.linkage.angles + SPIN_TOE] as number;
    if (camber === 0 && toe === 0) return this.#spin;
    return spinAxis(this.suspension.camber + camber, this.suspension.toe + toe);
  }

  #steeringAxis(params: Float64Array): boolean {
    const ends = this.linkage.kind.steeringAxis;
    if (!ends) return false;
    const axis = this.#axis;
    this.#place(ends[0], params, axis);
    this.#place(ends[1], params, this.#world);
    for (let i = 0; i < 3; i++) axis[i] = (this.#world[i] as number) - (axis[i] as number);
    return true;
  }

  /** Where a point is now, mm. */
  #place(name: string, params: Float64Array, out: Float64Array): void {
    const { slots, onUpright, solver } = this.linkage;
    const at = slots.get(name)?.[0];
    if (at !== undefined && !onUpright.has(name)) {
      for (let i = 0; i < 3; i++) out[i] = params[at + i] as number;
      return;
    }
    const home = this.suspension.points.wheelCentre as Vec3;
    const arm = at === undefined ? sub(this.suspension.points[name] as Vec3, home) : undefined;
    const x = arm ? arm[0] : (params[at as number] as number);
    const y = arm ? arm[1] : (params[(at as number) + 1] as number);
    const z = arm ? arm[2] : (params[(at as number) + 2] as number);
    const r = solver?.rotation ?? UPRIGHT;
    for (let i = 0; i < 3; i++) {
      out[i] =
        ((solver ? solver.pose[i] : home[i]) as number) +
        (r[3 * i] as number) * x +
        (r[3 * i + 1] as number) * y +
        (r[3 * i + 2] as number) * z;
    }
  }

  /** The whole pose at these positions, or that there is none. */
  pose(settings: Settings, options: PoseOptions = {}): CornerPose | Unreachable {
    const { kind, solver } = this.linkage;
    const params = this.parameters(settings, options);
    const out = new Float64Array(3);
    const converged = this.angles(params, out);
    const verdict = solver?.verdict(converged) ?? FIXED;
    if (!converged) {
      const where = Object.entries(settings).map(([id, position]) => `${id} at ${position}`);
      const message = `No position of the wheel satisfies the links${where.length ? ` with ${where.join(', ')}` : ''}: an arm cannot reach.`;
      return { reachable: false, message, verdict };
    }
    // A wheel on a rigid axle is lifted with all that carries it.
    const lift = kind.height ? 0 : (options.travel ?? 0);
    const points: Record<string, Vec3> = {};
    for (const name of kind.points) {
      this.#place(name, params, this.#world);
      points[name] = [this.#world[0] as number, this.#world[1] as number, (this.#world[2] as number) + lift];
    }
    const camber = out[CAMBER] as number;
    const base = { reachable: true, camber, toe: out[TOE] as number } as const;
    const rest = { ...(points.wheelCentre && { wheelCentre: points.wheelCentre }), points, verdict };
    const caster = out[CASTER] as number;
    if (!this.#steeringAxis(params)) {
      // Without a steering axis caster is what a chart adds; a chart alone knows nothing else of it.
      return { ...base, ...(caster !== 0 || kind.points.length === 0 ? { caster } : {}), ...rest };
    }
    const sai = saiOf([this.#axis[0] as number, this.#axis[1] as number, this.#axis[2] as number]);
    return { ...base, caster, sai, includedAngle: sai + camber, ...rest };
  }
}

/** Rotation of a wheel that is fixed to what carries it. */
const UPRIGHT: readonly number[] = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const FIXED: Verdict = { converged: true, residual: 0, iterations: 0, reason: 'ok' };
