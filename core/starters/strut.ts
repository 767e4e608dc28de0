import type { Starter } from './starter.ts';

/** Caster about 4°, SAI about 13°: the top mount stands inboard of and behind the lower ball joint. */
export const strut: Starter = {
  kind: 'strut',
  axle: 'front',
  name: 'front, rod behind the axle',
  points: {
    strutTop: [-38, 562, 838],
    strutLower: [-8, 634, 421],
    lowerFront: [26, 364, 219],
    lowerRear: [-274, 379, 223],
    lowerBall: [7, 711, 197],
    tieInner: [-131, 361, 268],
    tieOuter: [-139, 692, 256],
    wheelCentre: [0, 764, 313],
  },
  camber: -0.4,
  toe: 0.1,
};
