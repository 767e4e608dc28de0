/**
 * Side slip and total toe: a wheel that points off the way it goes by θ is pushed aside by tan θ of it: 1° is 17.455 m a
 * kilometre, 1 m/km 3.438′. A plate that slides under one wheel, while the other one holds the car, shows the whole angle
 * between the two, which is total toe. That the plate's figure is the axle's is trade practice, no source.
 */
import { degrees, type Radians, radians } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { within } from './within.ts';

/** No plate shows more, m/km. */
const MOST = 50;

/**
 * Total toe, degrees, of a side slip in m/km (mm/m is the same figure), + for toe-in.
 * @param plate one standard deviation of it
 * @throws InputError naming `slip`
 */
export function toeFromSideSlip(slip: number, plate: number = USUAL_SCATTER.slip): Measured {
  if (!(typeof slip === 'number' && Math.abs(slip) <= MOST))
    throw new InputError('slip', slip, { is: 'number', low: -MOST, high: MOST, unit: 'm/km' });
  return spreadOf({ slip: { value: slip, sd: plate } }, (read) => ({
    toe: degrees(Math.atan(read.slip / 1000) as Radians),
  })).toe;
}

/**
 * Side slip, m/km, that a total toe (degrees, + in) makes on a plate.
 * @throws InputError naming `toe`
 */
export const sideSlipOf = (toe: number): number => 1000 * Math.tan(radians(within('toe', toe, -20, 20, 'degrees')));
