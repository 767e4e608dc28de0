import type { CarFile } from '../contract.ts';
import { type FirstMove, firstMoveOf } from '../learn/first-move.ts';
import { planOf } from '../plan/plan.ts';
import { type PlanRequestOptions, planRequest } from './plan-request.ts';

/** What there is to measure before all moves of a plan are made. */
export interface MeasureBetween {
  /** Absent where it does not pay. */
  readonly first?: FirstMove;
}

/**
 * Whether to measure before all moves of a car file's plan are made: as `planMoves` of its `planRequest`, after which of its
 * jobs a reading would make the rest surer and by how much.
 * @throws InputError naming the field, the value and what is allowed
 */
export function measureBetween(file: CarFile, options: PlanRequestOptions = {}): MeasureBetween {
  const request = planRequest(file, options);
  const first = firstMoveOf(request, planOf(request));
  return { ...(first && { first }) };
}
