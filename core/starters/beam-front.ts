import type { Starter } from './starter.ts';

/** Caster about 3°, SAI about 8°; the tie rod behind the axle. */
export const beamFront: Starter = {
  kind: 'beam-front',
  axle: 'front',
  name: 'rigid front axle, rod behind it',
  points: {
    upperBall: [-6, 706, 458],
    lowerBall: [6, 738, 226],
    tieInner: [-168, 31, 312],
    tieOuter: [-176, 694, 309],
    wheelCentre: [0, 806, 347],
  },
  camber: 0.25,
  toe: 0.1,
};
