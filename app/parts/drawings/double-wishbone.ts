import type { SuspensionPicture } from './suspension-picture.ts';

export const doubleWishbone: SuspensionPicture = {
  name: 'Double wishbone',
  points: {
    upperFront: [130, 430, 545],
    upperRear: [-150, 430, 535],
    upperBall: [-20, 665, 560],
    lowerFront: [180, 360, 215],
    lowerRear: [-190, 360, 205],
    lowerBall: [5, 700, 190],
    tieInner: [-130, 385, 275],
    tieOuter: [-140, 690, 270],
    wheelCentre: [0, 770, 320],
  },
  labels: {
    upperFront: 'upper arm, front pivot',
    upperRear: 'upper arm, rear pivot',
    upperBall: 'upper ball joint',
    lowerFront: 'lower arm, front pivot',
    lowerRear: 'lower arm, rear pivot',
    lowerBall: 'lower ball joint',
    tieInner: 'tie rod, inner joint',
    tieOuter: 'tie rod, outer joint',
    wheelCentre: 'wheel centre',
  },
  links: [
    ['upperFront', 'upperBall'],
    ['upperRear', 'upperBall'],
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  upright: ['upperBall', 'lowerBall', 'tieOuter', 'wheelCentre'],
};
