import type { SuspensionKind } from './kind.ts';

/**
 * A strut that is clamped to the knuckle and held at its top, a lower arm and a tie rod. The strut slides and turns in
 * its top mount: the top stays on the strut's line, which is fixed in the upright and runs through strutLower.
 */
export const strut: SuspensionKind = {
  kind: 'strut',
  name: 'Strut',
  points: ['strutTop', 'strutLower', 'lowerFront', 'lowerRear', 'lowerBall', 'tieInner', 'tieOuter', 'wheelCentre'],
  links: [
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  lines: [['strutTop', 'strutLower']],
  clamped: true,
  height: true,
  lowerArm: ['lowerFront', 'lowerRear', 'lowerBall'],
  steeringAxis: ['lowerBall', 'strutTop'],
  rack: 'tieInner',
  patterns: [
    { sai: 'high', camber: 'high', included: 'high', look: 'tower-and-knuckle-or-strut' },
    { sai: 'low', camber: 'high', included: 'ok', look: 'lower-arm-or-tower-out' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'tower-in' },
    { included: 'low', look: 'knuckle-or-strut' },
    { included: 'high', look: 'knuckle-or-strut' },
  ],
};
