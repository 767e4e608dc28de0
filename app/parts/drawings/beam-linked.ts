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
  labels: {
    lowerBody: 'lower link, at the body',
    lowerAxle: 'lower link, at the axle',
    upperBody: 'upper link, at the body',
    upperAxle: 'upper link, at the axle',
    rodBody: 'lateral rod, at the body',
    rodAxle: 'lateral rod, at the axle',
    wheelCentre: 'wheel centre',
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
