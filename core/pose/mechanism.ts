/**
 * What is solved together, compiled: one corner, or the two corners of a rigid axle, its knuckles one after the other.
 * Positions of its adjusters in, angles of its wheels out. A corner's settings, options and answers are in its own frame.
 * Long, as angles and poses share one solve and what it leaves behind.
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind, Effect } from '../adjuster/kind.ts';
import type { Side } from '../adjuster/of-corner.ts';
import type { Adjuster, CornerPose, NoPose, Position, Settings, Suspension, Vec3, Verdict } from '../contract.ts';
import { asin, degrees } from '../geometry/angle.ts';
import { sub } from '../geometry/vector.ts';
import { camberOf, casterOf, saiOf, spinAxis, toeOf } from '../geometry/wheel-angles.ts';
import { InputError } from '../input-error.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { applyChange, type Change, changeOf, tiltLine } from './change.ts';
import { gradientOf } from './gradient.ts';
import { carryEnd } from './knuckles.ts';
import { compile, kindOf, type Linkage } from './linkage.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, hasBody, numbersOf, TOE } from './numbers.ts';
import type { PoseSolver } from './solver.ts';
import { ADD_CAMBER, ADD_CASTER, ADD_TOE, SPIN_CAMBER, SPIN_TOE, turned, type Wheel } from './wheel.ts';

export { ANGLES_A_WHEEL, CAMBER, CASTER, TOE } from './numbers.ts';

/** What is not held while a pose is solved, mm. */
export interface PoseOptions {
  /** Bump of the wheel centre against the body, mm, + up; of an axle with a drag link that of the whole axle. */
  readonly travel?: number;
  /** How far the steering rack has pushed this corner's tie rod outboard, mm. */
  readonly rack?: number;
}

/**
 * Angles of an assembly's wheels, degrees, at the places CAMBER, CASTER, TOE of each; caster stays 0 without steering
 * axis. Of an axle on links how it has gone against its reference comes after them: degrees of pitch, mm sideways.
 */
export type Angles = Float64Array;
export interface Fitted {
  readonly adjuster: Adjuster;
  readonly kind: AdjusterKind;
  /** What the reference does: effects are relative to it. */
  readonly zero: Effect;
  /** What positions change, as far as they were asked for. */
  readonly known: Map<Position, Change>;
}

export interface MechanismPose {
  readonly reachable: true;
  readonly corners: readonly CornerPose[];
  /** How the body that carries the wheels has gone against its reference. */
  readonly body: BodyPose;
}

export interface BodyPose {
  /** Degrees that it has pitched; + its nose is up. */
  readonly pitch: number;
  /** mm that its origin (on an axle the middle between the wheel centres) has gone outboard on the left. */
  readonly lateral: number;
}

/** One corner of an assembly while the others stay where they are. */
export interface CornerModel {
  readonly kind: SuspensionKind;
  readonly pose: (settings: Settings, options?: PoseOptions) => CornerPose | NoPose;
  /** All corners that it moves with. */
  readonly all: (settings: Settings) => MechanismPose | NoPose;
}

export class Mechanism {
  readonly linkage: Linkage;
  /** How many numbers `angles` writes. */
  readonly numbers: number;
  readonly #hasBody: boolean;
  readonly #spins: readonly Vec3[];
  readonly #axis: Float64Array = new Float64Array(3);
  readonly #world: Float64Array = new Float64Array(3);
  /** The solver of the last body that was solved, or could not be. */
  #last: PoseSolver | undefined;

  /**
   * @param sides one corner, or the left and the right one of a rigid axle
   * @param field where the (left) suspension stands in what was given, for messages
   */
  constructor(
    readonly sides: readonly Side[],
    field = 'suspension',
  ) {
    this.linkage = compile(
      sides.map(({ suspension }) => suspension),
      field,
    );
    this.numbers = numbersOf(sides);
    this.#hasBody = hasBody(sides);
    this.#spins = sides.map(({ suspension }) => spinAxis(suspension.camber, suspension.toe));
  }

  /** Adjusters by id, a side each. Made when first asked for: of many a mechanism only the points are. */
  get fitted(): readonly ReadonlyMap<string, Fitted>[] {
    this.#fitted ??= this.sides.map(fittedOf);
    return this.#fitted;
  }
  #fitted: readonly ReadonlyMap<string, Fitted>[] | undefined;

  /** The assembly of a corner that is asked about alone: the other end of its rigid axle is its mirror, at the reference. */
  static ofCorner(suspension: Suspension, adjusters: readonly Adjuster[], field?: string): Mechanism {
    const other = kindOf(suspension, field).rigidAxle ? [{ suspension, adjusters: [] }] : [];
    return new Mechanism([{ suspension, adjusters }, ...other], field);
  }

  /** The same with its points elsewhere, or its adjusters as they truly are: what positions change as before is not worked out anew. */
  moved(sides: readonly Side[]): Mechanism {
    const other = new Mechanism(sides);
    other.#fitted = sides.map((side, i) => {
      const { adjusters } = this.sides[i]!;
      const isSame = side.adjusters === adjusters && adjusters.every(({ kind }) => !adjusterKinds[kind]!.byPoints);
      return isSame ? this.fitted[i]! : fittedOf(side);
    });
    return other;
  }

  /** One corner, the others at `others`, by default their references. */
  corner(side = 0, others?: readonly Settings[]): CornerModel {
    const all = (settings: Settings, options: PoseOptions = {}) =>
      this.pose(
        this.sides.map((_, i) => (i === side ? settings : (others?.[i] ?? {}))),
        this.sides.map((_, i) => (i === side ? options : {})),
      );
    return {
      kind: this.linkage.kind,
      pose: (settings, options) => {
        const posed = all(settings, options);
        return posed.reachable ? posed.corners[side]! : posed;
      },
      all,
    };
  }

  /** What an adjuster of a side changes at a position, relative to its reference. */
  change(side: number, id: string, position: Position): Change {
    const { adjuster, kind, zero, known } = this.fitted[side]!.get(id)!;
    let change = known.get(position);
    if (!change) {
      const wheel = this.linkage.wheels[side]!;
      change = changeOf(wheel, kind.effect(adjuster, position, wheel.suspension), zero);
      known.set(position, change);
    }
    return change;
  }

  /** Parameters at these positions, side by side, the caller's own; an adjuster that is absent stands at its reference. */
  parameters(settings: readonly Settings[], options: readonly PoseOptions[] = []): Float64Array {
    const params = this.linkage.reference.slice();
    this.linkage.wheels.forEach((wheel, side) => {
      for (const [id, position] of Object.entries(settings[side] ?? {})) {
        applyChange(params, this.change(side, id, position));
      }
      const { travel = 0, rack = 0 } = options[side] ?? {};
      const { height } = wheel;
      if (travel && height !== undefined) params[height]! += travel;
      if (rack) this.#steer(wheel, params, rack);
    });
    const { crossRod } = this.linkage;
    // The axle goes up with both wheels, and leaves the steering box behind, which is on the car.
    if (crossRod) params[crossRod.box + 2]! -= options.find((one) => one.travel)?.travel ?? 0;
    return params;
  }

  #steer({ slots, outboard }: Wheel, params: Float64Array, rack: number): void {
    const { kind } = this.linkage;
    if (!kind.rack) {
      throw new InputError('options.rack', rack, { is: 'absent', why: 'no-rack', suspension: kind.name });
    }
    applyChange(params, {
      at: slots.get(kind.rack)!.map((slot) => slot + 1),
      by: slots.get(kind.rack)!.map(() => outboard * rack),
    });
  }

  /**
   * Solves for the parameters and writes the angles; false if no pose exists. The planner's inner loop.
   * @param near where the one body of a mechanism stood that is much the same: see `stands`
   */
  angles(params: Float64Array, out: Angles, near?: Float64Array): boolean {
    const { bodies, wheels, reference } = this.linkage;
    for (let w = 0; w < wheels.length; w++) tiltLine(wheels[w]!, reference, params);
    if (!this.#solve(params, near)) return false;
    for (let w = 0; w < wheels.length; w++) {
      const wheel = wheels[w]!;
      const { angles, outboard } = wheel;
      const r = bodies[wheel.body]!.solver?.rotation ?? UPRIGHT;
      const spin = this.#spinAt(w, params);
      const sx = spin[0];
      const sy = outboard * spin[1];
      const sz = spin[2];
      const x = r[0]! * sx + r[1]! * sy + r[2]! * sz;
      const y = outboard * (r[3]! * sx + r[4]! * sy + r[5]! * sz);
      const z = r[6]! * sx + r[7]! * sy + r[8]! * sz;
      const axis = this.#axis;
      const caster = this.#steeringAxis(wheel, params) ? casterOf([axis[0]!, 0, axis[2]!]) : 0;
      // A sum with 0 turns −0 into 0.
      out[ANGLES_A_WHEEL * w + CAMBER] = camberOf([x, y, z]) + params[angles + ADD_CAMBER]!;
      out[ANGLES_A_WHEEL * w + CASTER] = caster + params[angles + ADD_CASTER]!;
      out[ANGLES_A_WHEEL * w + TOE] = toeOf([x, y, z]) + params[angles + ADD_TOE]!;
    }
    if (this.#hasBody) {
      const { pitch, lateral } = this.#bodyPose(params);
      out[ANGLES_A_WHEEL * wheels.length] = pitch;
      out[ANGLES_A_WHEEL * wheels.length + 1] = lateral;
    }
    return true;
  }

  /**
   * Number by number what each gains by each parameter, right after `angles` has found a pose for these; nothing where the
   * rows do not hold a body there.
   */
  gradient(params: Float64Array): Float64Array | undefined {
    return gradientOf(this.linkage, this.numbers, params);
  }

  /** Where the body stood in the last solve, of a mechanism that has one. */
  stands(): Float64Array | undefined {
    return this.linkage.crossRod ? undefined : this.linkage.bodies[0]!.solver?.pose.slice();
  }

  /** Body by body; what hangs on another comes after it. */
  #solve(params: Float64Array, near?: Float64Array): boolean {
    const { bodies, crossRod } = this.linkage;
    const solver = bodies[crossRod?.first ?? 0]!.solver;
    this.#last = solver;
    if (solver && !solver.solve(params, crossRod ? undefined : near)) return false;
    if (!crossRod || !solver) return true;
    carryEnd(crossRod, solver, params);
    this.#last = bodies[1 - crossRod.first]!.solver!;
    return this.#last.solve(params);
  }

  /** The spin axis in the upright; trigonometry only where a wedge has turned it. */
  #spinAt(side: number, params: Float64Array): Vec3 {
    const { angles, suspension } = this.linkage.wheels[side]!;
    const camber = params[angles + SPIN_CAMBER]!;
    const toe = params[angles + SPIN_TOE]!;
    if (camber === 0 && toe === 0) return this.#spins[side]!;
    return spinAxis(suspension.camber + camber, suspension.toe + toe);
  }

  #steeringAxis(wheel: Wheel, params: Float64Array): boolean {
    const ends = this.linkage.kind.steeringAxis;
    if (!ends) return false;
    const axis = this.#axis;
    this.#place(wheel, ends[0], params, axis);
    this.#place(wheel, ends[1], params, this.#world);
    for (let i = 0; i < 3; i++) axis[i] = this.#world[i]! - axis[i]!;
    return true;
  }

  /** Where a point of a corner is now, mm, in its corner frame. */
  #place(wheel: Wheel, name: string, params: Float64Array, out: Float64Array) {
    const { slots, onUpright, suspension, outboard } = wheel;
    const { solver, home } = this.linkage.bodies[wheel.elsewhere?.get(name) ?? wheel.body]!;
    const at = slots.get(name)?.[0];
    if (at !== undefined && !onUpright.has(name)) {
      for (let i = 0; i < 3; i++) out[i] = params[at + i]!;
    } else {
      const arm = at === undefined ? sub(turned(suspension.points[name]!, outboard), home) : undefined;
      const x = arm ? arm[0] : params[at!]!;
      const y = arm ? arm[1] : params[at! + 1]!;
      const z = arm ? arm[2] : params[at! + 2]!;
      const r = solver?.rotation ?? UPRIGHT;
      for (let i = 0; i < 3; i++) {
        out[i] = (solver ? solver.pose[i] : home[i])! + r[3 * i]! * x + r[3 * i + 1]! * y + r[3 * i + 2]! * z;
      }
    }
    out[1] = outboard * out[1]!;
  }

  /** The whole pose at these positions, side by side, or that there is none. */
  pose(settings: readonly Settings[], options: readonly PoseOptions[] = []): MechanismPose | NoPose {
    const { wheels } = this.linkage;
    const params = this.parameters(settings, options);
    const out = new Float64Array(this.numbers);
    const converged = this.angles(params, out);
    const verdict = this.#last?.verdict(converged) ?? FIXED;
    if (!converged) {
      const at = settings.flatMap((own) => Object.entries(own).map(([adjuster, position]) => ({ adjuster, position })));
      return { reachable: false, at, verdict };
    }
    const corners = wheels.map((wheel, w) => {
      const angles = out.subarray(ANGLES_A_WHEEL * w, ANGLES_A_WHEEL * (w + 1));
      return this.#cornerPose(wheel, params, angles, options[w]?.travel ?? 0, verdict);
    });
    return { reachable: true, corners, body: this.#bodyPose(params) };
  }

  /** Right after a solve, whose answer the solver holds. */
  #bodyPose(params: Float64Array): BodyPose {
    const { bodies, crossRod, origin } = this.linkage;
    const { solver, home } = bodies[0]!;
    // The knuckles turn on the axle, which stays.
    if (!solver || crossRod) return { pitch: 0, lateral: 0 };
    const from = origin === undefined ? home[1] : params[origin + 1]!;
    return { pitch: degrees(asin(solver.rotation[6]!)), lateral: solver.pose[1]! - from };
  }

  #cornerPose(wheel: Wheel, params: Float64Array, out: Angles, travel: number, verdict: Verdict): CornerPose {
    const { kind } = this.linkage;
    // A wheel on a rigid axle is lifted with all that carries it.
    const lift = kind.height ? 0 : travel;
    const points: Record<string, Vec3> = {};
    for (const name of kind.points) {
      if (!(name in wheel.suspension.points) || !isHeld(wheel, kind, name)) continue;
      this.#place(wheel, name, params, this.#world);
      points[name] = [this.#world[0]!, this.#world[1]!, this.#world[2]! + lift];
    }
    const camber = out[CAMBER]!;
    const base = { reachable: true, camber, toe: out[TOE]! } as const;
    const rest = { ...(points.wheelCentre && { wheelCentre: points.wheelCentre }), points, verdict };
    const caster = out[CASTER]!;
    if (!this.#steeringAxis(wheel, params)) {
      // Without a steering axis caster is what a chart adds; a chart alone knows nothing else of it.
      return { ...base, ...(caster !== 0 || kind.points.length === 0 ? { caster } : {}), ...rest };
    }
    const sai = saiOf([this.#axis[0]!, this.#axis[1]!, this.#axis[2]!]);
    return { ...base, caster, sai, includedAngle: sai + camber, ...rest };
  }
}

function fittedOf({ suspension, adjusters }: Side): ReadonlyMap<string, Fitted> {
  return new Map(
    adjusters.map((adjuster) => {
      const kind = adjusterKinds[adjuster.kind]!;
      const zero = kind.effect(adjuster, adjuster.reference, suspension);
      return [adjuster.id, { adjuster, kind, zero, known: new Map() }];
    }),
  );
}

/** What an axle has once is shown with its left side. */
const isHeld = ({ outboard }: Wheel, { rigidAxle }: SuspensionKind, name: string): boolean =>
  outboard === 1 || !rigidAxle?.once.includes(name);

/** Rotation of a wheel that is fixed to what carries it. */
const UPRIGHT: readonly number[] = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const FIXED: Verdict = { converged: true, residual: 0, iterations: 0, reason: 'ok' };
