import * as v from 'valibot';
import { number } from '../adjuster/fields.ts';
import { validateCarSettings } from '../check/adjusters.ts';
import { validateCar } from '../check/car.ts';
import { object, shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import type { Adjuster, Car, CarSettings, Settings, Suspension } from '../contract.ts';
import type { AngleGain } from '../pose/effects.ts';
import { type HeightEffect, heightEffectOf, heightOf, type Raise } from '../pose/height.ts';
import { type SideEffects, sideEffectsOf } from '../pose/side-effects.ts';
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
const ends = object({ front: v.optional(length), rear: v.optional(length) }, shape('front? rear?', { in: 'mm' }));

/**
 * What happens to a wheel's angles against the body if its corner of the body alone is raised by so much: the wheel goes as
 * far down. It knows nothing of the other end, so the body stays level; what the rack shows a whole car says. Degrees that
 * camber, caster and toe gain; absent where no pose exists.
 * @param raise mm, + up
 * @throws InputError naming the field, the value and what is allowed
 */
export function heightEffect(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  raise: number,
): AngleGain | undefined;
/**
 * What the rack shows after the body of a car is raised (spring perches, blocks): each wheel goes as far down against the
 * body, and the body pitches by the difference of the ends over the wheelbase, which leans the steering axes of both
 * ends: a front that is raised adds caster. All angles of all four corners, degrees; a rigid axle without links is taken
 * to pitch with the body, as leaf springs have it do, and is steered by its drag link where it has one.
 * @param raise mm of each end, + up, measured above the wheels; both `front` and `rear` are 0 unless said
 * @throws InputError naming the field, the value and what is allowed
 */
export function heightEffect(car: Car, settings: CarSettings, raise: Raise): HeightEffect;
export function heightEffect(
  of: Car | Suspension,
  ...rest:
    | readonly [settings: CarSettings, raise: Raise]
    | readonly [adjusters: readonly Adjuster[], settings: Settings, raise: number]
): HeightEffect | AngleGain | undefined {
  if (rest.length === 2) {
    const car = validateCar(of);
    return heightOf(car, validateCarSettings(rest[0], car), check(ends, rest[1], 'raise'));
  }
  const { model, settings } = checkedCorner(of as Suspension, rest[0], rest[1]);
  return heightEffectOf(model, settings, check(length, rest[2], 'raise'));
}
