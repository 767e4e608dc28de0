/** Which moves go by the rack: where it is surer, and where there is room to turn as far as it may take. */
import { describe, expect, it } from 'vitest';
import { ByRack, type Choosable } from '../../../../core/plan/chance/by-rack.ts';

/** Degrees: of the gauge, of what one unknown adds by the move; and degrees for one more of its position. */
const [GAUGE, UNKNOWN, GAIN] = [0.02, 0.2, 0.1];
const BY_MARK = -1;
/** Two readings of the gauge, the one that the plan starts from and the one that it is turned by, 95 times in 100: in positions. */
const NEEDED = (2 * Math.hypot(GAUGE, GAUGE)) / GAIN;

const chooser = new ByRack(
  { shown: () => [0], order: (moves) => moves.map((_, i) => i), windows: [Float64Array.of(1)] },
  Float64Array.of(GAUGE),
  1,
);
const move = (room: number, unknown: number): Choosable => ({
  ...{ side: 0, id: 'rod', by: [0], room },
  spread: { slopes: Float64Array.of(unknown), errors: [], gain: Float64Array.of(GAIN) },
});

describe('a move that the rack could lead', () => {
  it('goes by it where there is room for what the gauge may be off, and by its mark where there is not', () => {
    expect(chooser.choose([move(1.05 * NEEDED, UNKNOWN)]).choice).toEqual([0]);
    expect(chooser.choose([move(0.95 * NEEDED, UNKNOWN)]).choice).toEqual([BY_MARK]);
  });

  it('goes by its mark where nothing is unknown of it: to watch would only add the gauge’s noise', () => {
    expect(chooser.choose([move(10 * NEEDED, 0)]).choice).toEqual([BY_MARK]);
    // Of a mark nothing but the reading is left; by the rack the gauge's noise, and all of the unknown is gone.
    const { carried } = chooser.choose([move(10 * NEEDED, UNKNOWN)]);
    expect(carried.sigma(0)).toBeCloseTo(GAUGE, 12);
  });
});
