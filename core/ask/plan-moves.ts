import { validatePlanRequest } from '../check/request.ts';
import type { Plan, PlanRequest } from '../contract.ts';
import { choicesOf, type PlanChoice } from '../plan/choices.ts';
import { planOf } from '../plan/plan.ts';
import { planInWords } from './in-words.ts';

/**
 * The moves that bring the car into its windows: the global optimum over every position of every adjuster.
 *
 * `closest` minimises Σ((value − aim)/(half window))² over every spec given, with everything in its window if any
 * combination does that; `least-work` first the minutes of the adjusters moved, then the same sum; `surest` goes for the
 * chance that the re-measure is in every window, as surest.ts has it, and is never less sure than the other two; `practical` takes the
 * least work that is as sure within 2 points or 95 % sure, as practical.ts has it. Where no
 * combination has everything in its window, the plan is the one with the least sum, or for `surest` the one that is
 * likelier to read in the windows all the same. With `maxEffort` it is the nearest that takes no more minutes, in the
 * window all the same.
 * @param given readings, windows and angles in degrees, signs as in the contract; positions as their kinds have them
 * @throws InputError naming the field, the value and what is allowed
 */
export function planMoves(given: PlanRequest): Plan {
  return planned(validatePlanRequest(given));
}

/**
 * The plans worth choosing among: the practical, the surest, then from the closest to the least work those of which none is worse than
 * another in both minutes and distance; where there are many, a few that are spread evenly. Where the windows cannot
 * all be met the nearest stands in for them.
 * @throws InputError naming the field, the value and what is allowed
 */
export function planChoices(given: PlanRequest): PlanChoice[] {
  return choicesOf(validatePlanRequest(given));
}

/** The plan of a request that is checked already, in its language. */
export const planned = (request: PlanRequest): Plan => planInWords(planOf(request), request.language);
