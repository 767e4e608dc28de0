/** A corner that is asked about alone, checked and compiled: what every question about one begins with. */
import { validateAdjusters, validateSettings } from '../check/adjusters.ts';
import { validateSuspension } from '../check/suspension.ts';
import type { Adjuster, Settings, Suspension } from '../contract.ts';
import { type CornerModel, Mechanism } from '../pose/mechanism.ts';

export interface CheckedCorner {
  readonly adjusters: readonly Adjuster[];
  readonly settings: Settings;
  readonly mechanism: Mechanism;
  /** The corner alone; the other end of a rigid axle stands at its reference. */
  readonly model: CornerModel;
}

/** @throws InputError such as `suspension.points.upperBall`, `adjusters[0].at`, `settings.rod` */
export function checkedCorner(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
): CheckedCorner {
  const checked = validateSuspension(suspension);
  const fitted = validateAdjusters(adjusters, checked);
  const mechanism = Mechanism.ofCorner(checked, fitted);
  return { adjusters: fitted, settings: validateSettings(settings, fitted), mechanism, model: mechanism.corner() };
}
