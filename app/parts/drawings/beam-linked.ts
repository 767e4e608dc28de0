import type { SuspensionPicture } from './suspension-picture.ts';

export const beamLinked: SuspensionPicture = {
  name: 'Rigid axle on links',
  points: {
    lowerBody: [520, 430, 290],
    lowerAxle: [10, 520, 230],
    upperBody: [420, 330, 470],
    upperAxle: [-20, 360, 440],
    rodBody: [-70, -470, 360],
    rodAxle: [-90, 480, 350],
    wheelCentre: [0, 770, 320],
  },
  links: [
    ['lowerBody', 'lowerAxle'],
    ['upperBody', 'upperAxle'],
    ['rodBody', 'rodAxle'],
  ],
  // The axle from the hub to past the car's middle: the rod crosses to the other side.
  solid: [['wheelCentre', [0, -300, 320]]],
  upright: [],
};
