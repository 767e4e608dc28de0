import { number } from '../adjuster/fields.ts';
import { check } from '../check/refuse.ts';
import type { Adjuster, Settings, Suspension } from '../contract.ts';
import type { AngleGain } from '../pose/effects.ts';
import { heightEffectOf, type SideEffects, sideEffectsOf } from '../pose/side-effects.ts';
import { checkedCorner } from './checked-corner.ts';

/**
 * Side effects of one corner at these positions; what the geometry does not know is absent. A wheel of a rigid axle
 * goes up and down alone, so that the axle rolls.
 * @throws InputError naming the field, the value and what is allowed
 */
export function sideEffects(suspension: Suspension, adjusters: readonly Adjuster[], settings: Settings): SideEffects {
  const { model, settings: stands } = checkedCorner(suspension, adjusters, settings);
  return sideEffectsOf(model, stands);
}

const length = number(-500, 500, 'mm');

/**
 * What happens to a wheel's angles if its corner of the body is raised by so much (spring perches, blocks): the wheel
 * goes as far down against the body. Degrees that camber, caster and toe gain; absent where no pose exists.
 * @param raise mm, + up
 * @throws InputError naming the field, the value and what is allowed
 */
export function heightEffect(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  raise: number,
): AngleGain | undefined {
  const { model, settings: stands } = checkedCorner(suspension, adjusters, settings);
  return heightEffectOf(model, stands, check(length, raise, 'raise'));
}
