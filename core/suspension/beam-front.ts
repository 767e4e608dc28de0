import type { SuspensionKind } from './kind.ts';

/** A rigid steered axle: the knuckle turns on two ball joints that sit in the axle, held straight by its tie rod. */
export const beamFront: SuspensionKind = {
  kind: 'beam-front',
  name: 'Rigid front axle',
  points: ['upperBall', 'lowerBall', 'tieInner', 'tieOuter', 'wheelCentre'],
  links: [['tieInner', 'tieOuter']],
  seats: ['lowerBall'],
  lines: [['upperBall', 'lowerBall']],
  height: false,
  lowerArm: ['lowerBall'],
  steeringAxis: ['lowerBall', 'upperBall'],
  rack: 'tieInner',
  patterns: [
    { included: 'low', look: 'spindle' },
    { included: 'high', look: 'spindle' },
    { sai: 'low', camber: 'high', included: 'ok', look: 'axle-beam' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'axle-beam' },
  ],
};
