/** The car's own chart: what pairs of positions give, as a kit prints it, but for this car. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { Adjuster, Position, Settings } from '../contract.ts';
import type { CornerModel } from '../pose/mechanism.ts';

export interface ChartCell {
  /** Degrees gained against where the adjusters stand; absent where no pose exists. */
  readonly camber?: number;
  readonly caster?: number;
  readonly toe?: number;
}
/** What pairs of positions of two adjusters give. */
export interface Chart {
  readonly across: { readonly adjuster: string; readonly positions: readonly Position[] };
  readonly down: { readonly adjuster: string; readonly positions: readonly Position[] };
  /** Row by row, one row for each position of `down`. */
  readonly cells: readonly (readonly ChartCell[])[];
}

/** More than fit on a page, and more than a person reads. */
const MOST_POSITIONS = 41;

/** What every pair of positions of two adjusters gives, against `settings`. Takes validated input. */
export function chartOfPair(model: CornerModel, settings: Settings, across: Adjuster, down: Adjuster): Chart {
  const [columns, rows] = [positionsOf(across), positionsOf(down)];
  const now = model.pose(settings);
  const cell = (x: Position, y: Position): ChartCell => {
    const pose = model.pose({ ...settings, [across.id]: x, [down.id]: y });
    if (!pose.reachable || !now.reachable) return {};
    const caster =
      pose.caster === undefined && now.caster === undefined ? {} : { caster: (pose.caster ?? 0) - (now.caster ?? 0) };
    return { camber: pose.camber - now.camber, toe: pose.toe - now.toe, ...caster };
  };
  return {
    across: { adjuster: across.id, positions: columns },
    down: { adjuster: down.id, positions: rows },
    cells: rows.map((y) => columns.map((x) => cell(x, y))),
  };
}

function positionsOf(adjuster: Adjuster): readonly Position[] {
  const all = adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [];
  const every = Math.ceil(all.length / MOST_POSITIONS);
  return all.filter((_, i) => i % every === 0);
}
