import type { SuspensionPicture } from './suspension-picture.ts';

export const strut: SuspensionPicture = {
  name: 'Strut',
  points: {
    strutTop: [-32, 575, 800],
    strutLower: [-8, 645, 430],
    lowerFront: [50, 365, 215],
    lowerRear: [-250, 375, 225],
    lowerBall: [10, 705, 195],
    tieInner: [-125, 340, 285],
    tieOuter: [-140, 690, 275],
    wheelCentre: [0, 770, 320],
  },
  links: [
    ['lowerFront', 'lowerBall'],
    ['lowerRear', 'lowerBall'],
    ['tieInner', 'tieOuter'],
  ],
  solid: [['strutTop', 'strutLower']],
  upright: ['strutLower', 'lowerBall', 'tieOuter'],
};
