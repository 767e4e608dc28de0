import type { Starter } from './starter.ts';

/** The hub is part of the axle: only where the wheel stands is needed. */
export const beamRear: Starter = {
  kind: 'beam-rear',
  axle: 'rear',
  name: 'rigid rear axle',
  points: { wheelCentre: [0, 771, 321] },
  camber: 0,
  toe: 0,
};
