import { validateCarSettings } from '../check/adjusters.ts';
import { check } from '../check/refuse.ts';
import { validatePlanRequest } from '../check/request.ts';
import { fields } from '../check/schema.ts';
import type { CarSettings, Corner, PlanRequest } from '../contract.ts';
import { type Reach, reachWith } from '../plan/reach/reach.ts';

/**
 * Every combination of positions of a corner's adjusters, as angles that the rack would read there. Limits between two
 * packs are kept and locked adjusters held; what ties left to right is not the corner's own: the other side can follow.
 * @param given as for a plan
 * @param to where a plan puts the adjusters: the other corners are taken to be there. Default: they stay
 * @throws InputError naming the field, the value and what is allowed
 */
export function reachOf(given: PlanRequest, corner: Corner, to?: CarSettings): Reach {
  const request = validatePlanRequest(given);
  return reachIn(request, corner, to);
}

/** The same of a request that is checked already. */
export function reachIn(request: PlanRequest, corner: Corner, to?: CarSettings): Reach {
  check(fields.corner, corner, 'corner');
  return reachWith(request, corner, to && validateCarSettings(to, request.car, 'to'));
}
