import { validateCarSettings } from '../check/adjusters.ts';
import type {
  AdjusterRef,
  AxleSpec,
  CarFile,
  Gauge,
  PlanRequest,
  PlanStyle,
  Reading,
  ShimCount,
  Spec,
} from '../contract.ts';
import { InputError } from '../input-error.ts';
import { asMeasured } from '../plan/as-measured.ts';
import { predictReading } from '../plan/predict.ts';
import { angleOf } from '../reading/axle-angles.ts';
import { latestRound, latestVisit, movedOn, seized } from '../records/rounds.ts';

export interface PlanRequestOptions {
  readonly style?: PlanStyle;
  readonly maxEffort?: number;
  readonly gauge?: Gauge;
  /** Not to be moved, beside those that would not move in this visit. */
  readonly locked?: readonly AdjusterRef[];
  /** Shims that lie ready; as in a request. */
  readonly drawer?: readonly ShimCount[];
}

/**
 * What to plan for a car file, the one way of the terminal and the app: the last round that holds of the last visit,
 * its settings moved on by what was done after it, and its reading predicted on by the same moves. The car is the one
 * that was found: its wheels lean as they were read (see as-measured.ts).
 * @throws InputError when the file (validated before) has no spec or no round
 */
export function planRequest(
  file: CarFile,
  { style, maxEffort, gauge, drawer, locked = [] }: PlanRequestOptions = {},
): PlanRequest {
  const { car, spec, visits = [] } = file;
  if (!spec) throw new InputError('spec', spec, 'windows for the front or the rear axle');
  const visit = latestVisit(visits);
  const round = visit && latestRound(visit);
  if (!visit || !round)
    throw new InputError('visits', visits, 'a visit with a round: a reading and the settings at it');
  const field = `visits[${visits.indexOf(visit)}].rounds[${visit.rounds.indexOf(round)}].settings`;
  const from = validateCarSettings(round.settings, car, field);
  const settings = validateCarSettings(movedOn(from, round.moved ?? []), car, field.replace(/settings$/, 'moved'));
  const found = asMeasured(car, round.reading, from);
  // A corner with no pose there has lost its angles: the plan lists them as unmeasured.
  const { unreachable: _, ...reading } = round.moved?.length
    ? predictReading(found, round.reading, from, settings)
    : round.reading;
  return {
    car: found,
    spec: withHalves(spec, reading),
    reading,
    settings,
    locked: [...locked, ...seized(visit)],
    ...(style ? { style } : {}),
    ...(maxEffort === undefined ? {} : { maxEffort }),
    ...(gauge ? { gauge } : {}),
    ...(drawer ? { drawer } : {}),
  };
}

/**
 * A spec that gives total toe alone leaves open which wheel has it, and the planner would turn both out of reason for a
 * hair's breadth of total. With the steering wheel clamped straight each front wheel takes half of it: steer-ahead gets
 * a window as wide as half the total's. So does the thrust angle, or as wide as it is found: a window that nobody asked
 * for must not be the one that cannot be reached.
 */
function withHalves(spec: Spec, reading: Reading): Spec {
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
