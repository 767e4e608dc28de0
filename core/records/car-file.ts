/** The file that is exchanged and given to the terminal: from text or data, of any version that this one can read. */
import * as v from 'valibot';
import { ruleText } from '../adjuster/rule-text.ts';
import { validateCar } from '../check/car.ts';
import { beside, refusalsOf } from '../check/gather.ts';
import { object, open, shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import * as schema from '../check/schema.ts';
import { validateSpec } from '../check/spec.ts';
import type { CarFile } from '../contract.ts';
import { InputError } from '../input-error.ts';
import type { Refused } from '../rule.ts';
import { checkDepth, parseJson } from './json.ts';
import { migrate } from './migrations.ts';

const format = v.literal('cornerwright', ruleText({ is: 'exactly', value: 'cornerwright' }));
const HEADER = open({ format }, shape('format version car', { as: 'car-file', open: true }));
const FILE = object({
  format,
  version: v.unknown(),
  car: v.unknown(),
  spec: v.optional(v.unknown()),
  visits: v.optional(schema.visits),
});
/** Levels of a car file; our deepest has half as many. */
export const DEEPEST = 24;
export { checkDepth, parseJson };

/**
 * A car file of any version that this one can read, brought to the present one; its car as `validateCar` returns it. Fields
 * of a car, a visit, a round or a move that are not known are kept; one beside `car`, `spec` and `visits` is refused.
 * @throws InputError naming the field, the value and what is allowed
 */
export function validateCarFile(value: unknown): CarFile {
  checkDepth(value, 'file', DEEPEST);
  check(HEADER, value, 'file');
  const { format, car, spec, visits } = check(FILE, migrate('car-file', value), '');
  const file: CarFile = {
    format,
    version: 1,
    car: beside(
      () => validateCar(car),
      () => spec !== undefined && validateSpec(spec),
    ),
    ...(spec === undefined ? {} : { spec: validateSpec(spec) }),
    ...(visits === undefined ? {} : { visits }),
  };
  const stranger = (visits ?? []).findIndex((visit) => visit.carId !== file.car.id);
  if (stranger >= 0) {
    throw new InputError(`visits[${stranger}].carId`, visits?.[stranger]?.carId, {
      is: 'car',
      id: file.car.id,
      which: 'this',
    });
  }
  return file;
}

/**
 * All that is wrong with a car file, field by field, the first as `validateCarFile` throws it: for a form, which shows each
 * beside its field. What can only be judged once another field is right comes when that one is.
 */
export function problemsOf(value: unknown): Refused[] {
  const all = refusalsOf(() => validateCarFile(value)).map(({ field, value, rule }) => ({ field, value, rule }));
  return all.filter(({ field }, i) => all.findIndex((one) => one.field === field) === i);
}

/** Values in a car file: many times what a car with thousands of visits has. */
const MOST_VALUES = 2_000_000;

/** The same from JSON text of up to 50 000 000 characters. @throws InputError as `validateCarFile`, or when it is not JSON */
export const parseCarFile = (text: string): CarFile =>
  validateCarFile(parseJson(text, 'file', undefined, { values: MOST_VALUES, deepest: DEEPEST }));
