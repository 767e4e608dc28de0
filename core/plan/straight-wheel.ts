/** What is wished beyond the windows that were typed: a steering wheel that stands straight. */
import type { AxleSpec, PlanRequest, Reading, Spec } from '../contract.ts';
import { angleOf, thrustOf } from '../reading/axle-angles.ts';
import { aimed, windowFor } from '../reading/spec-terms.ts';
import { HARDLY_SEEN, levelled } from '../reading/steering-wheel.ts';

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

/**
 * A request whose steering wheel did not stand level while toe was read, as if it had been turned level first: all that is
 * planned and predicted is with it level. It is to stand level once the car rolls straight: steer-ahead, that no window
 * may ask for, is wished within what no driver minds, where the windows leave that open. Rods turned alike and opposite
 * do that and leave the total as it is.
 */
export function withWheelLevel(request: PlanRequest): PlanRequest {
  const { car, spec, wish } = request;
  const reading = levelled(request.reading, car);
  if (reading === request.reading) return request;
  if (spec.front?.thrustAngle || angleOf(reading, 'front', 'thrustAngle') === undefined) return { ...request, reading };
  const half = HARDLY_SEEN / car.steeringRatio!;
  const aim = aimOf(spec);
  const thrustAngle = { low: aim - half, aim, high: aim + half, assumed: true } as const;
  return { ...request, reading, wish: { ...wish, front: { ...wish?.front, thrustAngle } } };
}

/** Where the front wheels point with both on the aims of their own windows; without such straight ahead. */
function aimOf(spec: Spec): number {
  const [left, right] = [windowFor(spec, 'LF', 'toe'), windowFor(spec, 'RF', 'toe')];
  return left && right ? thrustOf(aimed(left).aim, aimed(right).aim) : 0;
}
