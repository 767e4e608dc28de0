/** An adjuster's positions in the order in which the planner counts them. */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { AdjusterKind } from '../../adjuster/kind.ts';
import type { Adjuster, Position } from '../../contract.ts';
import type { CornerStand } from './corner-stand.ts';

/** An adjuster that may be moved. */
export interface Axis {
  /** Whose: the place of its corner in the assembly. */
  readonly side: number;
  readonly adjuster: Adjuster;
  readonly positions: readonly Position[];
  readonly current: number;
  readonly minutes: number;
}

const known = new WeakMap<Adjuster, readonly Position[]>();
/** Every position of an adjuster, worked out once: a plan asks for them again and again. */
export function positionsOf(kind: AdjusterKind, adjuster: Adjuster): readonly Position[] {
  const all = known.get(adjuster) ?? kind.positions(adjuster);
  known.set(adjuster, all);
  return all;
}

/** How many positions make interpolation worth while. */
const WORTH = 12;

/**
 * The positions of an adjuster, its own or those instead, as far as there are parts for them, and where it stands among
 * them; a stand between marks is a position of its own.
 */
function axisOf(side: number, adjuster: Adjuster, { current: now, instead, allows = () => true }: CornerStand): Axis {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) throw new Error(`no adjuster kind ${adjuster.kind}`);
  const stands = now[adjuster.id] ?? adjuster.reference;
  let positions = (instead?.get(adjuster.id) ?? positionsOf(kind, adjuster)).filter((position) =>
    allows(adjuster, position),
  );
  let current = positions.findIndex((position) => samePosition(position, stands));
  if (current < 0) {
    positions = [...positions, stands];
    current = positions.length - 1;
  }
  return { side, adjuster, positions, current, minutes: adjuster.effort ?? kind.effort };
}

/**
 * The adjusters of an assembly that may be moved. One that is worth interpolating comes last, so that its positions lie
 * side by side.
 */
export function axesOf(stands: readonly CornerStand[]): { axes: readonly Axis[]; isLastFine: boolean } {
  const axes = stands.flatMap((stand, side) => stand.movable.map((adjuster) => axisOf(side, adjuster, stand)));
  const fine = finest(axes);
  if (fine < 0) return { axes, isLastFine: false };
  return { axes: [...axes.filter((_, i) => i !== fine), axes[fine]!], isLastFine: true };
}

/** Numbers that differ by binary noise are one position; so are a stamped 3 and "3". */
export const samePosition = (a: Position, b: Position): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) < 1e-6 : String(a) === String(b);

/** The one with the most numeric positions, if they are many; −1 where there is none. */
function finest(axes: readonly Axis[]): number {
  let best = -1;
  axes.forEach((axis, i) => {
    const numeric =
      axis.positions.every((position) => typeof position === 'number') && typeof axis.adjuster.reference === 'number';
    const size = axis.positions.length;
    if (numeric && size >= WORTH && size > (axes[best]?.positions.length ?? 0)) best = i;
  });
  return best;
}
