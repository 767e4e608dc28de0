import type { Adjuster } from '../contract.ts';
import type { Unsure } from './kind.ts';

/**
 * How far an adjuster moves what it moves, where that is a usual figure: one share of it, until moves that were read teach
 * it.
 * @param scaled the adjuster that moves so many times as far
 * @param sigma one standard deviation of that share: trade practice, no source
 */
export const usualShare = (
  name: string,
  scaled: (adjuster: Adjuster, by: number) => Adjuster,
  sigma: number,
): Unsure => ({
  of: [name],
  sigma: (_, { usual }) => (usual ? sigma : 0),
  with: (adjuster, [share = 0]) => scaled(adjuster, 1 + share),
});
