/**
 * Shared terms split over the assemblies that they tie.
 *
 * A shared term about v costs ((v − aim)/h)². That is its tangent at any v₀ plus ((v − v₀)/h)², and as v is linear in
 * the assemblies' angles the tangent splits over the assemblies and joins what their states cost by themselves: an
 * assembly's least cost then knows what the others want. Any v₀ gives a true bound.
 */
import type { IndexedTerm } from '../states/indexed-term.ts';
import { distanceOf, type Term } from '../terms.ts';
import type { Candidates } from './candidates.ts';

export interface Tangents {
  /** v₀ of each shared term. */
  readonly meetings: readonly number[];
  /** What the tangents add to each of an assembly's numbers, assembly by assembly. */
  readonly slopes: readonly Float64Array[];
  /** The sum of what they add whatever the states. */
  readonly constant: number;
}

export function tangentsAt(
  meetings: readonly number[],
  shared: readonly IndexedTerm[],
  candidates: readonly Candidates[],
): Tangents {
  const slopes = candidates.map(({ states }) => new Float64Array(states.stride));
  let constant = 0;
  shared.forEach(({ term, parts }, t) => {
    const meeting = meetings[t]!;
    const steep = slopeAt(term, meeting);
    constant += distanceOf(term, meeting) + steep * (term.constant - meeting);
    for (const { assembly, at, factor } of parts) slopes[assembly]![at]! += steep * factor;
  });
  return { meetings, slopes, constant };
}

/** How fast a term's cost grows with its value. */
export const slopeAt = ({ window }: Term, value: number): number => (2 * (value - window.aim)) / window.half ** 2;
