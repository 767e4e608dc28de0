/** Plain 3-vectors, for set-up and for answers; the pose solver's inner loop works on flat arrays instead. */
import type { Vec3 } from '../contract.ts';

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const norm = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => norm(sub(a, b));
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
/** The unit vector along `a`, which must not be zero: callers check at the edge. */
export const normalised = (a: Vec3): Vec3 => scale(a, 1 / norm(a));
/** Half way between two points. */
export const middle = (a: Vec3, b: Vec3): Vec3 => scale(add(a, b), 0.5);
/** As a mirror in the middle of the car shows it. */
export const mirrored = ([x, y, z]: Vec3): Vec3 => [x, 0 - y, z];
