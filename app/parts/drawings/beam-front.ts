import type { Vec3 } from '../../../core/contract.ts';
import type { SuspensionPicture } from './suspension-picture.ts';

const AXLE_END: Vec3 = [0, 610, 335];

export const beamFront: SuspensionPicture = {
  name: 'Rigid front axle',
  points: {
    upperBall: [-14, 655, 425],
    lowerBall: [4, 690, 245],
    tieInner: [-190, 60, 285],
    tieOuter: [-175, 650, 290],
    wheelCentre: [0, 770, 340],
  },
  links: [['tieInner', 'tieOuter']],
  // The axle as far as the car's middle, its fork, and the axis on which the knuckle turns.
  solid: [
    [[0, 0, 335], AXLE_END],
    ['upperBall', AXLE_END, 'lowerBall'],
    ['upperBall', 'lowerBall'],
  ],
  upright: ['upperBall', 'lowerBall', 'tieOuter'],
};
