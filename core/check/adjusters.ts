import * as v from 'valibot';
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { misfit } from '../adjuster/fits.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { MOST_POSITIONS } from '../adjuster/steps.ts';
import type { Adjuster, Car, CarSettings, Position, Settings, Suspension } from '../contract.ts';
import { CORNERS } from '../contract.ts';
import { InputError } from '../input-error.ts';
import type { Called } from '../rule.ts';
import { jointsOf, rodsOf } from '../suspension/joints.ts';
import { each } from './gather.ts';
import { open, shape } from './object.ts';
import { check } from './refuse.ts';
import { carSettings, id, MOST, settings } from './schema.ts';
import { oneKindOf, suspensionKind } from './suspension.ts';

const LIST = v.array(v.unknown(), ruleText({ is: 'list', items: 'adjusters' }));
const KINDED = open(
  { kind: v.string(ruleText({ is: 'adjuster-kind' })) },
  shape('id kind', { as: 'object', open: true }),
);

/** The catalogue's kind of that name. @throws InputError */
export function adjusterKind(kind: string, field: string): AdjusterKind {
  const found = Object.hasOwn(adjusterKinds, kind) ? adjusterKinds[kind] : undefined;
  if (!found) throw new InputError(field, kind, oneKindOf(adjusterKinds));
  return found;
}

/**
 * The adjusters of a corner whose suspension is already validated. An adjuster without a name gets its kind's.
 * @throws InputError such as `front.adjusters[0].at`
 */
export function validateAdjusters(value: unknown, suspension: Suspension, field = 'adjusters'): Adjuster[] {
  const given = check(LIST, value, field);
  if (given.length > MOST.adjusters) {
    throw new InputError(field, given.length, { is: 'at-most', most: MOST.adjusters, items: 'adjusters' });
  }
  const adjusters = each(given.map((one, i) => () => validateAdjuster(one, suspension, `${field}[${i}]`)));
  const twin = adjusters.findIndex((one, i) => adjusters.findIndex((other) => other.id === one.id) !== i);
  if (twin >= 0) {
    throw new InputError(`${field}[${twin}].id`, adjusters[twin]?.id, { is: 'own-id' });
  }
  adjusters.forEach((one, i) => {
    checkPair(one, adjusters, `${field}[${i}].pair`);
  });
  return adjusters;
}

/** A limit on two packs is no limit unless the other one is there. */
function checkPair(adjuster: Adjuster, all: readonly Adjuster[], field: string): void {
  const pair = adjusterKind(adjuster.kind, field).pair?.(adjuster);
  if (!pair) return;
  const others = all.filter((one) => one.kind === adjuster.kind && one.id !== adjuster.id);
  if (!others.some((one) => one.id === pair.with)) {
    throw new InputError(`${field}.with`, pair.with, { is: 'adjuster', among: called(others) });
  }
}

/**
 * Adjusters as far as they can be looked at without their suspension.
 * @throws InputError such as `front.adjusters[0].at`
 */
export function checkAlone(value: unknown, field: string): void {
  const given = check(LIST, value, field).slice(0, MOST.adjusters);
  each(given.map((one, i) => () => parsed(one, `${field}[${i}]`)));
}

function parsed(value: unknown, field: string) {
  const given = check(KINDED, value, field);
  const kind = adjusterKind(given.kind, `${field}.kind`);
  const adjuster = check(kind.schema, value, field);
  check(id, adjuster.id, `${field}.id`);
  return { given, kind, adjuster };
}

function validateAdjuster(value: unknown, suspension: Suspension, field: string): Adjuster {
  const { given, kind, adjuster: own } = parsed(value, field);
  const adjuster: Adjuster = { ...given, ...own, name: own.name ?? kind.name };
  checkTouches(adjuster, kind, suspension, field);
  checkPositions(adjuster, kind, field);
  return adjuster;
}

function checkTouches(adjuster: Adjuster, kind: AdjusterKind, suspension: Suspension, field: string): void {
  const held = suspensionKind(suspension.kind, `${field}.suspension`);
  const points = jointsOf(held, suspension.points);
  const rods = rodsOf(held, suspension.points);
  const lacks = misfit(kind, held);
  if (lacks) throw new InputError(`${field}.kind`, kind.kind, { is: 'fits', suspension: held.name, lacks });
  const { points: moved = [], links: lengthened = [] } = kind.touches(adjuster);
  const wrongPoint = moved.find((name) => !points.includes(name));
  if (wrongPoint !== undefined) throw new InputError(`${field}.at`, wrongPoint, { is: 'point', among: points });
  const wrongLink = lengthened.findIndex((name) => !rods.includes(name));
  if (wrongLink >= 0) {
    throw new InputError(`${field}.links[${wrongLink}]`, lengthened[wrongLink], { is: 'point', among: rods });
  }
}

function checkPositions(adjuster: Adjuster, kind: AdjusterKind, field: string): void {
  if (!kind.accepts(adjuster, adjuster.reference)) {
    throw new InputError(`${field}.reference`, adjuster.reference, kind.allowed(adjuster));
  }
  const positions = within(field, () => kind.positions(adjuster));
  if (positions.length === 0) {
    throw new InputError(`${field}.range`, adjuster.range, { is: 'holds-a-step' });
  }
  if (positions.length > MOST_POSITIONS) {
    throw new InputError(field, positions.length, { is: 'at-most', most: MOST_POSITIONS, items: 'positions' });
  }
}

/** Puts where we are before the field that an inner check named. */
function within<T>(field: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputError) throw new InputError(`${field}.${error.field}`, error.value, error.rule);
    throw error;
  }
}

/**
 * Positions of one corner. A label written as a bare number is taken for the label.
 * @throws InputError such as `settings.LF.upper-front`
 */
export function validateSettings(value: unknown, adjusters: readonly Adjuster[], field = 'settings'): Settings {
  const given = check(settings, value, field);
  return Object.fromEntries(
    Object.entries(given).map(([key, position]) => {
      const adjuster = adjusters.find((one) => one.id === key);
      if (!adjuster) {
        throw new InputError(`${field}.${key}`, position, { is: 'no-such-adjuster', among: called(adjusters) });
      }
      return [key, accepted(adjuster, position, `${field}.${key}`)];
    }),
  );
}

/** Positions of a car. @throws InputError */
export function validateCarSettings(value: unknown, car: Car, field = 'settings'): CarSettings {
  const given = check(carSettings, value, field);
  const corners = CORNERS.filter((corner) => given[corner] !== undefined);
  return Object.fromEntries(
    corners.map((corner) => [corner, validateSettings(given[corner], adjustersOf(car, corner), `${field}.${corner}`)]),
  );
}

/** The position as the adjuster knows it. @throws InputError */
export function accepted(adjuster: Adjuster, position: Position, field: string): Position {
  const kind = adjusterKind(adjuster.kind, field);
  const found = [position, String(position)].find((one) => kind.accepts(adjuster, one));
  if (found === undefined) throw new InputError(field, position, kind.allowed(adjuster));
  return found;
}

/** Adjusters as a rule has them. */
export const called = (adjusters: readonly Adjuster[]): Called[] =>
  adjusters.map(({ id, name = id }) => ({ id, name }));
