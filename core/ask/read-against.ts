import { choice } from '../adjuster/fields.ts';
import { check } from '../check/refuse.ts';
import { validateReading } from '../check/spec.ts';
import type { Reading } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { angleOf } from '../reading/axle-angles.ts';
import { readAgainst as converted, type ToeReference } from '../reading/toe-reference.ts';

/**
 * A reading with its front toe against the centre line or against the thrust line, whichever it was read against: left toe
 * is less by the thrust angle against the thrust line, right toe more, their total the same. Degrees, signs as in the
 * contract; all other angles stay.
 * @param reading what it is against says its `toeReference`; absent: the centre line
 * @throws InputError naming the field, the value and what is allowed, such as `reading.LR.toe` where front toe is to be
 * converted and the thrust angle is not known
 */
export function readAgainst(reading: Reading, toeReference: ToeReference): Reading {
  const checked = validateReading(reading);
  const against = check(choice(['centreline', 'thrust-line']), toeReference, 'toeReference');
  const answer = converted(checked, against);
  if (answer) return answer;
  const corner = angleOf(checked, 'LR', 'toe') === undefined ? 'LR' : 'RR';
  throw new InputError(`reading.${corner}.toe`, undefined, { is: 'measured' });
}
