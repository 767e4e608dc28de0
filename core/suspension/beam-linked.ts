import type { SuspensionKind } from './kind.ts';

/**
 * A rigid rear axle on four links, two a side, with or without a lateral rod. The axle is one body: a link of either
 * side that changes its length turns and shifts both wheels. It sets the pinion angle, the thrust line and where the
 * axle stands across the car.
 *
 * Held: the four links, the rod, and the height of both wheel centres. Without the rod that is six conditions for six
 * freedoms, which are met exactly; the links must then hold the axle sideways themselves. With the rod it is seven: one
 * too many, which a real axle takes up in its bushes. So do we, by least squares: the bushes of all links and of the rod
 * are equally stiff, so that the sum of the squares of what each link is stretched is least; the heights, which the
 * road and the springs hold, are kept. Where lengths and points agree nothing is stretched. What is left is the strain;
 * a pose that would stretch a link by more than 10 mm counts as out of reach.
 *
 * The rod's points are given once, with the left side, in the left corner's frame: y is negative right of the middle.
 */
export const beamLinked: SuspensionKind = {
  kind: 'beam-linked',
  name: 'Rigid axle on links',
  points: ['lowerBody', 'lowerAxle', 'upperBody', 'upperAxle', 'rodBody', 'rodAxle', 'wheelCentre'],
  optionalPoints: ['rodBody', 'rodAxle'],
  links: [
    ['lowerBody', 'lowerAxle'],
    ['upperBody', 'upperAxle'],
    ['rodBody', 'rodAxle'],
  ],
  lowerArm: ['lowerBody', 'lowerAxle'],
  height: true,
  rigidAxle: { once: ['rodBody', 'rodAxle'], onLinks: true },
};
