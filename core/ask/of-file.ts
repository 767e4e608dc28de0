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

/** As `planMoves`. @throws InputError naming the field, the value and what is allowed */
export const planOfFile = (file: CarFile, options?: PlanRequestOptions): Plan => planned(planRequest(file, options));

/** As `planChoices`. @throws InputError naming the field, the value and what is allowed */
export const choicesOfFile = (file: CarFile, options?: PlanRequestOptions): PlanChoice[] =>
  choicesOf(planRequest(file, options));

/** As `whatWouldFree`. @throws InputError naming the field, the value and what is allowed */
export const whatWouldFreeOfFile = (file: CarFile, options?: PlanRequestOptions): Stuck[] =>
  freed(planRequest(file, options));

/** As `reachOf`. @throws InputError naming the field, the value and what is allowed */
export const reachOfFile = (
  file: CarFile,
  options: PlanRequestOptions | undefined,
  corner: Corner,
  to?: CarSettings,
): Reach => reachIn(planRequest(file, options), corner, to);
