/** What is wished beyond the windows that were typed: a steering wheel that stays straight. */
import type { AxleSpec, Reading, Spec } from '../contract.ts';
import { angleOf } from '../reading/axle-angles.ts';

/**
 * A spec that gives total toe alone leaves open which wheel has it, and the planner would turn both out of reason for a
 * hair's breadth of total. With the steering wheel clamped straight each front wheel takes half of it: a wish for
 * steer-ahead, that counts as a window half as wide as the total's would. So does the thrust angle, or as wide as it is
 * found. Nobody typed it: it decides among what the windows leave open, is no window and costs no chance.
 */
export function straightness(spec: Spec, reading: Reading): Spec | undefined {
  const thrust = Math.abs(angleOf(reading, 'rear', 'thrustAngle') ?? 0);
  const [front, rear] = [halves(spec.front, 0), halves(spec.rear, thrust)];
  return front || rear ? { ...(front && { front }), ...(rear && { rear }) } : undefined;
}

function halves(axle: AxleSpec | undefined, found: number): AxleSpec | undefined {
  if (!axle?.totalToe || axle.toe || axle.left?.toe || axle.right?.toe || axle.thrustAngle) return undefined;
  const half = Math.max((axle.totalToe.high - axle.totalToe.low) / 4, found);
  return { thrustAngle: { low: -half, aim: 0, high: half } };
}
