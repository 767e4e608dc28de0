import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Plan } from '../../../../core/contract.ts';
import { adjusterPositions, planMoves, predictReading } from '../../../../core/index.ts';
import { isAtStop } from '../../../../core/plan/answer/shortfall.ts';
import { LAYOUTS, randomSuspension, rod, stream } from '../../../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../../../tools/samples.ts';

/** One adjuster of each kind, on the first suspension that it fits. */
const kinds = [...new Map([...FITTING].reverse().map((pair) => [pair.adjuster, pair.suspension]))];

describe('the end of an adjuster’s travel', () => {
  it.each(kinds)('%s, on %s: its first and its last position where they are numbers, and no other', (kind, on) => {
    for (const seed of [1, 2, 3, 4]) {
      const random = stream(seed * 11);
      const one = sampleAdjuster(random, kind, randomSuspension(random, on));
      const all = adjusterPositions(one);
      all.forEach((position, i) => {
        const isEnd = i === 0 || i === all.length - 1;
        expect(isAtStop(one, position), `${position}`).toBe(typeof position === 'number' && isEnd);
      });
    }
  });

  it('is the same place but for the noise of a binary fraction', () => {
    const thirds = rod('rod', 'tieInner', 1, 1 / 3);
    for (const end of [-1, 1]) expect(isAtStop(thirds, end * (1 / 3 + 1 / 3 + 1 / 3 - 1e-9))).toBe(true);
    expect(isAtStop(thirds, 0.99)).toBe(false);
  });
});

describe('what falls short', () => {
  const thread: Adjuster = rod('tie-rod', 'tieInner', 1, 0.25);
  const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
  const car: Car = {
    ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
    front: { suspension, adjusters: [thread], steered: true },
    rear: {
      suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 780, 340] }, camber: 0, toe: 0 },
      ...{ adjusters: [], steered: false },
    },
  };
  const planFor = (aim: number): Plan =>
    planMoves({
      ...{ car, settings: {}, reading: { LF: { toe: 0 }, RF: { toe: 0 } } },
      spec: { front: { left: { toe: { low: aim - 0.01, high: aim + 0.01 } } } },
    });

  it.each([4, -4])('names the rod that is driven to its end on the way to a toe of %d', (aim) => {
    const { positions, shortfall, predicted } = planFor(aim);
    expect(Math.abs(positions.LF['tie-rod'] as number)).toBe(1);
    const { toe = Number.NaN } = predicted.LF ?? {};
    expect(shortfall).toEqual([
      {
        ...{ where: 'LF', angle: 'toe', predicted: expect.closeTo(toe, 12) },
        by: expect.closeTo(aim > 0 ? toe - (aim - 0.01) : toe - (aim + 0.01), 12),
        atStop: [{ corner: 'LF', adjuster: 'tie-rod' }],
      },
    ]);
  });

  it('names none that could go on: a window between two of its marks', () => {
    const { LF } = predictReading(car, { LF: { toe: 0 } }, {}, { LF: { 'tie-rod': 0.25 } });
    const { shortfall } = planFor((LF?.toe ?? Number.NaN) / 2);
    expect(shortfall).toMatchObject([{ where: 'LF', angle: 'toe', atStop: [] }]);
  });
});
