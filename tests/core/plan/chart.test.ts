import { describe, expect, it } from 'vitest';
import type { Adjuster, Suspension } from '../../../core/contract.ts';
import { adjusterPositions, axleCharts, chartOf } from '../../../core/index.ts';
import { generalPose } from '../../tools/general-pose.ts';
import { randomSuspension, rod, stream } from '../../tools/random-cars.ts';

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

  it.each([3, 41, 42, 100, 333])('stands at one of those that are shown, wherever of %d that is', (count) => {
    const large = steps('large', count, { caster: 0.1 });
    for (const at of [0, 1, Math.floor(count / 3), count - 2, count - 1]) {
      const { across } = chartOf(bare, [large, small], { large: at }, 'large', 'small');
      expect(across.stands).toBe(at);
      expect(across.positions).toContain(at);
      expect(across.positions.length).toBeLessThanOrEqual(MOST);
    }
  });

  it('counts a rod of many steps in whole flats from where it stands', () => {
    const suspension = randomSuspension(stream(3), 'double-wishbone');
    const adjusters = [rod('tie', 'tieInner', 8, 1 / 12), rod('upper', 'upperFront', 1)];
    const { across } = chartOf(suspension, adjusters, { tie: 5 / 12 }, 'tie', 'upper');
    expect(across.stands).toBeCloseTo(5 / 12, 5);
    for (const position of across.positions) {
      const flats = (Number(position) - 5 / 12) * 6;
      expect(flats).toBeCloseTo(Math.round(flats), 4);
    }
    // Turned until the rack was right it stands between two.
    const between = chartOf(suspension, adjusters, { upper: 0.21 }, 'tie', 'upper').down;
    expect(between.stands).toBe(0.21);
    expect(between.positions).toEqual(
      [...adjusterPositions(adjusters[1]!), 0.21].sort((a, b) => Number(a) - Number(b)),
    );
  });
});

describe('the charts of an axle', () => {
  const suspension = randomSuspension(stream(4), 'double-wishbone');
  const adjusters = [rod('upper', 'upperFront', 1), rod('tie', 'tieInner', 1)];
  const front = { suspension, adjusters, steered: true };
  const pose = (upper: number, tie: number) =>
    generalPose(suspension, { longer: { upperFront: 1.5 * upper, tieInner: 1.5 * tie } });

  it('are one where both sides stand alike, and one a side where they stand apart', () => {
    const sides = (left: number, right: number) =>
      axleCharts(front, { left: { tie: left }, right: { tie: right } }).map(({ side }) => side);
    expect(sides(0.5, 0.5)).toEqual(['both']);
    expect(sides(0.5, 0)).toEqual(['left', 'right']);
    expect(axleCharts(front, { left: { tie: 0 } }).map(({ side }) => side)).toEqual(['both']);
  });

  it('are against where each side stands, as a general-purpose library has it', () => {
    const stands = { left: { upper: 0.5, tie: -1 / 3 }, right: { upper: -1 / 6 } };
    const [left, right] = axleCharts(front, stands);
    for (const [one, upper, tie] of [
      [left, 0.5, -1 / 3],
      [right, -1 / 6, 0],
    ] as const) {
      const { across, down, cells } = one!.chart!;
      expect([across.stands, down.stands]).toEqual([expect.closeTo(upper, 5), expect.closeTo(tie, 5)]);
      const now = pose(upper, tie);
      for (const [i, j] of [
        [0, 0],
        [2, 9],
        [12, 5],
      ] as const) {
        const there = pose(Number(across.positions[j]), Number(down.positions[i]));
        for (const angle of ['camber', 'caster', 'toe'] as const) {
          expect(cells[i]?.[j]?.[angle]).toBeCloseTo((there[angle] ?? NaN) - (now[angle] ?? NaN), 4);
        }
      }
    }
  });

  it('are refused where a position is none of the adjuster’s', () => {
    expect(() => axleCharts(front, { right: { tie: 7 } })).toThrow(/stands\.right\.tie/);
  });
});
