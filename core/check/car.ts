/** What an axle and a car have to be, whole: their suspensions, their adjusters, what belongs together. */
import * as v from 'valibot';
import { number, textUpTo } from '../adjuster/fields.ts';
import { adjustersOfSide } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import type { Axle, Car, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { validateAdjusters } from './adjusters.ts';
import { object, open, shape } from './object.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';
import { suspensionKind, validateSuspension } from './suspension.ts';

const AXLE = open(
  {
    suspension: v.unknown(),
    rightSuspension: v.optional(v.unknown()),
    adjusters: v.unknown(),
    steered: v.boolean(ruleText({ is: 'yes-or-no' })),
  },
  shape('suspension adjusters steered', { as: 'object' }),
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
    const { name } = suspensionKind(left.kind, field);
    throw new InputError(`${field}.kind`, right.kind, { is: 'as-on-the-left', kind: { id: left.kind, name } });
  }
  const twice = rigidAxle?.once.find((name) => name in right.points);
  if (twice) throw new InputError(`${field}.points.${twice}`, right.points[twice], { is: 'given-with-left' });
}

const CAR = open(
  {
    id: schema.id,
    label: schema.shortText,
    plate: v.optional(textUpTo(40)),
    notes: v.optional(textUpTo(schema.MOST.notes)),
    wheel: object({ rimDiameter: number(100, 2000, 'mm') }, shape('rimDiameter', { in: 'mm' })),
    front: v.unknown(),
    rear: v.unknown(),
  },
  shape('id label wheel front rear', { as: 'object' }),
);

/**
 * A car as core takes it: points built from tape dimensions where there are no points, adjusters without a name given
 * their kind's. Fields that are not known are kept.
 * @throws InputError such as `car.front.adjusters[0].at`
 */
export function validateCar(value: unknown, field = 'car'): Car {
  const given = check(CAR, value, field);
  return {
    ...given,
    front: validateAxle(given.front, `${field}.front`),
    rear: validateAxle(given.rear, `${field}.rear`),
  };
}
