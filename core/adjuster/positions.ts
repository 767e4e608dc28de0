import type { Adjuster, Position } from '../contract.ts';
import { adjusterKinds } from './catalogue.ts';

/**
 * Every position that an adjuster has: ascending mm (shims, slide), degrees (cam, clamp bolt, sleeve, wedge) or turns (rod),
 * or labels as listed. A position between two of them is taken by every function all the same where the kind accepts it.
 * @param adjuster validated; of a kind that is not in the catalogue there are none
 */
export function adjusterPositions(adjuster: Adjuster): readonly Position[] {
  return adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [];
}
