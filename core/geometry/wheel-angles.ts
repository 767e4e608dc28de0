/**
 * Signs, in the corner frame (x forward, y outboard, z up): camber + top leans out, toe + in, caster + top leans
 * to the rear, SAI + top leans inboard. ISO 8855:2011 names the axes; the gauge's camber is the wheel's tilt from
 * the vertical, which is what −asin(s.z) is.
 */
import type { Vec3 } from '../contract.ts';
import { asin, atan2, cos, degrees, radians, sin } from './angle.ts';
import { normalised } from './vector.ts';

/** Unit spin axis, pointing outboard, of a wheel at `camber` and `toe`, degrees. */
export function spinAxis(camber: number, toe: number): Vec3 {
  const c = radians(camber);
  const t = radians(toe);
  return [cos(c) * sin(t), cos(c) * cos(t), -sin(c)];
}

/** Camber, degrees, of a unit spin axis. */
export const camberOf = (spin: Vec3): number => degrees(asin(-spin[2]));
/** Toe, degrees, of a spin axis. */
export const toeOf = (spin: Vec3): number => degrees(atan2(spin[0], spin[1]));
/** Caster, degrees, of a steering axis that points from its lower to its upper end. */
export const casterOf = (axis: Vec3): number => degrees(atan2(-axis[0], axis[2]));
/** Steering-axis inclination, degrees, of a steering axis that points from its lower to its upper end. */
export const saiOf = (axis: Vec3): number => degrees(atan2(-axis[1], axis[2]));

/** Unit steering axis, lower to upper, at `caster` and `sai`, degrees, both projected. */
export function steeringAxis(caster: number, sai: number): Vec3 {
  return normalised([-Math.tan(radians(caster)), -Math.tan(radians(sai)), 1]);
}
