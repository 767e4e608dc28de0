/** What the app should show: the core's answer for the same car file, asked as the app asks. */

import type { PlanRequestOptions } from '../../core/ask/plan-request.ts';
import type { Car, CarFile, CarSettings, Moved, Plan, PlanRequest, Reading, Spec } from '../../core/contract.ts';
import { planMoves, planRequest } from '../../core/index.ts';

interface Round {
  readonly car: Car;
  readonly spec: Spec;
  readonly reading: Reading;
  readonly settings: CarSettings;
  readonly moved?: readonly Moved[];
}

/** As it is taken down where nobody says otherwise: front toe against the thrust line, where there is one. */
export const takenDown = (reading: Reading): Reading =>
  reading.LR?.toe === undefined || reading.RR?.toe === undefined
    ? reading
    : { toeReference: 'thrust-line', ...reading };

export function asked(
  { car, spec, reading, settings, moved = [] }: Round,
  options: PlanRequestOptions = {},
): PlanRequest {
  const rounds = [{ reading: takenDown(reading), settings, moved }];
  const visits = [{ id: 'visit', carId: car.id, opened: '2026-01-01T08:00:00Z', rounds }];
  const file: CarFile = { format: 'cornerwright', version: 1, car, spec, visits };
  // What a rack shows live where nobody has said so.
  return planRequest(file, { style: 'practical', live: ['camber', 'toe'], ...options });
}

export const planned = (round: Round, options?: PlanRequestOptions): Plan => planMoves(asked(round, options));
