/** A term by the places of its parts: which unit's states, and which of a state's numbers. */

import type { Term } from '../terms.ts';
import type { UnitStates } from './state-space.ts';

export interface Placed {
  readonly term: Term;
  /** `at` is the place in a state's numbers. */
  readonly parts: readonly { readonly unit: number; readonly at: number; readonly factor: number }[];
}

/** Finds a term's parts in the states of units that hold them all. */
export function place(term: Term, states: readonly UnitStates[]): Placed {
  const parts = term.parts.map(({ corner, angle, factor }) => {
    const unit = states.findIndex(({ corners }) => corners.includes(corner));
    return { unit, at: (states[unit] as UnitStates).placeOf(corner, angle), factor };
  });
  return { term, parts };
}

/** Whether one unit decides it alone. */
export const isOwn = ({ parts }: Placed): boolean => parts.every(({ unit }) => unit === parts[0]?.unit);

/** What the term is where the units' numbers are these. */
export function termAt(
  { term, parts }: Placed,
  numbers: readonly Float64Array[],
  constant: number = term.constant,
): number {
  let value = constant;
  for (const { unit, at, factor } of parts) value += factor * ((numbers[unit] as Float64Array)[at] as number);
  return value;
}
