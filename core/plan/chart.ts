/** The car's own chart: what pairs of positions give, as a kit prints it, but for this car. */

import { adjusterKinds } from '../adjuster/catalogue.ts';
import { validateAdjusters, validateSettings } from '../check/adjusters.ts';
import { validateSuspension } from '../check/suspension.ts';
import type { Adjuster, Position, Settings, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { Mechanism } from '../pose/mechanism.ts';

export interface ChartCell {
  /** Degrees gained against where the adjusters stand; absent where no pose exists. */
  readonly camber?: number;
  readonly caster?: number;
  readonly toe?: number;
}
export interface Chart {
  readonly across: { readonly adjuster: string; readonly positions: readonly Position[] };
  readonly down: { readonly adjuster: string; readonly positions: readonly Position[] };
  /** Row by row, one row for each position of `down`. */
  readonly cells: readonly (readonly ChartCell[])[];
}

/** More than fit on a page, and more than a person reads. */
const MOST_POSITIONS = 41;

/**
 * Camber, caster and toe that every pair of positions of two adjusters gives, degrees, against where they stand.
 * @param across, down ids of two adjusters of the corner
 * @throws InputError naming the field, the value and what is allowed
 */
export function chartOf(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  across: string,
  down: string,
): Chart {
  const checked = validateSuspension(suspension);
  const fitted = validateAdjusters(adjusters, checked);
  const stands = validateSettings(settings, fitted);
  const [columns, rows] = [positionsOf(fitted, across, 'across'), positionsOf(fitted, down, 'down')];
  const model = Mechanism.ofCorner(checked, fitted).corner();
  const now = model.pose(stands);
  const cell = (x: Position, y: Position): ChartCell => {
    const pose = model.pose({ ...stands, [across]: x, [down]: y });
    if (!pose.reachable || !now.reachable) return {};
    const caster =
      pose.caster === undefined && now.caster === undefined ? {} : { caster: (pose.caster ?? 0) - (now.caster ?? 0) };
    return { camber: pose.camber - now.camber, toe: pose.toe - now.toe, ...caster };
  };
  return {
    across: { adjuster: across, positions: columns },
    down: { adjuster: down, positions: rows },
    cells: rows.map((y) => columns.map((x) => cell(x, y))),
  };
}

function positionsOf(adjusters: readonly Adjuster[], id: string, field: string): readonly Position[] {
  const found = adjusters.find((one) => one.id === id);
  if (!found) throw new InputError(field, id, `one of the adjusters: ${adjusters.map((one) => one.id).join(', ')}`);
  const all = adjusterKinds[found.kind]?.positions(found) ?? [];
  if (all.length <= MOST_POSITIONS) return all;
  const every = Math.ceil(all.length / MOST_POSITIONS);
  return all.filter((_, i) => i % every === 0);
}
