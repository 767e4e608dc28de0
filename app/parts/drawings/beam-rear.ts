import type { SuspensionPicture } from './suspension-picture.ts';

export const beamRear: SuspensionPicture = {
  name: 'Rigid rear axle',
  points: { wheelCentre: [0, 770, 320] },
  links: [],
  // The axle as far as the car's middle, with half the outline of its drive from behind and from above.
  solid: [
    ['wheelCentre', [0, 130, 320]],
    [
      [0, 0, 450],
      [0, 85, 420],
      [0, 130, 355],
      [0, 130, 285],
      [0, 85, 220],
      [0, 0, 190],
      [0, 0, 450],
    ],
    [
      [200, 0, 320],
      [180, 50, 320],
      [90, 125, 320],
      [-70, 125, 320],
      [-120, 70, 320],
      [-130, 0, 320],
      [200, 0, 320],
    ],
  ],
  upright: [],
};
