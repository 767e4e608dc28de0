/** The car's own chart: what pairs of positions give, as a kit prints it, but for this car. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { Adjuster, Position, Settings } from '../contract.ts';
import type { CornerModel } from '../pose/mechanism.ts';
import { FLATS } from '../units/flats.ts';

export interface ChartCell {
  /** Degrees gained against where the adjusters stand; absent where no pose exists. */
  readonly camber?: number;
  readonly caster?: number;
  readonly toe?: number;
}
/** One side of a chart: an adjuster, the positions that are shown and the one of them at which it stands. */
export interface ChartSide {
  readonly adjuster: string;
  readonly positions: readonly Position[];
  readonly stands: Position;
}
/** What pairs of positions of two adjusters give. */
export interface Chart {
  readonly across: ChartSide;
  readonly down: ChartSide;
  /** Row by row, one row for each position of `down`. */
  readonly cells: readonly (readonly ChartCell[])[];
}

/** More than fit on a page, and more than a person reads. */
const MOST_POSITIONS = 41;

/** What every pair of positions of two adjusters gives, against `settings`. Takes validated input. */
export function chartOfPair(model: CornerModel, settings: Settings, across: Adjuster, down: Adjuster): Chart {
  const [x, y] = [across, down].map((one) => sideOf(one, settings[one.id] ?? one.reference)) as [ChartSide, ChartSide];
  const now = model.pose(settings);
  const cell = (x: Position, y: Position): ChartCell => {
    const pose = model.pose({ ...settings, [across.id]: x, [down.id]: y });
    if (!pose.reachable || !now.reachable) return {};
    const caster =
      pose.caster === undefined && now.caster === undefined ? {} : { caster: (pose.caster ?? 0) - (now.caster ?? 0) };
    return { camber: pose.camber - now.camber, toe: pose.toe - now.toe, ...caster };
  };
  return {
    across: x,
    down: y,
    cells: y.positions.map((row) => x.positions.map((column) => cell(column, row))),
  };
}

/** So many of its positions as are read, evenly on from the one at which it stands, which is always among them. */
function sideOf(adjuster: Adjuster, stands: Position): ChartSide {
  const all = adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [];
  const here = all.findIndex((one) => isSame(one, stands));
  const every = strideOf(adjuster, all);
  const shown = all.filter((_, i) => (i - Math.max(0, here)) % every === 0);
  if (here >= 0) return { adjuster: adjuster.id, positions: shown, stands: all[here]! };
  // Between two of its positions, as what was turned until the rack was right may be.
  const positions = [...shown, stands].sort((a, b) => Number(a) - Number(b));
  return { adjuster: adjuster.id, positions, stands };
}

/** Positions are listed to a millionth. */
const NOISE = 1.5e-6;
const isSame = (a: Position, b: Position): boolean =>
  a === b || (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) < NOISE);

/** Every so many of its positions; of a rod as many as make whole flats, as a spanner counts them. */
function strideOf(adjuster: Adjuster, all: readonly Position[]): number {
  const least = Math.max(1, Math.ceil(all.length / MOST_POSITIONS));
  const [first, second] = all;
  const isTurned = first !== undefined && adjusterKinds[adjuster.kind]?.place(adjuster, first).as === 'turns';
  if (least === 1 || !isTurned) return least;
  const flats = (Number(second) - Number(first)) * FLATS;
  const whole = Array.from({ length: 2 * least }, (_, i) => least + i).find(
    (every) => Math.abs(every * flats - Math.round(every * flats)) < 1e-3,
  );
  return whole ?? least;
}
