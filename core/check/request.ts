/** What a plan is made of: a car, what is wanted of it, what was read, where its adjusters stand. */
import * as v from 'valibot';
import { choice, number } from '../adjuster/fields.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { type AdjusterRef, type Car, type PlanRequest, WHEEL_ANGLES } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { millionths } from '../units/shim-drawer.ts';
import { languages } from '../words/catalogue.ts';
import { called, validateCarSettings } from './adjusters.ts';
import { validateCar } from './car.ts';
import { object, open, shape } from './object.ts';
import { validatePacks } from './packs.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';
import { validateReading, validateSpec } from './spec.ts';

/** Positions and readings are keyed by corner; who writes what is locked that way, `{ LF: ['rod'] }`, is understood. */
const byCornerToList = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).flatMap(([corner, ids]) => [ids].flat().map((adjuster) => ({ corner, adjuster })))
    : value;

const KNOWN = ruleText({ is: 'one-of', of: Object.keys(languages) });
const REFS = v.pipe(
  v.unknown(),
  v.transform(byCornerToList),
  schema.list(object(schema.adjusterRef, shape('corner adjuster')), 256),
);
const refs = v.optional(REFS);
const OPTIONS = {
  locked: refs,
  done: refs,
  leave: refs,
  style: v.optional(choice(['closest', 'least-work', 'surest', 'practical'])),
  maxEffort: v.optional(number(0, 100000, 'minutes')),
  gauge: v.optional(schema.gauge),
  live: v.optional(schema.list(choice(WHEEL_ANGLES), WHEEL_ANGLES.length)),
  drawer: v.optional(schema.drawer),
  language: v.optional(
    v.pipe(
      v.string(KNOWN),
      v.check((name) => Object.hasOwn(languages, name), KNOWN),
    ),
  ),
};
type Options = Pick<PlanRequest, keyof typeof OPTIONS>;
const SHAPE = shape('style? locked?', { as: 'object', open: true });
/** What is asked beside a car file. */
export const ASKED = open(OPTIONS, SHAPE);
const REQUEST = open({
  car: v.unknown(),
  spec: v.unknown(),
  reading: v.unknown(),
  settings: v.unknown(),
  packs: v.optional(v.unknown()),
  unsure: v.optional(schema.list(object({ ...schema.adjusterRef, deviation: number(0, 1e4, '') }), 256)),
  wish: v.optional(v.unknown()),
  ...OPTIONS,
});

/** Everything that a plan is made of. @throws InputError */
export function validatePlanRequest(value: unknown): PlanRequest {
  check(open({}, shape('car spec reading settings', { as: 'object' })), value, 'request');
  const given = check(REQUEST, value, '');
  const car = validateCar(given.car);
  const settings = validateCarSettings(given.settings, car);
  return {
    car,
    spec: validateSpec(given.spec),
    ...(given.wish === undefined ? {} : { wish: validateSpec(given.wish, 'wish') }),
    reading: validateReading(given.reading),
    settings,
    ...(given.packs === undefined ? {} : { packs: validatePacks(given.packs, car, settings) }),
    ...(given.unsure && { unsure: fitted(given.unsure, car, 'unsure') }),
    ...forCar(given, car),
  };
}

/** What may be asked beside a car file. @throws InputError */
export function validateRequestOptions(value: unknown, car: Car): Options {
  check(open({}, SHAPE), value, 'options');
  return forCar(check(ASKED, value, ''), car);
}

/** Adjusters that the car has, by corner and id. @throws InputError such as `unknown[0].adjuster` */
export function validateRefs(value: unknown, car: Car, field: string): readonly AdjusterRef[] {
  const refs = check(REFS, value, field);
  checkFitted(refs, car, field);
  return refs;
}

function fitted<T extends AdjusterRef>(refs: readonly T[], car: Car, field: string): readonly T[] {
  checkFitted(refs, car, field);
  return refs;
}

function checkFitted(refs: readonly AdjusterRef[], car: Car, field: string): void {
  for (const [i, { corner, adjuster }] of refs.entries()) {
    const own = adjustersOf(car, corner);
    if (!own.some((one) => one.id === adjuster)) {
      throw new InputError(`${field}[${i}].adjuster`, adjuster, { is: 'adjuster', among: called(own) });
    }
  }
}

/** The options that were given, as far as they fit the car. @throws InputError */
function forCar(
  { style, maxEffort, gauge, live, drawer, language, ...given }: v.InferOutput<typeof ASKED>,
  car: Car,
): Options {
  const { locked, done, leave } = given;
  for (const [name, list] of Object.entries({ locked, done, leave })) checkFitted(list ?? [], car, name);
  for (const [i, { size }] of (drawer ?? []).entries()) {
    const twin = drawer?.slice(0, i).some((one) => millionths(one.size) === millionths(size));
    if (twin) throw new InputError(`drawer[${i}].size`, size, { is: 'listed-once' });
  }
  return {
    ...(locked ? { locked } : {}),
    ...(done ? { done } : {}),
    ...(leave ? { leave } : {}),
    ...(style ? { style } : {}),
    ...(maxEffort === undefined ? {} : { maxEffort }),
    ...(gauge ? { gauge } : {}),
    ...(live ? { live } : {}),
    ...(drawer ? { drawer } : {}),
    ...(language ? { language } : {}),
  };
}
