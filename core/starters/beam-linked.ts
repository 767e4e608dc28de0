import type { Starter } from './starter.ts';

/** Four links, two a side, the lower ones longer; a lateral rod behind the axle from the body's right to its left end. */
export const beamLinked: Starter = {
  kind: 'beam-linked',
  axle: 'rear',
  name: 'rear, four links and a lateral rod',
  points: {
    lowerBody: [527, 442, 287],
    lowerAxle: [12, 531, 243],
    upperBody: [388, 352, 456],
    upperAxle: [-22, 318, 449],
    rodBody: [-84, -462, 352],
    rodAxle: [-91, 471, 343],
    wheelCentre: [0, 772, 322],
  },
  camber: 0,
  toe: 0,
};
