import type { Adjuster, CornerPose, Settings, Suspension, Vec3 } from '../../core/contract.ts';
import { type PoseOptions, solveCorner } from '../../core/index.ts';

/** The pose at these positions; there has to be one. */
export function poseOf(
  suspension: Suspension,
  adjusters: readonly Adjuster[] = [],
  settings: Settings = {},
  options: PoseOptions = {},
): CornerPose {
  const pose = solveCorner(suspension, adjusters, settings, options);
  if (!pose.reachable) throw new Error(pose.message);
  return pose;
}

export const apart = (a: Vec3 | undefined, b: Vec3 | undefined): number =>
  Math.hypot(...[0, 1, 2].map((i) => (a?.[i] ?? Number.NaN) - (b?.[i] ?? Number.NaN)));
