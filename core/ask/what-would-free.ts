import { validatePlanRequest } from '../check/request.ts';
import type { PlanRequest } from '../contract.ts';
import type { BareFreeChange } from '../plan/extension/extended-travel.ts';
import { type BareStuck, leastExtensions } from '../plan/extension/least-extension.ts';
import { wordsOf } from '../words/catalogue.ts';

/** One adjuster that would have to go further. */
export interface FreeChange extends BareFreeChange {
  /** `takes`: the parts or work, in a few words. */
  readonly further?: NonNullable<BareFreeChange['further']> & { readonly takes: string };
}
/** Wheels that cannot have everything in its window, and what would let them: each way alone. */
export interface Stuck extends Omit<BareStuck, 'ways'> {
  readonly ways: readonly (readonly FreeChange[])[];
}

/**
 * For every set of wheels that cannot have all in its window, the least further travel of one adjuster that would let it
 * (up to 12 mm, 6 turns, a few degrees), else of a pair: left and right of a name, or two of a corner. What parts a maker
 * allows is not known here.
 * @param given as for a plan
 * @returns nothing where all can be met
 * @throws InputError naming the field, the value and what is allowed
 */
export function whatWouldFree(given: PlanRequest): Stuck[] {
  return freed(validatePlanRequest(given));
}

/** The same of a request that is checked already, in its language. */
export function freed(request: PlanRequest): Stuck[] {
  const words = wordsOf(request.language);
  const told = ({ further, ...ref }: BareFreeChange): FreeChange =>
    further ? { ...ref, further: { ...further, takes: words.remedy(further.remedy) } } : ref;
  return leastExtensions(request).map((stuck) => ({ ...stuck, ways: stuck.ways.map((way) => way.map(told)) }));
}
