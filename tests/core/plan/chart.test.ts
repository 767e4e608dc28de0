import { describe, expect, it } from 'vitest';
import type { Adjuster, Suspension } from '../../../core/contract.ts';
import { adjusterPositions, chartOf } from '../../../core/index.ts';

const bare: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
/** A printed chart of so many steps. */
const steps = (id: string, count: number, degrees: Readonly<Record<string, number>>): Adjuster => ({
  ...{ id, kind: 'effect-table', perStep: degrees, range: [0, count - 1], reference: 0 },
});

/** What fits on a page, and what a person reads: trade practice, no source. */
const MOST = 41;

describe('the chart of two adjusters', () => {
  const small = steps('small', 3, { camber: 0.25, toe: -0.05 });

  it.each([2, 40, 41])('has each of %d positions', (count) => {
    const large = steps('large', count, { caster: 0.1 });
    const { across, down } = chartOf(bare, [large, small], {}, 'large', 'small');
    expect(across.positions).toEqual(adjusterPositions(large));
    expect(down.positions).toEqual([0, 1, 2]);
  });

  it.each([42, 60, 81, 82, 83, 123, 124, 400])('of %d positions has every second, third …, as many as fit', (count) => {
    const large = steps('large', count, { caster: 0.1 });
    const { positions } = chartOf(bare, [large, small], {}, 'large', 'small').across;
    expect(positions.length).toBeLessThanOrEqual(MOST);
    expect(positions[0]).toBe(0);
    const every = (positions[1] as number) - (positions[0] as number);
    expect(positions).toEqual(Array.from(positions, (_, i) => i * every));
    // None is left out at the end, and the next finer choice would not fit.
    expect((positions.at(-1) as number) + every).toBeGreaterThan(count - 1);
    expect(Math.ceil(count / (every - 1))).toBeGreaterThan(MOST);
  });

  it('has in its cells what both positions add to where they stand', () => {
    const large = steps('large', 100, { caster: 0.1 });
    const settings = { large: 10, small: 1 };
    const { across, down, cells } = chartOf(bare, [large, small], settings, 'large', 'small');
    cells.forEach((row, r) => {
      row.forEach(({ camber, caster, toe }, c) => {
        const [x, y] = [across.positions[c] as number, down.positions[r] as number];
        expect(caster).toBeCloseTo(0.1 * (x - 10), 12);
        expect(camber).toBeCloseTo(0.25 * (y - 1), 12);
        expect(toe).toBeCloseTo(-0.05 * (y - 1), 12);
      });
    });
  });
});
