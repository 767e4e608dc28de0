/**
 * A double wishbone from a tape measure: points that reproduce every given dimension and the measured caster, SAI,
 * camber and toe exactly.
 *
 * Construction, in the corner frame (x forward, y outboard, z up):
 * 1. wheelCentre = (−axleBehindFront, track/2, wheelCentreHeight).
 * 2. lowerBall at its height, `lowerBallInset` inboard and `lowerBallAhead` ahead of the wheel centre.
 * 3. upperBall = lowerBall + ballSpacing·k, k ∝ (−tan caster, −tan SAI, 1): both projected angles come out exactly.
 * 4. The arms and the tie rod: tape-parts.ts.
 */
import type { Vec3 } from '../contract.ts';
import { add, scale } from '../geometry/vector.ts';
import { deg, mm, type TapeDimension, type TapeLayout } from './tape.ts';
import * as part from './tape-parts.ts';

export type { TapeDimension };

export const TAPE_DIMENSIONS: readonly TapeDimension[] = [
  ...part.MEASURED_ANGLES,
  deg('sai', 30, 10, 'most double wishbones have 8 to 12°'),
  mm('upperFrontLength', 60, 1500, 280, 60, 'a middling upper arm'),
  mm('upperRearLength', 60, 1500, 'upperFrontLength', 40, 'an even triangle'),
  mm('upperPivotSpacing', 30, 1200, 250, 60, 'a middling upper arm'),
  ...part.LOWER_ARM_LENGTHS,
  mm('ballSpacing', 60, 900, 270, 50, 'a middling knuckle'),
  ...part.WHEEL_HEIGHTS,
  mm('upperFrontHeight', 50, 1500, 'upperBallHeight', 30, 'a level upper arm'),
  mm('upperRearHeight', 50, 1500, 'upperFrontHeight', 20, 'a level pivot line'),
  ...part.LOWER_ARM_HEIGHTS,
  ...part.STANCE,
  ...part.STEERING,
  part.skewOf('upper'),
  part.skewOf('lower'),
  ...part.STEERING_ANGLES,
];

export const doubleWishboneTape: TapeLayout = {
  kind: 'double-wishbone',
  dimensions: TAPE_DIMENSIONS,
  build: (from) => {
    const { wheelCentre, lowerBall, axis } = part.stance(from);
    const upperBall: Vec3 = add(lowerBall, scale(axis, from.take('ballSpacing')));
    from.follows('upperBallHeight', upperBall[2]);
    const [upperFront, upperRear] = part.arm('upper', upperBall, from);
    const [lowerFront, lowerRear] = part.arm('lower', lowerBall, from);
    const { tieInner, tieOuter } = part.tieRod(from, lowerBall);
    return { upperFront, upperRear, upperBall, lowerFront, lowerRear, lowerBall, tieInner, tieOuter, wheelCentre };
  },
};
