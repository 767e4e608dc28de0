import type { Vec3 } from '../contract.ts';
import type { Bearing } from '../said.ts';

const WAYS = [
  ['rearward', 'forward'],
  ['inboard', 'outboard'],
  ['down', 'up'],
] as const satisfies readonly (readonly [Bearing, Bearing])[];

/** Which way a vector of a corner's frame mostly points. */
export function bearing(vector: Vec3): Bearing {
  const sizes = vector.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes));
  return WAYS[axis]![vector[axis]! > 0 ? 1 : 0];
}
