/** What limits a plan: each window with the chance that it alone is met, and why it is not likelier. */
import type { AdjusterRef } from '../../contract.ts';
import { cornerOf } from '../../pose/car-model.ts';
import type { Limit } from '../../said.ts';
import { adjusterOf, type Evaluation, nameOf, type Positions, type Problem } from '../problem.ts';
import { isToe, type Term } from '../terms.ts';
import { atStopAt } from './shortfall.ts';
import { roleOf } from './working-order.ts';

/** The least first. */
export function oddsAt(
  { request, terms, model, now }: Problem,
  { alone }: Pick<Evaluation, 'alone'>,
  positions: Positions,
  isFixed: (term: Term) => boolean,
): Limit[] {
  const turnsIt = (ref: AdjusterRef, term: Term): boolean =>
    (roleOf(cornerOf(model, ref.corner, now), adjusterOf(request, ref)) === 'toe') === isToe(term);
  return terms
    .map((term): Limit => {
      const { where, angle } = term;
      const said = { where, angle, chance: alone.get(term)! };
      if (isFixed(term)) return { ...said, fixed: true };
      const atStop = atStopAt(request.car, where, positions).filter((ref) => turnsIt(ref, term));
      return atStop.length === 0
        ? said
        : { ...said, atStop: atStop.map((ref) => ({ ...ref, name: nameOf(request, ref) })) };
    })
    .sort((a, b) => a.chance - b.chance);
}
