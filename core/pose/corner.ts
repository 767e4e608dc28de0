/** One corner, compiled: positions of its adjusters in, angles of its wheel out. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import type { Adjuster, CornerPose, Position, Settings, Suspension, Unreachable, Vec3 } from '../contract.ts';
import { camberOf, casterOf, saiOf, spinAxis, toeOf } from '../geometry/wheel-angles.ts';
import { InputError } from '../input-error.ts';
import { applyChange, type Change, changeOf, compile, type Linkage } from './linkage.ts';

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
  /** Takes the reference's own effect away, so that the effect is relative to it. */
  readonly zero: Change;
}

export class CornerModel {
  readonly linkage: Linkage;
  readonly fitted: ReadonlyMap<string, Fitted>;
  readonly hasCaster: boolean;
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
    this.hasCaster = this.linkage.kind.steeringAxis !== undefined;
    this.fitted = new Map(
      adjusters.map((adjuster) => {
        const kind = adjusterKinds[adjuster.kind] as AdjusterKind;
        const zero = changeOf(this.linkage, kind.effect(adjuster, adjuster.reference), -1);
        return [adjuster.id, { adjuster, kind, zero }];
      }),
    );
  }

  /** What the adjuster at a position changes, relative to its reference. */
  change(id: string, position: Position): Change {
    const { adjuster, kind, zero } = this.fitted.get(id) as Fitted;
    const there = changeOf(this.linkage, kind.effect(adjuster, position));
    return { at: [...zero.at, ...there.at], by: [...zero.by, ...there.by] };
  }

  /** Parameters at these positions; an adjuster that is absent stands at its reference. */
  parameters(settings: Settings, options: PoseOptions = {}): Float64Array {
    const params = this.#params;
    params.set(this.linkage.reference);
    for (const [id, position] of Object.entries(settings)) applyChange(params, this.change(id, position));
    if (options.travel) params[this.linkage.height] = (params[this.linkage.height] as number) + options.travel;
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
    const { solver } = this.linkage;
    if (!solver.solve(params)) return false;
    const r = solver.rotation;
    const [sx, sy, sz] = this.#spin;
    const x = (r[0] as number) * sx + (r[1] as number) * sy + (r[2] as number) * sz;
    const y = (r[3] as number) * sx + (r[4] as number) * sy + (r[5] as number) * sz;
    const z = (r[6] as number) * sx + (r[7] as number) * sy + (r[8] as number) * sz;
    // Adding 0 turns −0 into 0.
    out[CAMBER] = camberOf([x, y, z]) + 0;
    out[TOE] = toeOf([x, y, z]) + 0;
    if (this.#steeringAxis(params)) out[CASTER] = casterOf([this.#axis[0] as number, 0, this.#axis[2] as number]);
    else out[CASTER] = 0;
    return true;
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
    const at = (slots.get(name) as readonly number[])[0] as number;
    const x = params[at] as number;
    const y = params[at + 1] as number;
    const z = params[at + 2] as number;
    const r = solver.rotation;
    const upright = onUpright.has(name);
    for (let i = 0; i < 3; i++) {
      out[i] = upright
        ? (solver.pose[i] as number) +
          (r[3 * i] as number) * x +
          (r[3 * i + 1] as number) * y +
          (r[3 * i + 2] as number) * z
        : ([x, y, z][i] as number);
    }
  }

  /** The whole pose at these positions, or that there is none. */
  pose(settings: Settings, options: PoseOptions = {}): CornerPose | Unreachable {
    const params = this.parameters(settings, options);
    const out = new Float64Array(3);
    const converged = this.angles(params, out);
    const verdict = this.linkage.solver.verdict(converged);
    if (!converged) {
      const where = Object.entries(settings).map(([id, position]) => `${id} at ${position}`);
      const message = `No position of the wheel satisfies the links${where.length ? ` with ${where.join(', ')}` : ''}: an arm cannot reach.`;
      return { reachable: false, message, verdict };
    }
    const points: Record<string, Vec3> = {};
    for (const name of this.linkage.kind.points) {
      this.#place(name, params, this.#world);
      points[name] = [this.#world[0] as number, this.#world[1] as number, this.#world[2] as number];
    }
    const camber = out[CAMBER] as number;
    const base = { reachable: true, camber, toe: out[TOE] as number } as const;
    const rest = { wheelCentre: points.wheelCentre as Vec3, points, verdict };
    if (!this.#steeringAxis(params)) return { ...base, ...rest };
    const axis: Vec3 = [this.#axis[0] as number, this.#axis[1] as number, this.#axis[2] as number];
    const sai = saiOf(axis);
    return { ...base, caster: casterOf(axis), sai, includedAngle: sai + camber, ...rest };
  }
}
