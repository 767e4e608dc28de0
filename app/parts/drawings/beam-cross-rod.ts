import type { Vec3 } from '../../../core/contract.ts';
import type { SuspensionPicture } from './suspension-picture.ts';

const AXLE_END: Vec3 = [0, 610, 335];
const OTHER_END: Vec3 = [0, -610, 335];
/** The other knuckle's axis: nobody measures it here. */
const OTHER_UPPER: Vec3 = [-14, -655, 425];
const OTHER_LOWER: Vec3 = [4, -690, 245];

export const beamCrossRod: SuspensionPicture = {
  name: 'Rigid front axle, cross rod',
  points: {
    upperBall: [-14, 655, 425],
    lowerBall: [4, 690, 245],
    dragBody: [-215, 300, 420],
    dragKnuckle: [-150, -640, 417],
    crossNear: [-175, -650, 290],
    crossFar: [-175, 650, 290],
    wheelCentre: [0, 770, 340],
  },
  links: [
    ['dragBody', 'dragKnuckle'],
    ['crossNear', 'crossFar'],
  ],
  // The whole axle with a fork at each end, and the axes on which the knuckles turn.
  solid: [
    [OTHER_END, AXLE_END],
    ['upperBall', AXLE_END, 'lowerBall'],
    ['upperBall', 'lowerBall'],
    [OTHER_UPPER, OTHER_END, OTHER_LOWER],
    [OTHER_UPPER, OTHER_LOWER],
  ],
  upright: ['upperBall', 'lowerBall'],
  wholeAxle: true,
};
