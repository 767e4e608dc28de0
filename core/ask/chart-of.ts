import { chartPair } from '../adjuster/chart-pair.ts';
import { sidesOf } from '../adjuster/of-corner.ts';
import { called, validateSettings } from '../check/adjusters.ts';
import { validateAxle } from '../check/car.ts';
import type { Adjuster, Axle, Position, Settings, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { type Chart, chartOfPair } from '../plan/chart.ts';
import { kindOf } from '../pose/linkage.ts';
import { Mechanism } from '../pose/mechanism.ts';
import { checkedCorner } from './checked-corner.ts';

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
  const { model, adjusters: fitted, settings: stands } = checkedCorner(suspension, adjusters, settings);
  return chartOfPair(model, stands, find(fitted, across, 'across'), find(fitted, down, 'down'));
}

/** The chart of one side of an axle, or of both where the right one is the mirror of the left. */
export interface SideChart {
  readonly side: 'both' | 'left' | 'right';
  /** Absent where the side has fewer than two adjusters. */
  readonly chart?: Chart;
}

/**
 * The charts of an axle against where its adjusters stand, of the two adjusters that `chartPair` takes: one where the
 * right side is the mirror of the left and stands alike, else one a side. A rigid axle is the one piece that it is.
 * @param stands positions by adjuster id, a side each; what is absent stands at its reference
 * @throws InputError naming the field (`axle.…`, `stands.left.…`), the value and what is allowed
 */
export function axleCharts(
  axle: Axle,
  stands: { readonly left?: Settings; readonly right?: Settings } = {},
): SideChart[] {
  const checked = validateAxle(axle);
  const sides = sidesOf(checked);
  const now = [stands.left, stands.right].map((given = {}, i) =>
    validateSettings(given, sides[i]!.adjusters, `stands.${i === 0 ? 'left' : 'right'}`),
  );
  const isMirror = !checked.rightSuspension && !checked.rightAdjusters;
  const alike = isMirror && sides[0].adjusters.every((one) => standing(one, now[0]) === standing(one, now[1]));
  const joined = kindOf(sides[0].suspension).rigidAxle !== undefined;
  return (alike ? sides.slice(0, 1) : sides).map((own, i): SideChart => {
    const side = alike ? 'both' : i === 0 ? 'left' : 'right';
    const pair = chartPair(own);
    if (!pair) return { side };
    const [across, down] = pair.map((id) => find(own.adjusters, id, 'axle'));
    const model = joined ? new Mechanism(sides).corner(i, now) : new Mechanism([own]).corner();
    return { side, chart: chartOfPair(model, now[i]!, across!, down!) };
  });
}

const standing = ({ id, reference }: Adjuster, at: Settings = {}): Position => at[id] ?? reference;

function find(adjusters: readonly Adjuster[], id: string, field: string): Adjuster {
  const found = adjusters.find((one) => one.id === id);
  if (!found) throw new InputError(field, id, { is: 'adjuster', among: called(adjusters) });
  return found;
}
