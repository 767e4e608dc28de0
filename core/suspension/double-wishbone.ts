import { KNUCKLE, type SuspensionKind } from './kind.ts';

/** Two triangular arms, each held as two lengths that meet at its ball joint, and a tie rod or toe link. */
export const doubleWishbone: SuspensionKind = {
  kind: 'double-wishbone',
  name: 'Double wishbone',
  points: [
    'upperFront',
    'upperRear',
    'upperBall',
    'lowerFront',
    'lowerRear',
    'lowerBall',
    'tieInner',
    'tieOuter',
    'wheelCentre',
  ],
  links: [
    ['upperFront', 'upperBall'],
    ['upperRear', 'upperBall'],
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  height: true,
  lowerArm: ['lowerFront', 'lowerRear', 'lowerBall'],
  steeringAxis: ['lowerBall', 'upperBall'],
  rack: 'tieInner',
  patterns: [
    { sai: 'low', camber: 'high', included: 'ok', look: 'lower-arm' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'upper-arm' },
    ...KNUCKLE,
  ],
};
