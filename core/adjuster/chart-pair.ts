import type { Axle } from '../contract.ts';

/**
 * Ids of the two adjusters that a chart of this axle is about: those that are no rods, the first two where there are
 * more. Nothing where there are fewer than two.
 */
export function chartPair(axle: Axle): readonly [string, string] | undefined {
  const leaning = axle.adjusters.filter(({ kind }) => kind !== 'threaded-rod');
  const [first, second] = leaning.length >= 2 ? leaning : axle.adjusters;
  return first && second ? [first.id, second.id] : undefined;
}
