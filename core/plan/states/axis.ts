/** An adjuster's positions in the order in which the planner counts them. */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Adjuster, Position, Settings } from '../../contract.ts';

/** An adjuster that may be moved. */
export interface Axis {
  /** Whose: the place of its corner in the assembly. */
  readonly side: number;
  readonly adjuster: Adjuster;
  readonly positions: readonly Position[];
  readonly current: number;
  readonly minutes: number;
}

export interface Among {
  readonly among?: readonly Position[] | undefined;
  /** Whether there are the parts for a position. Where it stands it may always stay. */
  readonly allows?: ((adjuster: Adjuster, position: Position) => boolean) | undefined;
}

/** How many positions make interpolation worth while. */
const WORTH = 12;

/**
 * The positions of an adjuster, its own or those `among`, as far as there are parts for them, and where it stands among
 * them; a stand between marks is a position of its own.
 */
export function axisOf(
  side: number,
  adjuster: Adjuster,
  settings: Settings,
  { among, allows = () => true }: Among = {},
): Axis {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) throw new Error(`no adjuster kind ${adjuster.kind}`);
  const stands = settings[adjuster.id] ?? adjuster.reference;
  let positions = (among ?? kind.positions(adjuster)).filter((position) => allows(adjuster, position));
  let current = positions.findIndex((position) => samePosition(position, stands));
  if (current < 0) {
    positions = [...positions, stands];
    current = positions.length - 1;
  }
  return { side, adjuster, positions, current, minutes: adjuster.effort ?? kind.effort };
}

/** Numbers that differ by binary noise are one position; so are a stamped 3 and "3". */
export const samePosition = (a: Position, b: Position): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) < 1e-6 : String(a) === String(b);

/** The one with the most numeric positions, if they are many; −1 where there is none. */
export function finest(axes: readonly Axis[]): number {
  let best = -1;
  axes.forEach((axis, i) => {
    const numeric =
      axis.positions.every((position) => typeof position === 'number') && typeof axis.adjuster.reference === 'number';
    const size = axis.positions.length;
    if (numeric && size >= WORTH && size > (axes[best]?.positions.length ?? 0)) best = i;
  });
  return best;
}
