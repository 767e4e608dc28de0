import type { Adjuster, Settings, Suspension } from '../contract.ts';
import { validateAdjusters, validateSettings } from '../records/adjusters.ts';
import { validateSuspension } from '../records/suspension.ts';
import { CornerModel } from './corner.ts';

/** What one step of an adjuster does to its wheel, degrees. */
export interface StepEffect {
  readonly adjuster: string;
  /** The step in words, e.g. "1 turn longer". */
  readonly step: string;
  readonly camber: number;
  readonly toe: number;
  /** Absent where the suspension has no steering axis. */
  readonly caster?: number;
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
  const model = new CornerModel(checked, fitted);
  const stands = validateSettings(settings, fitted);
  return [...model.fitted.values()].flatMap(({ adjuster, kind }) => {
    const { from, to, name } = kind.step(adjuster);
    const before = model.pose({ ...stands, [adjuster.id]: from });
    const after = model.pose({ ...stands, [adjuster.id]: to });
    if (!before.reachable || !after.reachable) return [];
    const caster =
      before.caster === undefined || after.caster === undefined ? {} : { caster: after.caster - before.caster };
    return [
      {
        adjuster: adjuster.id,
        step: name,
        camber: after.camber - before.camber,
        toe: after.toe - before.toe,
        ...caster,
      },
    ];
  });
}
