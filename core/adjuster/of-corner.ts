/** Which adjusters a corner has. */
import type { Adjuster, Axle, Car, Corner, Suspension } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { adjusterKinds } from './catalogue.ts';

/** Adjusters a corner: more than any car has, and as many as a plan can go through. */
export const MOST_ADJUSTERS = 16;

/** Whether it works on a part that a rigid axle has once, such as its lateral rod. */
export function isOnce(adjuster: Adjuster, { suspension }: Pick<Axle, 'suspension'>): boolean {
  const { once = [] } = suspensionKinds[suspension.kind]?.rigidAxle ?? {};
  const { points = [], links = [] } = adjusterKinds[adjuster.kind]?.touches(adjuster) ?? {};
  return once.some((name) => points.includes(name) || links.includes(name));
}

/**
 * The adjusters of one side of a validated axle, on the right those of its own list if it has one. What works on a part
 * that the axle has once stands with the left side, in whichever list it is.
 */
export const adjustersOfSide = (axle: Axle, left: boolean): readonly Adjuster[] =>
  left ? axle.adjusters : (axle.rightAdjusters ?? axle.adjusters).filter((one) => !isOnce(one, axle));

/** One corner as it was given: validated. */
export interface Side {
  readonly suspension: Suspension;
  readonly adjusters: readonly Adjuster[];
}

/** Left and right side of a validated axle. */
export const sidesOf = (axle: Axle): readonly [Side, Side] => [
  { suspension: axle.suspension, adjusters: adjustersOfSide(axle, true) },
  { suspension: axle.rightSuspension ?? axle.suspension, adjusters: adjustersOfSide(axle, false) },
];

/** The side of a validated car that a corner is. */
export const sideOf = (car: Car, corner: Corner): Side => sidesOf(car[axleOf(corner)])[isLeft(corner) ? 0 : 1];

/** The adjusters of a corner of a validated car, each with positions of its own there. */
export const adjustersOf = (car: Car, corner: Corner): readonly Adjuster[] =>
  adjustersOfSide(car[axleOf(corner)], isLeft(corner));
