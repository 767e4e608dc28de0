/** The edge of core: whatever comes from a file or a form is checked here once, and trusted after. */
import * as v from 'valibot';
import { number } from '../adjuster/fields.ts';
import { adjustersOf, adjustersOfSide } from '../adjuster/of-corner.ts';
import type { Axle, Car, CarFile, PlanRequest, Reading, Spec, Suspension, WheelSpec } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { AXLE_ANGLES } from '../reading/axle-angles.ts';
import { aimed, WHEEL_ANGLES } from '../reading/spec-terms.ts';
import { migrate } from '../records/migrations.ts';
import { millionths } from '../units/shim-drawer.ts';
import { ids, validateAdjusters, validateCarSettings } from './adjusters.ts';
import { object, open } from './object.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';
import { suspensionKind, validateSuspension } from './suspension.ts';

export const validateReading = (value: unknown, field = 'reading'): Reading => check(schema.reading, value, field);

/** @throws InputError naming, for instance, `spec.front.left.camber.low` */
export function validateSpec(value: unknown, field = 'spec'): Spec {
  const spec = check(schema.spec, value, field);
  for (const axle of ['front', 'rear'] as const) {
    const own = spec[axle];
    if (!own) continue;
    for (const angle of AXLE_ANGLES) if (own[angle]) aimed(own[angle], `${field}.${axle}.${angle}`);
    checkWheel(own, `${field}.${axle}`);
    for (const side of ['left', 'right'] as const) checkWheel(own[side] ?? {}, `${field}.${axle}.${side}`);
  }
  return spec;
}

function checkWheel(windows: WheelSpec, field: string): void {
  for (const angle of WHEEL_ANGLES) if (windows[angle]) aimed(windows[angle], `${field}.${angle}`);
}

const AXLE = open(
  {
    suspension: v.unknown(),
    rightSuspension: v.optional(v.unknown()),
    adjusters: v.unknown(),
    steered: v.boolean('true or false'),
  },
  'an object, { suspension, adjusters, steered }',
);

/** @throws InputError */
export function validateAxle(value: unknown, field = 'axle'): Axle {
  const { steered, ...given } = check(AXLE, value, field);
  const suspension = validateSuspension(given.suspension, `${field}.suspension`);
  const adjusters = validateAdjusters(given.adjusters, suspension, `${field}.adjusters`);
  const { rightSuspension: _, ...extra } = given;
  if (given.rightSuspension === undefined) return { ...extra, suspension, adjusters, steered };
  const rightSuspension = validateSuspension(given.rightSuspension, `${field}.rightSuspension`);
  checkRigidAxle(suspension, rightSuspension, `${field}.rightSuspension`);
  const axle = { ...extra, suspension, rightSuspension, adjusters, steered };
  validateAdjusters(adjustersOfSide(axle, false), rightSuspension, `${field}.adjusters`);
  return axle;
}

/** An axle that is one piece has the same kind on both sides, and what it has once on its left one. */
function checkRigidAxle(left: Suspension, right: Suspension, field: string): void {
  const { rigidAxle } = suspensionKind(left.kind, field);
  if (left.kind !== right.kind && (rigidAxle || suspensionKind(right.kind, field).rigidAxle)) {
    throw new InputError(`${field}.kind`, right.kind, `${left.kind}, as on the left`);
  }
  const twice = rigidAxle?.once.find((name) => name in right.points);
  if (twice)
    throw new InputError(`${field}.points.${twice}`, right.points[twice], 'nothing: it is given with the left');
}

const CAR = open(
  {
    id: schema.id,
    label: schema.shortText,
    plate: v.optional(v.pipe(v.string('text'), v.maxLength(40, 'up to 40 characters'))),
    notes: v.optional(
      v.pipe(v.string('text'), v.maxLength(schema.MOST.notes, `up to ${schema.MOST.notes} characters`)),
    ),
    wheel: object({ rimDiameter: number(100, 2000, 'mm') }, '{ rimDiameter }, mm'),
    front: v.unknown(),
    rear: v.unknown(),
  },
  'an object, { id, label, wheel, front, rear }',
);

/** @throws InputError such as `car.front.adjusters[0].at` */
export function validateCar(value: unknown, field = 'car'): Car {
  const given = check(CAR, value, field);
  return {
    ...given,
    front: validateAxle(given.front, `${field}.front`),
    rear: validateAxle(given.rear, `${field}.rear`),
  };
}

const format = v.literal('cornerwright', 'cornerwright');
const HEADER = open({ format }, 'a car file, { format, version, car, … }');
const FILE = object({
  format,
  version: v.unknown(),
  car: v.unknown(),
  spec: v.optional(v.unknown()),
  visits: v.optional(schema.visits),
});
const DEEPEST = 24;

/** A car file of any version that this one can read, brought to the present one. @throws InputError */
export function validateCarFile(value: unknown): CarFile {
  checkDepth(value, 'file');
  check(HEADER, value, 'file');
  const { format, car, spec, visits } = check(FILE, migrate('car-file', value), '');
  const file: CarFile = {
    format,
    version: 1,
    car: validateCar(car),
    ...(spec === undefined ? {} : { spec: validateSpec(spec) }),
    ...(visits === undefined ? {} : { visits }),
  };
  const stranger = (visits ?? []).findIndex((visit) => visit.carId !== file.car.id);
  if (stranger >= 0) {
    throw new InputError(`visits[${stranger}].carId`, visits?.[stranger]?.carId, `the id of this car, ${file.car.id}`);
  }
  return file;
}

/** The same from text. @throws InputError when it is not JSON */
export const parseCarFile = (text: string): CarFile => validateCarFile(parseJson(text, 'file'));

const LONGEST_FILE = 50_000_000;

/** @throws InputError when the text is not JSON or too long */
export function parseJson(text: string, field: string): unknown {
  if (typeof text !== 'string' || text.length > LONGEST_FILE) {
    throw new InputError(field, typeof text, `text of at most ${LONGEST_FILE} characters`);
  }
  try {
    // A byte order mark is what some editors put before it.
    return JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'not JSON';
    throw new InputError(field, text.slice(0, 40), `JSON text (${reason})`);
  }
}

/** Refuses what is nested deeper than any file of ours, before anything walks into it. */
export function checkDepth(value: unknown, field: string): void {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) throw new InputError(field, 'deeply nested data', `at most ${DEEPEST} levels`);
    level = level.flatMap((one) => (typeof one === 'object' && one !== null ? Object.values(one) : []));
  }
}

/** Positions and readings are keyed by corner; who writes what is locked that way, `{ LF: ['rod'] }`, is understood. */
const byCornerToList = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).flatMap(([corner, ids]) => [ids].flat().map((adjuster) => ({ corner, adjuster })))
    : value;

const REQUEST = open({
  car: v.unknown(),
  spec: v.unknown(),
  reading: v.unknown(),
  settings: v.unknown(),
  locked: v.optional(
    v.pipe(
      v.unknown(),
      v.transform(byCornerToList),
      schema.list(object(schema.adjusterRef, '{ corner, adjuster }'), 256),
    ),
  ),
  style: v.optional(v.picklist(['closest', 'least-work', 'surest'], 'closest, least-work or surest')),
  maxEffort: v.optional(number(0, 100000, 'minutes')),
  gauge: v.optional(schema.gauge),
  drawer: v.optional(schema.drawer),
});

/** Everything that a plan is made of. @throws InputError */
export function validatePlanRequest(value: unknown): PlanRequest {
  check(open({}, 'an object, { car, spec, reading, settings }'), value, 'request');
  const given = check(REQUEST, value, '');
  const car = validateCar(given.car);
  for (const [i, { corner, adjuster }] of (given.locked ?? []).entries()) {
    const own = adjustersOf(car, corner);
    if (!own.some((one) => one.id === adjuster)) throw new InputError(`locked[${i}].adjuster`, adjuster, ids(own));
  }
  for (const [i, { size }] of (given.drawer ?? []).entries()) {
    const twin = given.drawer?.slice(0, i).some((one) => millionths(one.size) === millionths(size));
    if (twin) throw new InputError(`drawer[${i}].size`, size, 'a size that is listed once');
  }
  return {
    car,
    spec: validateSpec(given.spec),
    reading: validateReading(given.reading),
    settings: validateCarSettings(given.settings, car),
    ...(given.locked ? { locked: given.locked } : {}),
    ...(given.style ? { style: given.style } : {}),
    ...(given.maxEffort === undefined ? {} : { maxEffort: given.maxEffort }),
    ...(given.gauge ? { gauge: given.gauge } : {}),
    ...(given.drawer ? { drawer: given.drawer } : {}),
  };
}
