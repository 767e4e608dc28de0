/** What one step of an adjuster does, by a pose before it and one after. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { CornerPose, Settings } from '../contract.ts';
import type { Step } from '../said.ts';
import type { Mechanism } from './mechanism.ts';

/** What one step of an adjuster does to its wheel, degrees. */
export interface StepEffect {
  readonly adjuster: string;
  /** The step in words, e.g. "1 turn longer", and as data. */
  readonly step: string;
  readonly said: Step;
  readonly camber: number;
  readonly toe: number;
  /** Absent where the suspension has no steering axis. */
  readonly caster?: number;
  /** What the same step does to the other wheel of a rigid axle. */
  readonly otherWheel?: { readonly camber: number; readonly toe: number };
}

/** The same before it is put in words. */
export type BareStepEffect = Omit<StepEffect, 'step'>;

/** Of each adjuster of one side of a mechanism, the other side at its references. */
export function stepEffects(model: Mechanism, side: number, stands: Settings): BareStepEffect[] {
  const at = (settings: Settings): Settings[] => model.sides.map((_, i) => (i === side ? settings : {}));
  return (model.sides[side]?.adjusters ?? []).flatMap((adjuster) => {
    const { from, to, said } = adjusterKinds[adjuster.kind]!.step(adjuster);
    const before = model.pose(at({ ...stands, [adjuster.id]: from }));
    const after = model.pose(at({ ...stands, [adjuster.id]: to }));
    if (!before.reachable || !after.reachable) return [];
    const gains = after.corners.map((pose, i) => gained(before.corners[i]!, pose));
    const { camber, toe, ...caster } = gains[side]!;
    const other = gains.find((_, i) => i !== side);
    const rest = other ? { otherWheel: { camber: other.camber, toe: other.toe } } : {};
    return [{ adjuster: adjuster.id, said, camber, toe, ...caster, ...rest }];
  });
}

/** Degrees that a wheel's angles gain, of those that the geometry knows. */
export interface AngleGain {
  readonly camber: number;
  readonly toe: number;
  readonly caster?: number;
}

export function gained(before: CornerPose, after: CornerPose): AngleGain {
  const caster =
    before.caster === undefined || after.caster === undefined ? {} : { caster: after.caster - before.caster };
  return { camber: after.camber - before.camber, toe: after.toe - before.toe, ...caster };
}
