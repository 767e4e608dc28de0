/** What an axle and a car have to be, whole: their suspensions, their adjusters, what belongs together. */
import * as v from 'valibot';
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { number, textUpTo } from '../adjuster/fields.ts';
import { adjustersOfSide, isOnce } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import type { Adjuster, Axle, Car, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { checkAlone, validateAdjusters } from './adjusters.ts';
import { beside, each } from './gather.ts';
import { validateLearned, validateStart } from './learned.ts';
import { withMeasured } from './measured.ts';
import { object, open, shape } from './object.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';
import { suspensionKind, validateSuspension } from './suspension.ts';

/** An axle's own fields; what lies in them is checked by itself. */
export const AXLE = open(
  {
    suspension: v.unknown(),
    rightSuspension: v.optional(v.unknown()),
    adjusters: v.unknown(),
    rightAdjusters: v.optional(v.unknown()),
    steered: v.boolean(ruleText({ is: 'yes-or-no' })),
  },
  shape('suspension adjusters steered', { as: 'object' }),
);

/** @throws InputError */
export function validateAxle(value: unknown, field = 'axle'): Axle {
  const given = check(AXLE, value, field);
  const { steered, suspension: left, rightSuspension: right, rightAdjusters, ...extra } = given;
  const suspension = beside(
    () => validateSuspension(left, `${field}.suspension`),
    () => right !== undefined && validateSuspension(right, `${field}.rightSuspension`, true),
    () => checkAlone(extra.adjusters, `${field}.adjusters`),
    () => rightAdjusters !== undefined && checkAlone(rightAdjusters, `${field}.rightAdjusters`),
  );
  const adjusters = beside(
    () => validateAdjusters(extra.adjusters, suspension, `${field}.adjusters`),
    () => ownRight(suspension, right, `${field}.rightSuspension`),
    () => rightAdjusters !== undefined && checkAlone(rightAdjusters, `${field}.rightAdjusters`),
  );
  const axle = { ...extra, suspension, ...ownRight(suspension, right, `${field}.rightSuspension`), adjusters, steered };
  if (rightAdjusters !== undefined) return { ...axle, rightAdjusters: ownAdjusters(axle, rightAdjusters, field) };
  if (axle.rightSuspension) validateAdjusters(adjustersOfSide(axle, false), axle.rightSuspension, `${field}.adjusters`);
  return axle;
}

function ownRight(left: Suspension, right: unknown, field: string): Pick<Axle, 'rightSuspension'> {
  if (right === undefined) return {};
  const rightSuspension = validateSuspension(right, field, true);
  checkRigidAxle(left, rightSuspension, field);
  return { rightSuspension };
}

/** The right side's own list: what is one for the whole axle is in both lists, what it has once in the left one. */
function ownAdjusters(axle: Axle, given: unknown, field: string): Adjuster[] {
  const { suspension, rightSuspension = suspension, adjusters } = axle;
  const path = `${field}.rightAdjusters`;
  const own = validateAdjusters(given, withOnce(suspension, rightSuspension), path);
  own.forEach((one, i) => {
    const twin = adjusters.find(({ id, kind }) => id === one.id && kind === one.kind);
    if (!twin && isOnce(one, axle)) throw new InputError(`${path}[${i}].id`, one.id, { is: 'given-with-left' });
    if (!twin && isOfWholeAxle(one)) throw new InputError(`${path}[${i}].id`, one.id, { is: 'on-both-sides' });
  });
  const lacking = adjusters.find((one) => isOfWholeAxle(one) && !own.some(({ id }) => id === one.id));
  if (lacking) throw new InputError(path, lacking.id, { is: 'on-both-sides' });
  return own;
}

const isOfWholeAxle = ({ kind }: Adjuster): boolean => adjusterKinds[kind]?.wholeAxle === true;

/** The right side with the points that its axle has once: a list that was copied from the left may name them. */
function withOnce({ kind, points }: Suspension, right: Suspension): Suspension {
  const once = suspensionKinds[kind]?.rigidAxle?.once ?? [];
  const there = Object.entries(points).filter(([name]) => once.includes(name));
  return { ...right, points: { ...Object.fromEntries(there), ...right.points } };
}

/** An axle that is one piece has the same kind on both sides, and what it has once on its left one. */
function checkRigidAxle(left: Suspension, right: Suspension, field: string): void {
  const { rigidAxle } = suspensionKind(left.kind, field);
  if (left.kind !== right.kind && (rigidAxle || suspensionKind(right.kind, field).rigidAxle)) {
    const { name } = suspensionKind(left.kind, field);
    throw new InputError(`${field}.kind`, right.kind, { is: 'as-on-the-left', kind: { id: left.kind, name } });
  }
  const twice = rigidAxle?.once.find((name) => name in right.points);
  if (twice) throw new InputError(`${field}.points.${twice}`, right.points[twice], { is: 'given-with-left' });
}

/** A car's own fields, without its axles. */
export const CAR = open(
  {
    id: schema.id,
    label: schema.shortText,
    plate: v.optional(textUpTo(40)),
    customer: v.optional(textUpTo(120)),
    vin: v.optional(textUpTo(40)),
    tyres: v.optional(textUpTo(200)),
    notes: v.optional(textUpTo(schema.MOST.notes)),
    wheel: object({ rimDiameter: v.optional(number(100, 2000, 'mm')) }, shape('rimDiameter?', { in: 'mm' })),
    steeringRatio: v.optional(number(4, 40, 'to 1')),
    wheelbase: v.optional(number(500, 10000, 'mm')),
    front: v.unknown(),
    rear: v.unknown(),
    learned: v.optional(v.unknown()),
  },
  shape('id label wheel front rear', { as: 'object' }),
);

/**
 * A car as core takes it: points built from tape dimensions where there are no points, adjusters without a name given
 * their kind's. Fields that are not known are kept.
 * @throws InputError such as `car.front.adjusters[0].at`
 */
export function validateCar(value: unknown, field = 'car'): Car {
  const axles = ({ front, rear }: Ends) => [
    () => validateAxle(front, `${field}.front`),
    () => validateAxle(rear, `${field}.rear`),
  ];
  const given = beside(() => check(CAR, value, field), ...axles((value ?? {}) as Ends));
  const [front, rear] = each(axles(given)) as [Axle, Axle];
  const { learned, ...rest } = given;
  const car: Car = { ...rest, front, rear };
  each(
    (['front', 'rear'] as const).map((axle) => () => {
      if (car[axle].start !== undefined) validateStart(car, axle, `${field}.${axle}.start`);
    }),
  );
  // What readings have taught may have moved its points.
  if (learned === undefined) return withMeasured(car, field);
  return { ...car, learned: validateLearned(learned, car, `${field}.learned`) };
}

interface Ends {
  readonly front?: unknown;
  readonly rear?: unknown;
}
