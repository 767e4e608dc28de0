/**
 * The angles of every combination. The last adjuster (a rod, nearly always) may be interpolated: along it the angles are
 * smooth, so that for each combination of the others a few solves at Chebyshev nodes give them all.
 */
import type { Combinations } from './combinations.ts';
import type { FullSolve } from './full-solve.ts';
import type { Interpolation } from './interpolation.ts';

const SAFETY = 8;
const LEAST_SLACK = 1e-9;

export class AngleTable {
  /** Combination by combination, each with room for other numbers after its angles. */
  readonly values: Float64Array;
  /** Most that an angle here may differ from a full solve, degrees. */
  slack = LEAST_SLACK;
  /** Angles at a probe. */
  readonly #probed: Float64Array;

  /**
   * @param stride how far apart the combinations stand
   * @param line where the last adjuster is interpolated
   */
  constructor(
    { axes, count }: Combinations,
    private readonly stride: number,
    private readonly full: FullSolve,
    line?: Interpolation,
  ) {
    this.values = new Float64Array(count * stride);
    this.#probed = new Float64Array(full.angles);
    const sizes = axes.map(({ positions }) => positions.length);
    const inner = line ? sizes.pop()! : 1;
    const digits = sizes.map(() => 0);
    for (let state = 0; state < count; state += inner) {
      if (!line) full.write(this.values, state * stride, digits);
      else if (!this.#interpolate(line, digits, state)) this.#solveLine(inner, digits, state);
      advance(digits, sizes);
    }
  }

  /**
   * All positions of the last adjuster at one combination of the others; false where nothing on the line is to be
   * interpolated, as it ends on the way.
   */
  #interpolate(line: Interpolation, digits: readonly number[], state: number): boolean {
    if (!line.sample(this.full, digits)) return false;
    line.write(this.values, state * this.stride, this.stride);
    return this.#measureSlack(line.probes, digits, state);
  }

  #solveLine(length: number, digits: readonly number[], state: number): void {
    for (let p = 0; p < length; p++) this.full.write(this.values, (state + p) * this.stride, [...digits, p]);
  }

  /** False where a probe has no pose. */
  #measureSlack(probes: readonly number[], digits: readonly number[], state: number): boolean {
    const probed = this.#probed;
    for (const p of probes) {
      this.full.write(probed, 0, [...digits, p]);
      for (let k = 0; k < probed.length; k++) {
        const off = Math.abs(probed[k]! - this.values[(state + p) * this.stride + k]!);
        if (Number.isNaN(off)) return false;
        if (off * SAFETY > this.slack) this.slack = off * SAFETY;
      }
    }
    return true;
  }
}

/** To the next combination, the last digit first. */
function advance(digits: number[], sizes: readonly number[]): void {
  for (let i = digits.length - 1; i >= 0; i--) {
    digits[i]! += 1;
    if (digits[i]! < sizes[i]!) break;
    digits[i] = 0;
  }
}
