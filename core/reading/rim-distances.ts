import { InputError } from '../input-error.ts';
import { checkDiameter, lengthToToe } from '../units/toe.ts';

export interface RimDistances {
  /** Distance between the two wheels ahead of the hubs, mm. */
  readonly front: number;
  /** The same behind the hubs, at the same height, mm. */
  readonly rear: number;
  /** Diameter at which both were taken, mm. */
  readonly diameter: number;
}

/**
 * Total toe of an axle, degrees, from a tape across it: + (toe-in) when the front distance is the smaller. Both wheels
 * are taken to share it: 2·asin((rear − front)/2D). Up to 4° in all, how they share it is worth less than 0.003°.
 * @throws InputError naming the field.
 */
export function toeFromRimDistances({ front, rear, diameter }: RimDistances): number {
  for (const [field, value] of Object.entries({ front, rear })) {
    const [low, high] = [200, 5000];
    if (!(value >= low && value <= high)) throw new InputError(field, value, { is: 'place', on: 'mm', low, high });
  }
  checkDiameter(diameter);
  const difference = rear - front;
  if (Math.abs(difference) > diameter) {
    throw new InputError('front', front, { is: 'near-rear', diameter, rear });
  }
  return 2 * lengthToToe(difference / 2, diameter);
}
