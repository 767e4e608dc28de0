/** What is wanted beyond the windows that were typed: a steering wheel that stays straight. */
import type { AxleSpec, Reading, Spec } from '../contract.ts';
import { angleOf } from '../reading/axle-angles.ts';

/**
 * A spec that gives total toe alone leaves open which wheel has it, and the planner would turn both out of reason for a
 * hair's breadth of total. With the steering wheel clamped straight each front wheel takes half of it: steer-ahead gets
 * a window as wide as half the total's. So does the thrust angle, or as wide as it is found: a window that nobody asked
 * for must not be the one that cannot be reached.
 */
export function withHalves(spec: Spec, reading: Reading): Spec {
  const thrust = Math.abs(angleOf(reading, 'rear', 'thrustAngle') ?? 0);
  return {
    ...spec,
    ...(spec.front ? { front: halved(spec.front, 0) } : {}),
    ...(spec.rear ? { rear: halved(spec.rear, thrust) } : {}),
  };
}

function halved(axle: AxleSpec, found: number): AxleSpec {
  if (!axle.totalToe || axle.toe || axle.left?.toe || axle.right?.toe || axle.thrustAngle) return axle;
  const half = Math.max((axle.totalToe.high - axle.totalToe.low) / 4, found);
  return { ...axle, thrustAngle: { low: -half, aim: 0, high: half } };
}
