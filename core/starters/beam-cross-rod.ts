import type { Starter } from './starter.ts';

/**
 * Caster about 3°, SAI about 8°; the cross rod behind the axle, the drag link from a box on the left across the car to
 * the right knuckle.
 */
export const beamCrossRod: Starter = {
  kind: 'beam-cross-rod',
  axle: 'front',
  name: 'rigid front axle, cross rod behind it',
  points: {
    upperBall: [-6, 706, 458],
    lowerBall: [6, 738, 226],
    dragBody: [-196, 318, 386],
    dragKnuckle: [-168, -676, 384],
    crossNear: [-177, -692, 309],
    crossFar: [-177, 692, 309],
    wheelCentre: [0, 806, 347],
  },
  camber: 0.25,
  toe: 0.1,
};
