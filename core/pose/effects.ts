import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import { validateAdjusters, validateSettings } from '../check/adjusters.ts';
import { validateAxle } from '../check/car.ts';
import { validateSuspension } from '../check/suspension.ts';
import type { Adjuster, Axle, CornerPose, Settings, Suspension } from '../contract.ts';
import { kindOf } from './linkage.ts';
import { Mechanism, sidesOf } from './mechanism.ts';

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
  return stepEffects(Mechanism.ofCorner(checked, fitted), 0, validateSettings(settings, fitted));
}

/**
 * The same for both sides of an axle with every adjuster at its reference. A rigid axle is taken as the one piece that
 * it is, each side with its own points; what it has once stands with the left side.
 * @throws InputError naming the field (`axle.…`), the value and what is allowed
 */
export function axleEffects(axle: Axle): { readonly left: StepEffect[]; readonly right: StepEffect[] } {
  const [left, right] = sidesOf(validateAxle(axle));
  if (!kindOf(left.suspension).rigidAxle) {
    return {
      left: stepEffects(new Mechanism([left]), 0, {}),
      right: stepEffects(new Mechanism([right]), 0, {}),
    };
  }
  const model = new Mechanism([left, right], 'axle.suspension');
  return { left: stepEffects(model, 0, {}), right: stepEffects(model, 1, {}) };
}

/** Of each adjuster of one side of a unit, the other side at its references. */
function stepEffects(model: Mechanism, side: number, stands: Settings): StepEffect[] {
  const at = (settings: Settings): Settings[] => model.sides.map((_, i) => (i === side ? settings : {}));
  return (model.sides[side]?.adjusters ?? []).flatMap((adjuster) => {
    const { from, to, name } = (adjusterKinds[adjuster.kind] as AdjusterKind).step(adjuster);
    const before = model.pose(at({ ...stands, [adjuster.id]: from }));
    const after = model.pose(at({ ...stands, [adjuster.id]: to }));
    if (!before.reachable || !after.reachable) return [];
    const gains = after.corners.map((pose, i) => gained(before.corners[i] as CornerPose, pose));
    const { camber, toe, ...caster } = gains[side] as ReturnType<typeof gained>;
    const other = gains.find((_, i) => i !== side);
    const rest = other ? { otherWheel: { camber: other.camber, toe: other.toe } } : {};
    return [{ adjuster: adjuster.id, step: name, camber, toe, ...caster, ...rest }];
  });
}

function gained(before: CornerPose, after: CornerPose): { camber: number; toe: number; caster?: number } {
  const caster =
    before.caster === undefined || after.caster === undefined ? {} : { caster: after.caster - before.caster };
  return { camber: after.camber - before.camber, toe: after.toe - before.toe, ...caster };
}
