import * as v from 'valibot';
import { number } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import type { Adjuster, CornerPose, Settings, Suspension, Unreachable } from '../contract.ts';
import type { PoseOptions } from '../pose/mechanism.ts';
import { checkedCorner } from './checked-corner.ts';
import { noPoseInWords } from './in-words.ts';

const options = v.looseObject(
  { travel: v.optional(number(-2000, 2000, 'mm')), rack: v.optional(number(-2000, 2000, 'mm')) },
  ruleText(shape('travel? rack?', { in: 'mm' })),
);

/**
 * The wheel of one corner with its adjusters at these positions: camber, toe, caster and SAI in degrees, points in mm,
 * all in the corner frame. Wheel-centre height and steering rack are held, but for `options`. The other end of a rigid
 * axle stands at its reference; see `solveAxle` for both.
 * @param settings positions by adjuster id; an adjuster that is absent stands at its reference
 * @param given `travel`, mm of bump (+ up); `rack`, mm that the rack pushes this tie rod outboard
 * @returns the pose, or that there is none (`reachable: false`) because an arm cannot reach
 * @throws InputError naming the field, the value and what is allowed
 */
export function solveCorner(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  given: PoseOptions = {},
): CornerPose | Unreachable {
  const { model, settings: at } = checkedCorner(suspension, adjusters, settings);
  const pose = model.pose(at, check(options, given, 'options'));
  return pose.reachable ? pose : noPoseInWords(pose);
}
