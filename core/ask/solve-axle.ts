import * as v from 'valibot';
import { sidesOf } from '../adjuster/of-corner.ts';
import { validateSettings } from '../check/adjusters.ts';
import { validateAxle } from '../check/car.ts';
import { object, shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import type { Axle, CornerPose, Settings, Unreachable } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { Mechanism } from '../pose/mechanism.ts';
import { axleAngles } from '../reading/axle-angles.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { noPoseInWords } from './in-words.ts';

/** A rigid axle on links, or with knuckles that hang together, at given positions of both sides. */
export interface AxlePose {
  readonly reachable: true;
  readonly left: CornerPose;
  readonly right: CornerPose;
  /** (left toe − right toe)/2, degrees, + points to the right: of front wheels their steer-ahead. */
  readonly thrustAngle: number;
  /** Degrees that an axle on links has pitched against its reference, as an inclinometer on it shows; + its nose is up. */
  readonly pinionAngle: number;
  /** mm that the middle between its wheel centres has gone to the left. */
  readonly lateral: number;
  /** Most that any link's bushes have to take up, mm; 0 (but for rounding) where the lengths agree. */
  readonly strain: number;
}

const both = object(
  { left: v.optional(v.unknown()), right: v.optional(v.unknown()) },
  shape('left? right?', { in: 'positions' }),
);

/**
 * A rigid axle with the adjusters of both its sides at these positions: both wheels, each in its own corner frame, and
 * how the axle stands in the car. On links heights of both wheel centres are held; how more links than freedoms are met
 * is told at the kind, `beam-linked`. How knuckles hang together is told at `beam-cross-rod`.
 * @param given positions by adjuster id, a side each; what is absent stands at its reference. What works on a part that
 * the axle has once, such as its lateral rod, stands with the left side.
 * @returns the pose, or that there is none (`reachable: false`) because an arm cannot reach
 * @throws InputError naming the field, the value and what is allowed; also of an axle whose wheels are not joined
 */
export function solveAxle(
  axle: Axle,
  given: { readonly left?: Settings; readonly right?: Settings } = {},
): AxlePose | Unreachable {
  const checked = validateAxle(axle);
  const rigid = Object.values(suspensionKinds).filter((kind) => kind.rigidAxle);
  const { kind } = checked.suspension;
  if (!rigid.some((one) => one.kind === kind)) {
    const names = rigid.map(({ name }) => name);
    throw new InputError('axle.suspension.kind', kind, { is: 'choice', of: rigid.map((one) => one.kind), names });
  }
  const { left = {}, right = {} } = check(both, given, 'settings');
  const sides = sidesOf(checked);
  const model = new Mechanism(sides, 'axle.suspension');
  const pose = model.pose([
    validateSettings(left, sides[0].adjusters, 'settings.left'),
    validateSettings(right, sides[1].adjusters, 'settings.right'),
  ]);
  if (!pose.reachable) return noPoseInWords(pose);
  const [onLeft, onRight] = pose.corners as readonly [CornerPose, CornerPose];
  return {
    reachable: true,
    left: onLeft,
    right: onRight,
    thrustAngle: axleAngles(onLeft, onRight).thrustAngle!,
    pinionAngle: pose.body.pitch,
    lateral: pose.body.lateral,
    strain: onLeft.verdict.residual,
  };
}
