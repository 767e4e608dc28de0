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
  links: [
    ['upperFront', 'upperBall'],
    ['upperRear', 'upperBall'],
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  upright: ['upperBall', 'lowerBall', 'tieOuter', 'wheelCentre'],
};
