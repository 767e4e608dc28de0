import { beamFront } from './beam-front.ts';
import type { SuspensionKind } from './kind.ts';

/**
 * A rigid steered axle with one rod from knuckle to knuckle and a drag link from the steering box to one of them. Each
 * knuckle turns on its own two ball joints in the axle. The drag link holds the one it is on, the cross rod the other by
 * that one: the rod's length sets total toe, the drag link's turns both wheels alike and sets the steering wheel
 * straight. The steering box is held.
 *
 * Both rods are there once; their points are given with the left side, in the left corner's frame: y is negative right of
 * the middle. On which knuckle the drag link is, its own end says.
 */
export const beamCrossRod: SuspensionKind = {
  kind: 'beam-cross-rod',
  name: 'Rigid front axle, cross rod and drag link',
  points: ['upperBall', 'lowerBall', 'dragBody', 'dragKnuckle', 'crossNear', 'crossFar', 'wheelCentre'],
  links: [
    ['dragBody', 'dragKnuckle'],
    ['crossNear', 'crossFar'],
  ],
  seats: beamFront.seats!,
  lines: beamFront.lines!,
  height: false,
  rigidAxle: {
    once: ['dragBody', 'dragKnuckle', 'crossNear', 'crossFar'],
    knuckles: { drag: ['dragBody', 'dragKnuckle'], cross: ['crossNear', 'crossFar'] },
  },
  lowerArm: beamFront.lowerArm!,
  steeringAxis: beamFront.steeringAxis!,
  patterns: beamFront.patterns!,
};
