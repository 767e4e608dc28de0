/** What readings have taught of a car has to be of this car. */

import { sidesOf } from '../adjuster/of-corner.ts';
import { unknownsOf } from '../adjuster/unknowns.ts';
import type { AxleName, AxleStart, Car, Corner, Learned, LearnedPart } from '../contract.ts';
import { AXLES, axleOf } from '../corners.ts';
import { InputError } from '../input-error.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { check } from './refuse.ts';
import { learned as schema, start as startSchema } from './schema.ts';

/**
 * @param car its points and adjusters validated
 * @throws InputError such as `car.learned.parts[0].unknowns[3]`, where the car has no such point or chart
 */
export function validateLearned(value: unknown, car: Car, field: string): Learned {
  const learned = check(schema, value, field) as Learned;
  for (const [i, part] of learned.parts.entries()) checkPart(part, car, `${field}.parts[${i}]`);
  return learned;
}

/**
 * @param axle what it starts is validated
 * @throws InputError such as `car.front.start.parts[0].unknowns[3]`, where the axle has no such point or chart
 */
export function validateStart(car: Car, axle: AxleName, field: string): AxleStart {
  const start = check(startSchema, car[axle].start, field) as AxleStart;
  for (const [i, part] of start.parts.entries()) {
    checkPart(part, car, `${field}.parts[${i}]`, axle);
    if (part.at.length !== part.unknowns.length) {
      throw new InputError(`${field}.parts[${i}].at`, part.at.length, {
        is: 'exactly',
        value: String(part.unknowns.length),
      });
    }
  }
  return start;
}

function checkPart({ corners, unknowns, covariance }: LearnedPart, car: Car, field: string, axle?: AxleName): void {
  const all = assembliesOf(car).filter(([first]) => axle === undefined || axleOf(first!) === axle);
  const whole = all.find((own) => own.join() === corners.join());
  if (!whole) throw new InputError(`${field}.corners`, corners, { is: 'one-of', of: all.map((own) => own.join()) });
  const sides = sidesOf(car[axleOf(whole[0]!)]);
  const own = whole.length === 2 ? sides : [sides[whole[0]!.startsWith('L') ? 0 : 1]];
  const known = unknownsOf(own).map(({ side, name }) => `${whole[side]}.${name}`);
  const stranger = unknowns.findIndex((name, i) => !known.includes(name) || unknowns.indexOf(name) !== i);
  if (stranger >= 0)
    throw new InputError(`${field}.unknowns[${stranger}]`, unknowns[stranger], { is: 'one-of', of: known });
  const isWhole = covariance.length === (unknowns.length * (unknowns.length + 1)) / 2;
  const spreads = unknowns.map((_, i) => covariance[(i * (i + 3)) / 2] ?? -1);
  if (!isWhole || spreads.some((x) => x < 0)) {
    throw new InputError(`${field}.covariance`, covariance, { is: 'covariance' });
  }
}

/** The corners that are solved together. */
const assembliesOf = (car: Car): readonly (readonly Corner[])[] =>
  (['front', 'rear'] as const).flatMap((name): readonly (readonly Corner[])[] =>
    suspensionKinds[car[name].suspension.kind]?.rigidAxle ? [AXLES[name]] : AXLES[name].map((corner) => [corner]),
  );
