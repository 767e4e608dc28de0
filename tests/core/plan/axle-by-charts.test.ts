/** Plans for a front axle known by printed charts, against every combination. */

import { describe, expect, it } from 'vitest';
import type { PlanStyle } from '../../../core/contract.ts';
import { planChoices, planMoves } from '../../../core/index.ts';
import { countOf, everything, least, nearest, OWN, request, SEEDS } from '../../tools/small-charts.ts';

describe('a front axle by charts', () => {
  it.each(SEEDS)('seed %i: the closest, the least work, the surest', (seed) => {
    const asked = request(seed);
    const all = everything(asked);
    const within = all.filter(({ inWindow }) => inWindow);
    const [closest, work, sure] = (['closest', 'least-work', 'surest'] as const).map((style) =>
      planMoves({ ...asked, style }),
    );
    for (const plan of [closest, work, sure]) expect(plan?.inWindow).toBe(within.length > 0);
    if (closest) expect(closest.distance).toBeCloseTo(nearest(within.length > 0 ? within : all), 9);
    if (work && within.length > 0) {
      const few = within.filter(({ effort }) => effort < least(within) + 1e-6);
      expect(work.effort).toBeCloseTo(least(within), 6);
      expect(work.distance).toBeCloseTo(nearest(few), 9);
    } else expect(work?.distance).toBeCloseTo(nearest(all), 9);
    expect(sure?.chance).toBeGreaterThanOrEqual(Math.max(closest?.chance ?? 1, work?.chance ?? 1));
    expect([closest, work, sure].map((plan) => plan?.optimum.proven)).toEqual([true, true, false]);
    expect(closest?.optimum.combinations).toBe(OWN.LF.length ** 2);
  });

  it('some of these can be met and some cannot', () => {
    const met = SEEDS.filter((seed) => everything(request(seed)).some(({ inWindow }) => inWindow)).length;
    expect(met).toBeGreaterThan(3);
    expect(met).toBeLessThan(SEEDS.length);
  });

  it.each(SEEDS)('seed %i: with so many minutes the nearest that takes no more, else the least work', (seed) => {
    const asked = request(seed);
    const within = everything(asked).filter(({ inWindow }) => inWindow);
    const sums = [...new Set(within.map(({ effort }) => effort))].sort((a, b) => a - b);
    for (const maxEffort of [0, ...sums, 1000]) {
      const plan = planMoves({ ...asked, maxEffort });
      expect(plan.inWindow).toBe(within.length > 0);
      expect(plan.optimum.proven).toBe(true);
      if (within.length === 0) {
        expect(plan.distance).toBe(planMoves(asked).distance);
        continue;
      }
      const enough = within.filter(({ effort }) => effort <= maxEffort + 1e-6);
      const few = within.filter(({ effort }) => effort < least(within) + 1e-6);
      expect(plan.distance).toBeCloseTo(nearest(enough.length > 0 ? enough : few), 9);
      if (enough.length === 0) expect(plan.effort).toBeCloseTo(least(within), 6);
    }
  });

  it.each(SEEDS)('seed %i: the plans worth choosing among', (seed) => {
    const asked = request(seed);
    const within = everything(asked).filter(({ inWindow }) => inWindow);
    const choices = planChoices(asked);
    expect(choices[0]?.styles[0]).toBe('practical');
    expect(choices.slice(0, 2).flatMap(({ styles }) => styles)).toContain('surest');
    const worth = within
      .filter(
        (one) =>
          !within.some(
            ({ effort, distance }) =>
              effort <= one.effort + 1e-6 &&
              distance <= one.distance + 1e-9 &&
              (effort < one.effort - 1e-6 || distance < one.distance - 1e-9),
          ),
      )
      .map(({ effort, distance }) => `${effort.toFixed(3)} ${distance.toFixed(6)}`);
    const key = ({ effort, distance }: { effort: number; distance: number }) =>
      `${effort.toFixed(3)} ${distance.toFixed(6)}`;
    const isByChance = (style: PlanStyle) => style === 'practical' || style === 'surest';
    const others = choices.filter(({ styles }) => styles.length === 0 || !styles.every(isByChance));
    if (within.length > 0) for (const one of others) expect(worth).toContain(key(one));
    // The practical and the surest come first whatever they are; then by what they ask.
    const told = choices.filter(({ styles }) => !styles.some(isByChance)).map(key);
    expect(told).toEqual([...told].sort((a, b) => Number.parseFloat(b) - Number.parseFloat(a)));
    const terms = Math.max(1, countOf(asked));
    for (const { ask, moves, effort, distance, inWindow, chance, offAim, styles } of choices) {
      const plan = planMoves({ ...asked, ...ask });
      expect(plan).toMatchObject({ effort, distance, inWindow, chance });
      expect(plan.moves).toHaveLength(moves);
      // It says its style even where that is the usual one.
      expect(ask.style).toBe(styles[0] ?? 'closest');
      expect(offAim).toBeCloseTo(Math.sqrt(distance / terms), 9);
      for (const style of styles) expect(planMoves({ ...asked, style }).positions).toEqual(plan.positions);
    }
    const all = choices.flatMap(({ styles }) => styles);
    expect(all.filter((style) => style === 'closest')).toHaveLength(1);
    expect(all.filter((style) => style === 'least-work')).toHaveLength(within.length > 0 ? 1 : 0);
  });
});
