/**
 * From a car file straight to an answer: the one way of the app and of the terminal. The file and what is asked beside it
 * are checked here, once; what answers trusts them.
 */
import type { CarFile, CarSettings, Corner, Plan } from '../contract.ts';
import { choicesOf, type PlanChoice } from '../plan/choices.ts';
import type { Reach } from '../plan/reach/reach.ts';
import { planned } from './plan-moves.ts';
import { type PlanRequestOptions, planRequest } from './plan-request.ts';
import { reachIn } from './reach-of.ts';
import { freed, type Stuck } from './what-would-free.ts';

/**
 * The plan of a car file's last round: as `planMoves` of its `planRequest`.
 * @param file a car file
 * @param options what is asked beside what it says, as in a request
 * @throws InputError naming the field, the value and what is allowed
 */
export const planOfFile = (file: CarFile, options?: PlanRequestOptions): Plan => planned(planRequest(file, options));

/**
 * The plans worth choosing among: as `planChoices` of its `planRequest`.
 * @throws InputError naming the field, the value and what is allowed
 */
export const choicesOfFile = (file: CarFile, options?: PlanRequestOptions): PlanChoice[] =>
  choicesOf(planRequest(file, options));

/**
 * What would let its windows be met: as `whatWouldFree` of its `planRequest`.
 * @throws InputError naming the field, the value and what is allowed
 */
export const whatWouldFreeOfFile = (file: CarFile, options?: PlanRequestOptions): Stuck[] =>
  freed(planRequest(file, options));

/**
 * Everywhere that a corner's adjusters can put its wheel: as `reachOf` of its `planRequest`.
 * @throws InputError naming the field, the value and what is allowed
 */
export const reachOfFile = (
  file: CarFile,
  options: PlanRequestOptions | undefined,
  corner: Corner,
  to?: CarSettings,
): Reach => reachIn(planRequest(file, options), corner, to);
