import type { Adjuster, Position } from '../contract.ts';
import { adjusterKinds } from './catalogue.ts';

/** Every position that a validated adjuster has: ascending mm, degrees or turns, or labels as listed. */
export function adjusterPositions(adjuster: Adjuster): readonly Position[] {
  return adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [];
}
