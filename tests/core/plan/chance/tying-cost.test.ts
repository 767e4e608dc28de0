/** What a position costs by the windows that tie wheels together: its share of variance over half windows squared. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Reading } from '../../../../core/contract.ts';
import { ChanceCost } from '../../../../core/plan/chance/chance-cost.ts';
import { problemOf, settingsOf } from '../../../../core/plan/problem.ts';
import { indexTerm } from '../../../../core/plan/states/indexed-term.ts';
import { subproblemsOf } from '../../../../core/plan/subproblem.ts';
import { ANGLES_A_WHEEL } from '../../../../core/pose/mechanism.ts';
import { chartSigmas } from '../../../tools/chart-error.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

const ANGLES = ['camber', 'caster', 'toe'] as const;
type Degrees = Readonly<Partial<Record<(typeof ANGLES)[number], number>>>;
/** Known to ± so many % of what it changes, at 95 %. */
const chart = (id: string, perStep: Degrees, tolerance: number): Adjuster => ({
  id,
  kind: 'effect-table',
  perStep,
  range: [-2, 2],
  reference: 0,
  tolerance,
});
const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const ZERO = { camber: 0, caster: 0, toe: 0 };

describe('charts of five positions', () => {
  const adjusters = [chart('first', { camber: 0.1, caster: 0.3, toe: -0.05 }, 20), chart('second', { toe: 0.2 }, 40)];
  const car: Car = {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: { suspension: bare, adjusters, steered: true },
    rear: { suspension: bare, adjusters: [], steered: false },
  };
  const window = (half: number) => ({ low: -half, high: half });
  const front = {
    crossCamber: window(0.5),
    crossCaster: window(0.8),
    totalToe: window(0.3),
    thrustAngle: window(0.1),
  };
  const reading: Reading = { LF: ZERO, RF: ZERO };
  const settings = { LF: { first: 1 }, RF: { second: -1 } };

  it('each angle by its share of what has moved, each window by its half width; the gauge costs nothing', () => {
    const problem = problemOf({ car, spec: { front }, reading, settings });
    const [only] = subproblemsOf(problem);
    const terms = only?.terms.map((term) => indexTerm(term, only.states)) ?? [];
    expect(terms).toHaveLength(4);
    only?.assemblies.forEach((assembly, a) => {
      const states = only.states[a];
      const uncertainty = problem.uncertainty.get(assembly);
      if (!states || !uncertainty) throw new Error('a wheel that was asked about');
      const from = settingsOf(assembly, problem.now);
      const costs = new ChanceCost(states, terms, a, uncertainty, from);
      const [stood = {}] = from;
      for (let state = 0; state < states.count; state++) {
        const [at = {}] = states.settings(state);
        const variance = (angle: (typeof ANGLES)[number]) =>
          adjusters.reduce((sum, { id, perStep, tolerance }) => {
            const gone = (at[id] as number) - (stood[id] as number);
            if (gone === 0) return sum;
            const steps = perStep as Degrees;
            const change = Object.fromEntries(ANGLES.map((one) => [one, gone * (steps[one] ?? 0)]));
            return sum + chartSigmas(change, tolerance)[angle] ** 2;
          }, 0);
        const wanted =
          variance('camber') / 0.5 ** 2 +
          variance('caster') / 0.8 ** 2 +
          variance('toe') / 0.3 ** 2 +
          variance('toe') / 4 / 0.1 ** 2;
        expect(costs.cost(state), JSON.stringify(at)).toBeCloseTo(wanted, 9);
      }
    });
  });
});

describe('a wheel on links', () => {
  const adjusters = [rod('rod', 'tieInner', 0.5, 0.25)];
  const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
  const car: Car = {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: { suspension, adjusters, steered: true },
    rear: { suspension: bare, adjusters: [], steered: false },
  };

  it('by its covariance, where one adjuster alone is moved', () => {
    const window = (half: number) => ({ low: -half, high: half });
    const front = { crossCamber: window(0.5), totalToe: window(0.3), crossCaster: window(0.2) };
    const gauge = { camber: 0, caster: 0, toe: 0 };
    const problem = problemOf({ car, spec: { front }, reading: { LF: ZERO, RF: ZERO }, settings: {}, gauge });
    const [only] = subproblemsOf(problem);
    const [assembly, states] = [only?.assemblies[1], only?.states[1]];
    const uncertainty = assembly && problem.uncertainty.get(assembly);
    if (!only || !assembly || !states || !uncertainty) throw new Error('a wheel that was asked about');
    const terms = only.terms.map((term) => indexTerm(term, only.states));
    const costs = new ChanceCost(states, terms, 1, uncertainty, settingsOf(assembly, problem.now));
    for (let state = 0; state < states.count; state++) {
      const covariance = uncertainty.covariance(states.settings(state));
      const variance = (k: number) => covariance[k * (ANGLES_A_WHEEL + 1)] ?? Number.NaN;
      const wanted = variance(0) / 0.5 ** 2 + variance(1) / 0.2 ** 2 + variance(2) / 0.3 ** 2;
      expect(costs.cost(state)).toBeCloseTo(wanted, 9);
      expect(wanted > 0).toBe(states.settings(state)[0]?.rod !== 0);
    }
  });
});
