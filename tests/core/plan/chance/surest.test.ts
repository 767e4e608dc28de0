/** The surest plan of small cars by charts, whose chances have a closed form with the error function of mathjs. */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Adjuster, AxleSpec, Car, Corner, PlanRequest, PlanStyle, Reading } from '../../../../core/contract.ts';
import { planMoves } from '../../../../core/index.ts';
import { between, stream } from '../../../tools/random-cars.ts';

const GAUGE = { camber: 0.01, caster: 0.01, toe: 0.01 };
/** 2048 draws know a share to 0.011 (one standard deviation) at the worst. */
const OFF = 0.035;

/** Toe by the step, known to ± so many % of what it changes, at 95 %. */
const chart = (id: string, toe: number, tolerance: number, range: readonly [number, number]): Adjuster => ({
  id,
  kind: 'effect-table',
  perStep: { toe },
  range,
  reference: 0,
  tolerance,
});
const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const carOf = (adjusters: readonly Adjuster[]): Car => ({
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { suspension: bare, adjusters, steered: true },
  rear: { suspension: bare, adjusters: [], steered: false },
});
const below = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2;
const chanceOf = (low: number, high: number, mean: number, sigma: number) =>
  below((high - mean) / sigma) - below((low - mean) / sigma);

const adjusters = [chart('sure', 0.11, 4, [-4, 4]), chart('vague', 0.1, 80, [-4, 4])];
type Steps = Readonly<Record<'sure' | 'vague', number>>;
const ALL: readonly Steps[] = Array.from({ length: 81 }, (_, i) => ({
  sure: (i % 9) - 4,
  vague: Math.floor(i / 9) - 4,
}));

/** What a wheel that read so much toe would read, and its variance: the charts', and the gauge's twice. */
function shown(read: number, { sure, vague }: Steps) {
  const variance = 2 * GAUGE.toe ** 2 + (0.02 * 0.11 * sure) ** 2 + (0.4 * 0.1 * vague) ** 2;
  return { mean: read + 0.11 * sure + 0.1 * vague, variance };
}
const stepsAt = (plan: ReturnType<typeof planMoves>, corner: Corner) => plan.positions[corner] as unknown as Steps;
const ask = (front: AxleSpec, reading: Reading): PlanRequest => ({
  car: carOf(adjusters),
  spec: { front },
  reading,
  settings: {},
  gauge: GAUGE,
});

describe('of one wheel', () => {
  const plan = (read: number, low: number, high: number, style: 'surest' | 'closest') =>
    planMoves({ ...ask({ left: { toe: { low, high } } }, { LF: { toe: read } }), style });

  it.each([
    [0.3, -0.05, 0.05],
    [-0.2, -0.04, 0.04],
    [0.41, -0.03, 0.03],
    [0.2, -0.06, 0.02],
  ])('that read %d for %d to %d: no combination is surer, and the closest is less sure', (read, low, high) => {
    const chances = ALL.map((steps) => {
      const { mean, variance } = shown(read, steps);
      return chanceOf(low, high, mean, Math.sqrt(variance));
    });
    const [sure, close] = [plan(read, low, high, 'surest'), plan(read, low, high, 'closest')];
    const own = shown(read, stepsAt(sure, 'LF'));
    const chance = chanceOf(low, high, own.mean, Math.sqrt(own.variance));
    expect(Math.abs(sure.chance - chance)).toBeLessThan(OFF);
    expect(chance).toBeGreaterThan(Math.max(...chances) - OFF);
    expect(sure.chance).toBeGreaterThanOrEqual(close.chance);
  });

  it('goes by the chart that is known better, though the other one brings it nearer', () => {
    // Three steps of the vague chart are the aim itself; three of the sure one are 0.03° beyond it.
    const [sure, close] = [plan(0.3, -0.05, 0.05, 'surest'), plan(0.3, -0.05, 0.05, 'closest')];
    expect(stepsAt(close, 'LF')).toEqual({ sure: 0, vague: -3 });
    expect(stepsAt(sure, 'LF')).toEqual({ sure: -3, vague: 0 });
    expect(sure.chance).toBeGreaterThan(close.chance + 0.2);
  });

  it('where the window cannot be met is what may read in it all the same', () => {
    // No sum of steps lies within 0.002 of 0.005: the nearest is far from sure, a sure one a little further is likelier.
    const [low, high] = [0.003, 0.007];
    const best = Math.max(
      ...ALL.map((steps) => {
        const { mean, variance } = shown(0.3, steps);
        return chanceOf(low, high, mean, Math.sqrt(variance));
      }),
    );
    const sure = plan(0.3, low, high, 'surest');
    expect(sure.inWindow).toBe(false);
    const own = shown(0.3, stepsAt(sure, 'LF'));
    expect(chanceOf(low, high, own.mean, Math.sqrt(own.variance))).toBeGreaterThan(best - OFF);
  });
});

describe('of two wheels that a window ties', () => {
  it.each([
    [0.2, -0.42],
    [-0.14, 0.36],
    [-0.33, 0.1],
  ])(
    'that read %d and %d, which sure steps bring to the middle: no pair of combinations is much surer',
    (left, right) => {
      const [low, high] = [-0.04, 0.04];
      const pairs = ALL.flatMap((l) => ALL.map((r) => [shown(left, l), shown(right, r)] as const));
      const chance = ([l, r]: (typeof pairs)[number]) =>
        chanceOf(low, high, l.mean + r.mean, Math.sqrt(l.variance + r.variance));
      const best = pairs.reduce(
        (most, pair) => (Math.abs(pair[0].mean + pair[1].mean) > 0.2 ? most : Math.max(most, chance(pair))),
        0,
      );
      const sure = planMoves({
        ...ask({ totalToe: { low, high } }, { LF: { toe: left }, RF: { toe: right } }),
        style: 'surest',
      });
      const own = chance([shown(left, stepsAt(sure, 'LF')), shown(right, stepsAt(sure, 'RF'))]);
      expect(Math.abs(sure.chance - own)).toBeLessThan(OFF);
      expect(own).toBeGreaterThan(best - 2 * OFF);
    },
  );
});

it('no other style says that it is surer, though wheels that nothing ties are decided each for itself', () => {
  const random = stream(2026);
  const window = () => {
    const [aim, half] = [between(random, -0.1, 0.1), between(random, 0.03, 0.12)];
    return { toe: { low: aim - half, high: aim + half } };
  };
  const read = () => ({ toe: between(random, -0.4, 0.4) });
  // Steps so fine that many choices are about as sure.
  const car = carOf([chart('fine', 0.02, 20, [-20, 20])]);
  for (let tried = 0; tried < 100; tried++) {
    const request = { ...ask({ left: window(), right: window() }, { LF: read(), RF: read() }), car };
    const chance = (style: PlanStyle): number => planMoves({ ...request, style }).chance;
    expect(chance('surest')).toBeGreaterThanOrEqual(Math.max(chance('closest'), chance('least-work')));
  }
});
