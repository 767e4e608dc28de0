import type { Starter } from './starter.ts';

/** Caster about 5°, SAI about 10°; the upper arm is shorter than the lower and slopes down inboard: camber falls in bump. */
export const doubleWishboneFront: Starter = {
  kind: 'double-wishbone',
  axle: 'front',
  name: 'front, rod behind the axle',
  points: {
    upperFront: [95, 428, 462],
    upperRear: [-135, 434, 452],
    upperBall: [-17, 664, 476],
    lowerFront: [172, 366, 212],
    lowerRear: [-188, 370, 207],
    lowerBall: [8, 714, 192],
    tieInner: [-128, 376, 258],
    tieOuter: [-137, 702, 252],
    wheelCentre: [0, 763, 314],
  },
  camber: -0.4,
  toe: 0.1,
};

/** The same idea held straight by a toe link behind the axle. */
export const doubleWishboneRear: Starter = {
  kind: 'double-wishbone',
  axle: 'rear',
  name: 'rear, toe link behind the axle',
  points: {
    upperFront: [112, 452, 458],
    upperRear: [-118, 448, 452],
    upperBall: [-8, 672, 470],
    lowerFront: [205, 392, 222],
    lowerRear: [-148, 374, 216],
    lowerBall: [6, 706, 203],
    tieInner: [-171, 384, 269],
    tieOuter: [-163, 698, 263],
    wheelCentre: [0, 766, 314],
  },
  camber: -0.9,
  toe: 0.15,
};
