/** Combinations of positions of some adjusters, as one number each: all that there are, or some of very many. */
import type { Axis } from './axis.ts';

/** Of each adjuster which of its positions it has: combination by combination. */
export type Digits = Uint16Array;

/** How many combinations there are. */
export const allOf = (axes: readonly Axis[]): number => axes.reduce((n, { positions }) => n * positions.length, 1);

export class Combinations {
  readonly count: number;

  /**
   * @param axes the adjusters, the last one varying first
   * @param listed which combinations, where not all; none of an assembly without adjusters
   */
  constructor(
    readonly axes: readonly Axis[],
    readonly listed?: Digits,
  ) {
    this.count = listed ? listed.length / axes.length : allOf(axes);
  }

  /** How many there are, listed or not. */
  get all(): number {
    return allOf(this.axes);
  }

  /** The combination in which every adjuster is where it stands. */
  get unmoved(): number {
    // Of some those that move least come first.
    return this.listed ? 0 : this.axes.reduce((at, { current, positions }) => at * positions.length + current, 0);
  }

  /** Which of its axis's positions an axis has in a combination. */
  digit(state: number, axis: number): number {
    if (this.listed) return this.listed[state * this.axes.length + axis]!;
    let rest = state;
    for (let i = this.axes.length - 1; i > axis; i--) rest = Math.floor(rest / this.axes[i]!.positions.length);
    return rest % this.axes[axis]!.positions.length;
  }

  /** The same of all axes, in their order, written to `out`. */
  digits(state: number, out: Uint32Array): void {
    const { axes, listed } = this;
    let rest = state;
    for (let i = axes.length - 1; i >= 0; i--) {
      const { length } = axes[i]!.positions;
      const digit = listed ? listed[state * axes.length + i]! : rest % length;
      out[i] = digit;
      rest = (rest - digit) / length;
    }
  }

  /** Where some of the axes stand in each combination, as one number: the last of them varying first. */
  partOf(axes: readonly number[]): Uint32Array {
    const part = new Uint32Array(this.count);
    for (const axis of axes) {
      const { length } = this.axes[axis]!.positions;
      for (let state = 0; state < this.count; state++) {
        part[state] = part[state]! * length + this.digit(state, axis);
      }
    }
    return part;
  }

  /** Minutes of work that each combination takes. */
  minutes(): Float32Array {
    const minutes = new Float32Array(this.count);
    const { listed, axes } = this;
    if (listed) {
      for (let i = 0; i < listed.length; i++) {
        const { current, minutes: own } = axes[i % axes.length]!;
        if (listed[i] !== current) minutes[Math.floor(i / axes.length)]! += own;
      }
      return minutes;
    }
    let block = this.count;
    for (const axis of axes) {
      const round = block;
      block /= axis.positions.length;
      const stays = axis.current * block;
      for (let state = 0; state < this.count; state++) {
        const place = state % round;
        if (place < stays || place >= stays + block) minutes[state]! += axis.minutes;
      }
    }
    return minutes;
  }
}
