/** How well a gauge repeats, from readings of the same state: against simulated gauges of known scatter, by mathjs' variance. */
import { variance } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../core/contract.ts';
import { DEFAULT_GAUGE } from '../../../core/reading/gauge.ts';
import { repeatsOf } from '../../../core/reading/repeats.ts';
import { stream } from '../../tools/random-cars.ts';
import { normal } from '../../tools/read-car.ts';

const usual = { camber: 0.03, caster: 0.08, toe: 0.015 };
const random = stream(5);
const read = (camber: number, sigma: number): Reading => ({ LF: { camber: camber + sigma * normal(random) } });

describe('what repeats tell', () => {
  it('is the usual figure where there are none', () => {
    const none = { camber: { deviation: 0.03, count: 0 }, caster: { deviation: 0.08, count: 0 } };
    expect(repeatsOf([], usual)).toMatchObject(none);
    expect(repeatsOf([[read(1, 0.03)]], usual).camber).toEqual({ deviation: 0.03, count: 0 });
    expect(DEFAULT_GAUGE.camber).toBeGreaterThan(0);
  });

  it('is the pooled variance, the usual one counted as eight more', () => {
    const groups = [
      [0.1, 0.14, 0.08],
      [-1, -1.05],
    ];
    const readings = groups.map((group) => group.map((camber): Reading => ({ LF: { camber } })));
    const squares = groups.reduce((sum, group) => sum + (group.length - 1) * Number(variance(...group)), 0);
    const told = repeatsOf(readings, usual).camber;
    expect(told.count).toBe(3);
    expect(told.deviation).toBeCloseTo(Math.sqrt((8 * usual.camber ** 2 + squares) / 11), 12);
  });

  it('comes to what the gauge does, whatever was usual', () => {
    for (const sigma of [0.015, 0.06]) {
      const groups = Array.from({ length: 300 }, () => [0, 0].map(() => read(-0.7, sigma)));
      expect(Math.abs(repeatsOf(groups, usual).camber.deviation / sigma - 1)).toBeLessThan(0.12);
    }
  });

  it('takes no figure that was mistyped, and no toe against another line', () => {
    expect(repeatsOf([[{ LF: { camber: 0.5 } }, { LF: { camber: -0.5 } }]], usual).camber.count).toBe(0);
    const toe = (toeReference: 'centreline' | 'thrust-line'): Reading => ({ LF: { toe: 0.1 }, toeReference });
    expect(repeatsOf([[toe('centreline'), toe('thrust-line')]], usual).toe.count).toBe(0);
    expect(repeatsOf([[toe('thrust-line'), toe('thrust-line')]], usual).toe.count).toBe(1);
  });
});
