/** A term by the places of its parts: which assembly's states, and which of a state's numbers. */

import type { Term } from '../terms.ts';
import type { StateSpace } from './state-space.ts';

export interface IndexedTerm {
  readonly term: Term;
  /** `at` is the place in a state's numbers. */
  readonly parts: readonly { readonly assembly: number; readonly at: number; readonly factor: number }[];
}

/** Finds a term's parts in the states of assemblies that hold them all. */
export function indexTerm(term: Term, states: readonly StateSpace[]): IndexedTerm {
  const parts = term.parts.map(({ corner, angle, factor }) => {
    const assembly = states.findIndex(({ corners }) => corners.includes(corner));
    return { assembly, at: states[assembly]!.placeOf(corner, angle), factor };
  });
  return { term, parts };
}

/** Whether one assembly decides it alone. */
export const isOwn = ({ parts }: IndexedTerm): boolean =>
  parts.every(({ assembly }) => assembly === parts[0]?.assembly);

/** What the term is where the assemblies' numbers are these. */
export function termAt(
  { term, parts }: IndexedTerm,
  numbers: readonly Float64Array[],
  constant: number = term.constant,
): number {
  let value = constant;
  for (const { assembly, at, factor } of parts) value += factor * numbers[assembly]![at]!;
  return value;
}
