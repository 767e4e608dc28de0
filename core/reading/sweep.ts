/**
 * Caster and SAI from a steering sweep. The steering axis k ∝ (−tan τ, −tan σ, 1) stays put while the wheel turns about
 * it, so a line that is fixed in the wheel keeps its angle to k. For the spin axis that is: sin γ + cos γ (tan σ cos δ −
 * tan τ sin δ) is constant (γ camber as a gauge reads it, δ turntable angle, + out). Exact, also at large camber.
 */
import { cos, degrees, type Radians, radians, sin } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';

export interface CasterSweep {
  /** Camber with the wheel turned out by `steer`, degrees. */
  readonly camberOut: number;
  /** Camber with it turned in by `steer`, degrees. */
  readonly camberIn: number;
  /** Turntable angle each way, degrees. */
  readonly steer: number;
  /** SAI if known, degrees: left out (taken as 0) it costs less than 0.01° of caster on a car. */
  readonly sai?: number;
}

/**
 * Caster, degrees, + top to the rear, by the exact rule for a fixed axis at the head of this file.
 * @throws InputError naming the field that is not within its limits.
 */
export function casterFromSweep({ camberOut, camberIn, steer, sai = 0 }: CasterSweep): number {
  const [out, inn] = [angle('camberOut', camberOut, 30), angle('camberIn', camberIn, 30)];
  const turn = steerAngle(steer);
  const lean = tan(angle('sai', sai, 45));
  return arctan((sin(out) - sin(inn) + lean * cos(turn) * (cos(out) - cos(inn))) / (sin(turn) * (cos(out) + cos(inn))));
}

export interface SaiSweep {
  /** Wheel's roll about its spin axis, brake held, turned out by `steer`: + when the front of the wheel rises; degrees. */
  readonly rollOut: number;
  /** The same turned in. */
  readonly rollIn: number;
  readonly steer: number;
  /** Cambers at the two ends and caster, degrees: with all three the result is exact, else they count as 0. */
  readonly camberOut?: number;
  readonly camberIn?: number;
  readonly caster?: number;
}

/**
 * SAI, degrees, by the same rule for the wheel's forward line. Without camber and caster it reduces to
 * (sin ρ_out − sin ρ_in)/(sin δ (cos ρ_out + cos ρ_in)), which is Δroll/(2 sin δ) for small angles.
 * @throws InputError naming the field that is not within its limits.
 */
export function saiFromSweep({ rollOut, rollIn, steer, camberOut = 0, camberIn = 0, caster = 0 }: SaiSweep): number {
  const [ro, ri] = [angle('rollOut', rollOut, 45), angle('rollIn', rollIn, 45)];
  const [go, gi] = [angle('camberOut', camberOut, 30), angle('camberIn', camberIn, 30)];
  const turn = steerAngle(steer);
  const [s, c, t] = [sin(turn), cos(turn), tan(angle('caster', caster, 45))];
  const rise = sin(ro) * cos(go) - sin(ri) * cos(gi);
  const trail = t * (c * (cos(ri) - cos(ro)) + s * (sin(ro) * sin(go) + sin(ri) * sin(gi)));
  return arctan((rise + trail) / (s * (cos(ro) + cos(ri)) + c * (sin(ro) * sin(go) - sin(ri) * sin(gi))));
}

const tan = (a: Radians): number => sin(a) / cos(a);
const arctan = (ratio: number): number => degrees(Math.atan(ratio) as Radians);

function angle(field: string, value: number, limit: number): Radians {
  if (!(Math.abs(value) <= limit))
    throw new InputError(field, value, { is: 'place', on: 'degrees', low: -limit, high: limit });
  return radians(value);
}

function steerAngle(steer: number): Radians {
  const [low, high] = [5, 45];
  if (!(steer >= low && steer <= high)) throw new InputError('steer', steer, { is: 'steer', low, high });
  return radians(steer);
}
