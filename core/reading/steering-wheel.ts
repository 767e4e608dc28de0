/**
 * The steering wheel that did not stand level while front toe was read. Turned by its angle over the steering ratio the road
 * wheels point that much further to the right than they do with it level, for a wheel that stood to the right.
 */
import type { Car, Reading } from '../contract.ts';
import { pointed } from './toe-reference.ts';

type Steered = Pick<Car, 'steeringRatio' | 'front'>;

/** Degrees at the steering wheel, either way, that no driver minds. Trade practice, no source. */
export const HARDLY_SEEN = 1;

/** Degrees that the road wheels pointed further to the right than with it level; nothing where that is not known. */
export function pointedBy({ steeringWheel }: Reading, { steeringRatio, front }: Steered): number | undefined {
  if (!steeringWheel || !steeringRatio || !front.steered) return undefined;
  return steeringWheel / steeringRatio;
}

/** What would have been read with the steering wheel level; the reading as it is where that is not known. */
export function levelled(reading: Reading, car: Steered): Reading {
  const right = pointedBy(reading, car);
  if (right === undefined) return reading;
  const { steeringWheel: _, ...level } = pointed(reading, -right);
  return level;
}
