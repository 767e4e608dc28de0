/** What the app should show: the core's plan for the same car file, asked as the app asks. */
import type { Car, CarFile, CarSettings, Plan, Reading, Spec } from '../../core/contract.ts';
import { planMoves, planRequest } from '../../core/index.ts';
import type { PlanRequestOptions } from '../../core/records/plan-request.ts';

export function planned(
  { car, spec, reading, settings }: { car: Car; spec: Spec; reading: Reading; settings: CarSettings },
  options: PlanRequestOptions = {},
): Plan {
  const rounds = [{ reading, settings }];
  const visits = [{ id: 'visit', carId: car.id, opened: '2026-01-01T08:00:00Z', rounds }];
  const file: CarFile = { format: 'cornerwright', version: 1, car, spec, visits };
  return planMoves(planRequest(file, { style: 'surest', ...options }));
}
