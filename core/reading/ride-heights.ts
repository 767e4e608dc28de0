/** How level the body stands across an axle, from the ride heights of its two corners. */
import type { AxleName, Reading } from '../contract.ts';
import { AXLES } from '../corners.ts';

/** left − right, mm, as cross camber is; + the left corner stands higher. Nothing unless both were measured. */
export function crossHeight({ rideHeights = {} }: Reading, axle: AxleName): number | undefined {
  const [left, right] = AXLES[axle];
  const [l, r] = [rideHeights[left], rideHeights[right]];
  return l === undefined || r === undefined ? undefined : l - r;
}
