import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import type { Adjuster, CornerPose, Settings, Suspension } from '../contract.ts';
import { validateAdjusters, validateSettings } from '../records/adjusters.ts';
import { validateSuspension } from '../records/suspension.ts';
import { UnitModel } from './unit.ts';

/** What one step of an adjuster does to its wheel, degrees. */
export interface StepEffect {
  readonly adjuster: string;
  /** The step in words, e.g. "1 turn longer". */
  readonly step: string;
  readonly camber: number;
  readonly toe: number;
  /** Absent where the suspension has no steering axis. */
  readonly caster?: number;
  /** What the same step does to the other wheel of a rigid axle. */
  readonly otherWheel?: { readonly camber: number; readonly toe: number };
}

/**
 * What one step of each adjuster does with the others at `settings`, degrees. An adjuster whose step no pose allows is
 * left out.
 * @throws InputError naming the field, the value and what is allowed
 */
export function adjusterEffects(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings = {},
): StepEffect[] {
  const checked = validateSuspension(suspension);
  const fitted = validateAdjusters(adjusters, checked);
  const model = UnitModel.ofCorner(checked, fitted);
  const stands = validateSettings(settings, fitted);
  return fitted.flatMap((adjuster) => {
    const { from, to, name } = (adjusterKinds[adjuster.kind] as AdjusterKind).step(adjuster);
    const before = model.pose([{ ...stands, [adjuster.id]: from }]);
    const after = model.pose([{ ...stands, [adjuster.id]: to }]);
    if (!before.reachable || !after.reachable) return [];
    const [own, other] = after.corners.map((pose, i) => gained(before.corners[i] as CornerPose, pose));
    if (!own) return [];
    const { camber, toe, ...caster } = own;
    const rest = other ? { otherWheel: { camber: other.camber, toe: other.toe } } : {};
    return [{ adjuster: adjuster.id, step: name, camber, toe, ...caster, ...rest }];
  });
}

function gained(before: CornerPose, after: CornerPose): { camber: number; toe: number; caster?: number } {
  const caster =
    before.caster === undefined || after.caster === undefined ? {} : { caster: after.caster - before.caster };
  return { camber: after.camber - before.camber, toe: after.toe - before.toe, ...caster };
}
