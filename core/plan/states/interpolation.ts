/** Interpolation along an adjuster whose positions are numbers. */
import { type Change, changeBetween } from '../../pose/change.ts';
import type { Mechanism } from '../../pose/mechanism.ts';
import type { Axis } from './axis.ts';
import type { FullSolve } from './full-solve.ts';

/** Chebyshev nodes along the interpolated adjuster. */
const NODES = 6;

/** A smooth adjuster's range as Chebyshev nodes, and the weights that take node values to its positions. */
export class Interpolation {
  readonly #changes: readonly Change[];
  readonly #weights: Float64Array;
  /** Angles at each node. */
  readonly #values: Float64Array;
  /** Positions at which interpolation is compared with a full solve: beyond the outer nodes, where it is worst. */
  readonly probes: readonly number[];

  /** @param angles how many angles the assembly has */
  constructor(axis: Axis, model: Mechanism, angles: number) {
    this.#values = new Float64Array(NODES * angles);
    const positions = axis.positions as readonly number[];
    this.probes = [0.03, 0.97].map((share) => Math.round(share * (positions.length - 1)));
    const low = Math.min(...positions);
    const high = Math.max(...positions);
    const nodes = Array.from({ length: NODES }, (_, n) => {
      const x = Math.cos((Math.PI * (n + 0.5)) / NODES);
      return (low + high) / 2 + (x * (high - low)) / 2;
    });
    const here = model.change(axis.side, axis.adjuster.id, positions[axis.current]!);
    this.#changes = nodes.map((node) => changeBetween(model.change(axis.side, axis.adjuster.id, node), here));
    this.#weights = Float64Array.from(
      positions.flatMap((position) =>
        nodes.map((node, n) =>
          nodes.reduce((w, other, m) => (m === n ? w : (w * (position - other)) / (node - other)), 1),
        ),
      ),
    );
  }

  /**
   * Solves at the nodes.
   * @param digits the positions of the adjusters that are not interpolated
   * @returns whether a pose exists at every node, so that the line can be interpolated
   */
  sample(full: FullSolve, digits: readonly number[]): boolean {
    for (let n = 0; n < NODES; n++) full.write(this.#values, n * full.angles, digits, this.#changes[n]);
    return !this.#values.some(Number.isNaN);
  }

  /** Writes the angles of every position of the line to `out`, from `at` on, positions `stride` apart. */
  write(out: Float64Array, at: number, stride: number): void {
    const values = this.#values;
    const weights = this.#weights;
    const angles = values.length / NODES;
    const positions = weights.length / NODES;
    for (let p = 0; p < positions; p++) {
      for (let k = 0; k < angles; k++) {
        let sum = 0;
        for (let n = 0; n < NODES; n++) sum += weights[p * NODES + n]! * values[n * angles + k]!;
        out[at + p * stride + k] = sum;
      }
    }
  }
}
