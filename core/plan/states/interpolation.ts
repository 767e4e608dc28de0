/** Interpolation along an adjuster whose positions are numbers. */
import type { Change } from '../../pose/change.ts';
import type { Mechanism } from '../../pose/mechanism.ts';
import type { Axis } from './axis.ts';

/** Chebyshev nodes along the interpolated adjuster. */
export const NODES = 6;

/** A smooth adjuster's range as Chebyshev nodes, and the weights that take node values to its positions. */
export class Interpolation {
  readonly changes: readonly Change[];
  readonly weights: Float64Array;
  /** Positions at which interpolation is compared with a full solve: beyond the outer nodes, where it is worst. */
  readonly probes: readonly number[];
  /** Angles at each node. */
  readonly values: Float64Array;

  /** @param angles how many angles the assembly has */
  constructor(axis: Axis, model: Mechanism, angles: number) {
    this.values = new Float64Array(NODES * angles);
    const positions = axis.positions as readonly number[];
    this.probes = [0.03, 0.97].map((share) => Math.round(share * (positions.length - 1)));
    const low = Math.min(...positions);
    const high = Math.max(...positions);
    const nodes = Array.from({ length: NODES }, (_, n) => {
      const x = Math.cos((Math.PI * (n + 0.5)) / NODES);
      return (low + high) / 2 + (x * (high - low)) / 2;
    });
    const here = model.change(axis.side, axis.adjuster.id, positions[axis.current]!);
    this.changes = nodes.map((node) => changeBetween(model.change(axis.side, axis.adjuster.id, node), here));
    this.weights = Float64Array.from(
      positions.flatMap((position) =>
        nodes.map((node, n) =>
          nodes.reduce((w, other, m) => (m === n ? w : (w * (position - other)) / (node - other)), 1),
        ),
      ),
    );
  }

  /** Whether no pose exists at some node, so that nothing can be interpolated. */
  hasGap(): boolean {
    return this.values.some(Number.isNaN);
  }
}

/** What takes the parameters from `b` to `a`. */
export const changeBetween = (a: Change, b: Change): Change => ({
  at: [...a.at, ...b.at],
  by: [...a.by, ...b.by.map((x) => -x)],
});
