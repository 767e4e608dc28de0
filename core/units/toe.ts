/** Toe of one wheel as a length: t = D·sin θ. A length means nothing without the diameter D it is taken at. */
import { asin, degrees, radians, sin } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';

/**
 * mm at diameter `diameter` (mm) of a wheel that stands at `toe` degrees; + for toe-in. Lengths of an axle add up.
 * @throws InputError when toe is beyond ±90° or the diameter is not 100 to 2000 mm.
 */
export function toeToLength(toe: number, diameter: number): number {
  if (!(typeof toe === 'number' && Math.abs(toe) <= 90))
    throw new InputError('toe', toe, { is: 'place', on: 'degrees', low: -90, high: 90 });
  return checkDiameter(diameter) * sin(radians(toe));
}

/**
 * Degrees of toe of a wheel whose edges differ by `length` mm at diameter `diameter` mm.
 * @throws InputError when the length is more than the diameter.
 */
export function lengthToToe(length: number, diameter: number): number {
  const most = checkDiameter(diameter);
  if (!(typeof length === 'number' && Math.abs(length) <= most))
    throw new InputError('length', length, { is: 'within-diameter', diameter: most });
  return degrees(asin(length / most));
}

export function checkDiameter(diameter: number): number {
  const [low, high] = [100, 2000];
  if (!(typeof diameter === 'number' && diameter >= low && diameter <= high)) {
    throw new InputError('diameter', diameter, { is: 'diameter', low, high });
  }
  return diameter;
}
