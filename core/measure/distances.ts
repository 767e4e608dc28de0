/** Total toe of an axle from two distances across it: between rims or tyres, or between toe plates held against them. */
import { asin, degrees } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { checkDiameter } from '../units/toe.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/** Two distances across an axle, at hub height. */
export interface RimDistances {
  /** Distance between the two wheels ahead of the hubs, mm. */
  readonly front: number;
  /** The same behind the hubs, at the same height, mm. */
  readonly rear: number;
  /** Diameter at which both were taken, mm; of toe plates how far the two places are apart along a plate. */
  readonly diameter: number;
}

/**
 * Total toe of an axle, degrees, from a tape across it: + (toe-in) when the front distance is the smaller. Both wheels
 * are taken to share it: 2·asin((rear − front)/2D). Up to 4° in all, how they share it is worth less than 0.003°.
 * @throws InputError naming the field.
 */
export function toeFromRimDistances(distances: RimDistances): number {
  const { front, rear, diameter } = given('distances', distances);
  for (const [field, value] of Object.entries({ front, rear })) within(field, value, 200, 5000, 'mm');
  checkDiameter(diameter);
  if (Math.abs(rear - front) > diameter) {
    throw new InputError('front', front, { is: 'near-rear', diameter, rear });
  }
  return sharedToe(rear - front, diameter);
}

/**
 * The same with its ±: that of a tape which reads twice.
 * @param tape one standard deviation of one distance, mm
 * @throws InputError naming the field
 */
export function totalToeAcross(distances: RimDistances, tape: number = USUAL_SCATTER.tape): Measured {
  toeFromRimDistances(distances);
  const { front, rear, diameter } = distances;
  return spreadOf({ front: { value: front, sd: tape }, rear: { value: rear, sd: tape } }, (read) => ({
    toe: sharedToe(read.rear - read.front, diameter),
  })).toe;
}

/** Total toe, degrees, of two wheels that share it: mm that the rear distance is the larger, at that diameter. */
export const sharedToe = (difference: number, diameter: number): number => 2 * degrees(asin(difference / 2 / diameter));
