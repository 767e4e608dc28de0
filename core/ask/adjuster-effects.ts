import { sidesOf } from '../adjuster/of-corner.ts';
import { validateAxle } from '../check/car.ts';
import type { Adjuster, Axle, Settings, Suspension } from '../contract.ts';
import { type StepEffect, stepEffects } from '../pose/effects.ts';
import { kindOf } from '../pose/linkage.ts';
import { Mechanism } from '../pose/mechanism.ts';
import { checkedCorner } from './checked-corner.ts';
import { stepInWords } from './in-words.ts';

/**
 * What one step of each adjuster does to its wheel with the others at `settings`, degrees, + as in the contract: by the
 * poses before and after it. An adjuster whose step no pose allows is left out.
 * @param settings positions by adjuster id; an adjuster that is absent stands at its reference
 * @returns one for each adjuster, in their order; the step in English words and as data
 * @throws InputError naming the field, the value and what is allowed
 */
export function adjusterEffects(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings = {},
): StepEffect[] {
  const { mechanism, settings: stands } = checkedCorner(suspension, adjusters, settings);
  return stepEffects(mechanism, 0, stands).map((one) => stepInWords(one));
}

/**
 * The same for both sides of an axle with every adjuster at its reference. A rigid axle is taken as the one piece that
 * it is, each side with its own points; what it has once stands with the left side.
 * @throws InputError naming the field (`axle.…`), the value and what is allowed
 */
export function axleEffects(axle: Axle): { readonly left: StepEffect[]; readonly right: StepEffect[] } {
  const [left, right] = sidesOf(validateAxle(axle));
  if (!kindOf(left.suspension).rigidAxle) {
    return {
      left: told(new Mechanism([left]), 0),
      right: told(new Mechanism([right]), 0),
    };
  }
  const model = new Mechanism([left, right], 'axle.suspension');
  return { left: told(model, 0), right: told(model, 1) };
}

const told = (model: Mechanism, side: number): StepEffect[] =>
  stepEffects(model, side, {}).map((one) => stepInWords(one));
