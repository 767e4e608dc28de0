import { validateCarSettings } from '../check/adjusters.ts';
import { validateCar } from '../check/car.ts';
import { validateReading } from '../check/spec.ts';
import type { Car, CarSettings, Reading } from '../contract.ts';
import { expected } from '../plan/as-measured.ts';
import { predictWith } from '../plan/predict.ts';
import { compileCar } from '../pose/car-model.ts';
import { readingInWords } from './in-words.ts';

/**
 * The reading after the adjusters go from one set of positions to another: measured + (model at `to` − model at
 * `from`), per corner, degrees. Angles that were not measured stay absent; a corner where no pose exists has no angles
 * and is named in `unreachable`. Of a rigid axle on links it says what its pinion angle and its place across the car will
 * be where they were read, and how far both have changed since, degrees and mm, where something on it has moved.
 * @param from where the adjusters stood when the reading was taken; one that is absent stands at its reference
 * @param to where they go; one that is absent goes to its reference
 * @throws InputError naming the field, the value and what is allowed
 */
export function predictReading(car: Car, reading: Reading, from: CarSettings, to: CarSettings): Reading {
  const { car: checked, reading: read, from: stood, to: goes } = checkedChange(car, reading, from, to);
  return readingInWords(predictWith(compileCar(checked), read, stood, goes));
}

/**
 * What the rack should read after moves, degrees: as `predictReading`, with the wheels of the model leaning as they were
 * read (see plan/as-measured.ts), which is closer where a move pitches an upright.
 * @param from where the adjusters stood when the reading was taken; one that is absent stands at its reference
 * @throws InputError naming the field, the value and what is allowed
 */
export function expectReading(car: Car, reading: Reading, from: CarSettings, to: CarSettings): Reading {
  const { car: checked, reading: read, from: stood, to: goes } = checkedChange(car, reading, from, to);
  return readingInWords(expected(checked, read, stood, goes));
}

function checkedChange(car: Car, reading: Reading, from: CarSettings, to: CarSettings) {
  const checked = validateCar(car);
  return {
    car: checked,
    reading: validateReading(reading),
    from: validateCarSettings(from, checked, 'from'),
    to: validateCarSettings(to, checked, 'to'),
  };
}
