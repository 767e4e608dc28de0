import { beamFront } from './beam-front.ts';
import type { SuspensionKind } from './kind.ts';

/** From the body to one knuckle; from that one to the other. */
const LINKS = [
  ['dragBody', 'dragKnuckle'],
  ['crossNear', 'crossFar'],
] as const;

/**
 * A rigid steered axle with one rod from knuckle to knuckle and a drag link from the steering box to one of them. Each
 * knuckle turns on its own two ball joints in the axle. The drag link holds the one it is on, the cross rod the other by
 * that one: the rod's length sets total toe, the drag link's turns both wheels alike and sets the steering wheel
 * straight. The steering box is held; it is on the car, so that an axle that goes up and down under it is steered.
 *
 * Both rods are there once; their points are given with the left side, in the left corner's frame: y is negative right of
 * the middle. On which knuckle the drag link is, its own end says.
 */
export const beamCrossRod: SuspensionKind = {
  ...beamFront,
  kind: 'beam-cross-rod',
  name: 'Rigid front axle, cross rod',
  points: ['upperBall', 'lowerBall', ...LINKS.flat(), 'wheelCentre'],
  links: LINKS,
  rack: undefined,
  rigidAxle: { once: LINKS.flat(), knuckles: true },
};
