import type { SuspensionKind } from './kind.ts';

/** A rigid rear axle: the hub is part of it, and only what sits between hub and axle changes the wheel's angles. */
export const beamRear: SuspensionKind = {
  kind: 'beam-rear',
  name: 'Rigid rear axle',
  points: ['wheelCentre'],
  height: false,
};
