import type { Vec3 } from '../../core/contract.ts';
import { cos, radians, sin } from '../../core/geometry/angle.ts';
import { add, cross, dot, scale } from '../../core/geometry/vector.ts';
import { camberOf, spinAxis, steeringAxis, toeOf } from '../../core/geometry/wheel-angles.ts';

/** `v` turned about the unit axis `k` by `angle` degrees, right-handed (Rodrigues' formula). */
function turnAbout(v: Vec3, k: Vec3, angle: number): Vec3 {
  const a = radians(angle);
  return add(add(scale(v, cos(a)), scale(cross(k, v), sin(a))), scale(k, dot(k, v) * (1 - cos(a))));
}

/**
 * Camber, degrees, of a wheel that is steered about its axis until it has turned by `steer` degrees on the
 * turntable (+ = the front of the wheel goes out, toe-out), from `camber` and `toe` straight ahead.
 */
export function camberSteered(
  axle: { readonly caster: number; readonly sai: number; readonly camber: number; readonly toe?: number },
  steer: number,
): number {
  const axis = steeringAxis(axle.caster, axle.sai);
  const spin = spinAxis(axle.camber, axle.toe ?? 0);
  const wanted = toeOf(spin) - steer;
  // The turn about a leaning axis differs slightly from the turn on the plate: what is missing is turned again and again.
  let angle = steer;
  let turned = turnAbout(spin, axis, angle);
  for (let i = 0; i < 20; i++) {
    const miss = toeOf(turned) - wanted;
    if (Math.abs(miss) < 1e-12) break;
    angle += miss;
    turned = turnAbout(spin, axis, angle);
  }
  return camberOf(turned);
}
