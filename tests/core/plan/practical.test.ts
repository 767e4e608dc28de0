/**
 * The least work that is sure enough: of one wheel against the closed form, of two that nothing ties against every choice
 * of positions.
 */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Corner, PlanRequest, Settings } from '../../../core/contract.ts';
import { planMoves } from '../../../core/index.ts';
import { chanceAt, complete, problemOf } from '../../../core/plan/problem.ts';
import { between, stream } from '../../tools/random-cars.ts';
import { upTo } from '../../tools/seeds.ts';

/** Toe by the step, as well known as its maker says, in so many minutes. */
const chart = (id: string, toe: number, tolerance: number, effort: number): Adjuster => ({
  ...{ id, kind: 'effect-table', perStep: { toe }, range: [-2, 2], reference: 0, tolerance, effort },
});
const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };

function request(seed: number): PlanRequest {
  const random = stream(seed * 7 + 3);
  const adjusters = [
    chart('quick', between(random, 0.08, 0.2), between(random, 40, 90), 3),
    chart('slow', between(random, 0.05, 0.15), between(random, 2, 20), 11),
    chart('fine', between(random, 0.02, 0.06), between(random, 2, 20), 6),
  ];
  const car: Car = {
    ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
    front: { suspension: bare, adjusters, steered: true },
    rear: { suspension: bare, adjusters: [], steered: false },
  };
  const half = between(random, 0.06, 0.12);
  const toe = { low: -half, aim: 0, high: half };
  const read = () => ({ toe: between(random, -0.3, 0.3) });
  return {
    ...{ car, spec: { front: { toe } }, reading: { LF: read(), RF: read() }, settings: {}, style: 'practical' },
    gauge: { camber: 0.01, caster: 0.01, toe: 0.01 },
  };
}

const STEPS = [-2, -1, 0, 1, 2];
const ALL: readonly Settings[] = STEPS.flatMap((quick) =>
  STEPS.flatMap((slow) => STEPS.map((fine) => ({ quick, slow, fine }))),
);
const minutes = ({ quick, slow, fine }: Settings): number => (quick ? 3 : 0) + (slow ? 11 : 0) + (fine ? 6 : 0);

describe('one wheel', () => {
  /** A chance within a window about 0, in closed form: the gauge reads twice, and charts by their share and its like. */
  const chance = (half: number, mean: number, moved: number, share: number): number => {
    const sigma = Math.SQRT2 * Math.hypot(0.01, (share / 2) * moved);
    const below = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2;
    return below((half - mean) / sigma) - below((-half - mean) / sigma);
  };

  it.each([0.26, 0.265])(
    'within ±%d gives for a preference no more than a point of what equal work could have',
    (half) => {
      // Three steps of the vague chart are the aim itself; the only one of the sure chart is 0.03° beyond it.
      const adjusters = [
        { ...chart('sure', 0.33, 4, 5), range: [-1, 1] },
        { ...chart('vague', 0.1, 56, 5), range: [-4, 0] },
      ] as const;
      const [vague, sure] = [chance(half, 0, 0.3, 0.56), chance(half, -0.03, 0.33, 0.04)];
      expect(vague).toBeGreaterThan(0.955);
      expect(sure).toBeGreaterThan(vague + 0.02);
      const rear = { suspension: bare, adjusters: [], steered: false };
      const front = { suspension: bare, adjusters, steered: true };
      const plan = planMoves({
        ...{ car: { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front, rear }, settings: {}, style: 'practical' },
        ...{ spec: { front: { left: { toe: { low: -half, high: half } } } }, reading: { LF: { toe: 0.3 } } },
        gauge: { camber: 0.01, caster: 0.01, toe: 0.01 },
      });
      expect(plan.effort).toBe(5);
      expect(plan.chance).toBeGreaterThan(sure - 0.012);
    },
  );
});

describe('one of such wheels', () => {
  const one = (seed: number): PlanRequest => {
    const asked = request(seed);
    return { ...asked, reading: { LF: asked.reading.LF! } };
  };

  it.each(upTo(12))('seed %i: no choice of less work is sure enough', (seed) => {
    const asked = one(seed);
    const problem = problemOf(asked);
    const [plan, surest] = [planMoves(asked), planMoves({ ...asked, style: 'surest' })];
    if (!plan.inWindow) return;
    const enough = Math.min(0.95, surest.chance - 0.02);
    expect(plan.chance).toBeGreaterThanOrEqual(enough);
    for (const settings of ALL) {
      if (minutes(settings) > plan.effort - 1e-6) continue;
      expect(chanceAt(problem, { ...complete(asked), LF: settings }, problem.terms)).toBeLessThan(enough + 1e-9);
    }
  });

  it('some take more than the least work that meets the window', () => {
    const least = (seed: number) => planMoves({ ...one(seed), style: 'least-work' }).effort;
    expect(upTo(12).filter((seed) => planMoves(one(seed)).effort > least(seed) + 1).length).toBeGreaterThan(2);
  });
});

describe('two wheels that nothing ties', () => {
  it.each(upTo(12))('seed %i: no choice of less work is as sure, and of as little none is much surer', (seed) => {
    const asked = request(seed);
    const problem = problemOf(asked);
    const [plan, surest] = [planMoves(asked), planMoves({ ...asked, style: 'surest' })];
    const enough = Math.min(0.95, surest.chance - 0.02);
    expect(plan.inWindow).toBe(surest.inWindow);
    if (!plan.inWindow) return;
    expect(plan.chance).toBeGreaterThanOrEqual(enough);
    // The chance of one wheel whatever the other does: its own windows alone.
    const chances = (corner: Corner) => {
      const terms = problem.terms.filter(({ where }) => where === corner);
      return ALL.map((settings) => ({
        work: minutes(settings),
        chance: chanceAt(problem, { ...complete(asked), [corner]: settings }, terms),
      }));
    };
    // Of each work the surest, so that what is left is gone through.
    const best = (all: ReturnType<typeof chances>) =>
      [...new Set(all.map(({ work }) => work))].map((work) => ({
        work,
        chance: Math.max(...all.filter((one) => one.work === work).map(({ chance }) => chance)),
      }));
    const [left, right] = [best(chances('LF')), best(chances('RF'))];
    for (const l of left) {
      for (const r of right) {
        // Draws for the whole car fall a little otherwise than for its wheels, and preferences may cost a point.
        if (l.work + r.work < plan.effort - 1e-6) expect(l.chance * r.chance).toBeLessThan(enough + 0.02);
        else if (l.work + r.work < plan.effort + 1e-6) expect(plan.chance).toBeGreaterThan(l.chance * r.chance - 0.03);
      }
    }
  });

  it('most of them can be met, and not with the surest', () => {
    const plans = upTo(12).map((seed) => [planMoves(request(seed)), planMoves({ ...request(seed), style: 'surest' })]);
    expect(plans.filter(([plan]) => plan?.inWindow).length).toBeGreaterThan(8);
    expect(plans.filter(([plan, surest]) => (plan?.effort ?? 0) < (surest?.effort ?? 0) - 1).length).toBeGreaterThan(4);
  });
});
