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
import type { Vec3 } from '../../contract.ts';
import { add, scale } from '../../geometry/vector.ts';
import * as shared from './dimensions.ts';
import * as part from './parts.ts';
import { deg, mm, type TapeDimension, type TapeLayout } from './tape.ts';

export type { TapeDimension };

export const TAPE_DIMENSIONS: readonly TapeDimension[] = [
  ...shared.measuredAngles('upperBall'),
  deg('sai', {
    label: 'SAI',
    between: ['lowerBall', 'upperBall'],
    limit: 30,
    otherwise: 10,
    why: 'most double wishbones have 8 to 12°',
  }),
  mm('upperFrontLength', {
    label: 'Upper arm, front pivot to ball joint',
    between: ['upperFront', 'upperBall'],
    low: 60,
    high: 1500,
    otherwise: 280,
    tolerance: 60,
    why: 'a middling upper arm',
  }),
  mm('upperRearLength', {
    label: 'Upper arm, rear pivot to ball joint',
    between: ['upperRear', 'upperBall'],
    low: 60,
    high: 1500,
    otherwise: 'upperFrontLength',
    tolerance: 40,
    why: 'an even triangle',
  }),
  mm('upperPivotSpacing', {
    label: 'Upper arm, pivot to pivot',
    between: ['upperFront', 'upperRear'],
    low: 30,
    high: 1200,
    otherwise: 250,
    tolerance: 60,
    why: 'a middling upper arm',
  }),
  ...shared.LOWER_ARM_LENGTHS,
  mm('ballSpacing', {
    label: 'Ball joint to ball joint',
    between: ['lowerBall', 'upperBall'],
    low: 60,
    high: 900,
    otherwise: 270,
    tolerance: 50,
    why: 'a middling knuckle',
  }),
  ...shared.WHEEL_HEIGHTS,
  mm('upperFrontHeight', {
    label: 'Upper arm, front pivot, height',
    between: ['upperFront'],
    low: 50,
    high: 1500,
    otherwise: 'upperBallHeight',
    tolerance: 30,
    why: 'a level upper arm',
  }),
  mm('upperRearHeight', {
    label: 'Upper arm, rear pivot, height',
    between: ['upperRear'],
    low: 50,
    high: 1500,
    otherwise: 'upperFrontHeight',
    tolerance: 20,
    why: 'a level pivot line',
  }),
  ...shared.LOWER_ARM_HEIGHTS,
  ...shared.STANCE,
  ...shared.STEERING,
  shared.skewOf('upper'),
  shared.skewOf('lower'),
  ...shared.STEERING_ANGLES,
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
