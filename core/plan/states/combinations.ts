/** Every combination of positions of some adjusters, as one number each. */
import type { Axis } from './axis.ts';

export class Combinations {
  readonly count: number;

  /** @param axes the adjusters, the last one varying first */
  constructor(readonly axes: readonly Axis[]) {
    this.count = axes.reduce((n, { positions }) => n * positions.length, 1);
  }

  /** Which of its axis's positions an axis has in a combination. */
  digit(state: number, axis: number): number {
    let rest = state;
    for (let i = this.axes.length - 1; i > axis; i--) rest = Math.floor(rest / this.axes[i]!.positions.length);
    return rest % this.axes[axis]!.positions.length;
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
    let block = this.count;
    for (const axis of this.axes) {
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
