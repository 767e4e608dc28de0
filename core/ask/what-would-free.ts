import { validatePlanRequest } from '../check/request.ts';
import type { PlanRequest } from '../contract.ts';
import { leastExtensions, type Stuck } from '../plan/extension/least-extension.ts';

/**
 * For every set of wheels that cannot have all in its window, the least further travel of one adjuster that would let it
 * (up to 12 mm, 6 turns, a few degrees), else of a pair: left and right of a name, or two of a corner. What parts a maker
 * allows is not known here.
 * @param given as for a plan
 * @returns nothing where all can be met
 * @throws InputError naming the field, the value and what is allowed
 */
export function whatWouldFree(given: PlanRequest): Stuck[] {
  return leastExtensions(validatePlanRequest(given));
}
