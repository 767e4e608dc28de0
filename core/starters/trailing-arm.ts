import type { Starter } from './starter.ts';

/** Semi-trailing: the bush line is swept back towards the outside, so that camber falls in bump. */
export const trailingArm: Starter = {
  kind: 'trailing-arm',
  axle: 'rear',
  name: 'rear, semi-trailing',
  points: {
    pivotInner: [318, 262, 292],
    pivotOuter: [426, 618, 303],
    wheelCentre: [0, 762, 309],
  },
  camber: -1,
  toe: 0.1,
};
