/** The planner against HiGHS, a general-purpose solver from the registry, where the problem is linear: effect tables. */
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import type { AxleSpec, PlanRequest, Reading, WheelReading, Window } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { wholeCar } from '../bench/cars.ts';
import { chartCar, charted, closestProblem, leastWorkProblem } from '../tools/linear-model.ts';
import { between, type Random, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

const SEEDS = upTo(40);
const highs = await loadHighs();

const window = (random: Random, aim: number, half: number): Window => {
  const width = half * between(random, 0.7, 1.5);
  return { low: aim - width, aim: aim + between(random, -0.3, 0.3) * width, high: aim + width };
};
const wheels = (random: Random): AxleSpec => ({
  camber: window(random, -0.5, 0.4),
  caster: window(random, 3, 0.5),
  toe: window(random, 0.05, 0.15),
});
const found = (random: Random): Reading => {
  const spread = random() < 0.5 ? 0.8 : 2.2;
  const wheel = () => ({
    camber: -0.5 + between(random, -spread, spread),
    caster: 3 + between(random, -spread, spread),
    toe: between(random, -0.5, 0.5),
  });
  return { LF: wheel(), RF: wheel() };
};

/** Windows of the wheels; cross limits and total toe too. */
function wheelsAlone(seed: number): PlanRequest {
  const random = stream(seed + 400);
  const car = chartCar(random);
  const spec = { front: wheels(random) };
  return { car, spec, reading: found(random), settings: {} };
}
function wholeAxle(seed: number): PlanRequest {
  const random = stream(seed + 800);
  const car = chartCar(random);
  const front: AxleSpec = {
    ...wheels(random),
    totalToe: window(random, 0.1, 0.2),
    crossCamber: window(random, 0, 0.3),
    crossCaster: window(random, 0, 0.4),
  };
  return { car, spec: { front }, reading: found(random), settings: {}, style: 'least-work' };
}

describe('the same optimum as HiGHS', () => {
  it.each(SEEDS)('seed %i: closest, windows of the wheels', (seed) => {
    const asked = wheelsAlone(seed);
    const plan = planMoves(asked);
    const { Status, ObjectiveValue } = highs.solve(closestProblem(asked.car, asked.spec, asked.reading));
    expect(plan.inWindow).toBe(Status === 'Optimal');
    if (plan.inWindow) expect(Math.abs(plan.distance - ObjectiveValue)).toBeLessThan(1e-6);
  });

  it.each(SEEDS)('seed %i: least work, cross limits and total toe too', (seed) => {
    const asked = wholeAxle(seed);
    const plan = planMoves(asked);
    const problem = leastWorkProblem(asked.car, asked.spec, asked.reading);
    const { Status, ObjectiveValue } = highs.solve(problem, { mip_rel_gap: 0 });
    expect(plan.inWindow).toBe(Status === 'Optimal');
    if (plan.inWindow) expect(Math.abs(plan.effort - ObjectiveValue)).toBeLessThan(1e-6);
  });

  it.each(shortOrLong([1, 2, 4], upTo(8)))(
    'seed %i: the whole car made linear, front toe against the thrust line',
    (seed) => {
      const random = stream(seed + 1200);
      const asked = wholeCar(9, seed % 4 > 0);
      const car = charted(asked.car);
      const wheel = ({ camber = 0, caster = 0, toe = 0 }: WheelReading = {}): WheelReading => ({
        camber: camber + between(random, -0.2, 0.2),
        caster: caster + between(random, -0.2, 0.2),
        toe: toe + between(random, -0.2, 0.2),
      });
      const { LF, RF, LR, RR } = asked.reading;
      const reading: Reading = { ...asked.reading, LF: wheel(LF), RF: wheel(RF), LR: wheel(LR), RR: wheel(RR) };
      const plan = planMoves({ ...asked, car, reading, style: 'least-work' });
      const { Status, ObjectiveValue } = highs.solve(leastWorkProblem(car, asked.spec, reading), { mip_rel_gap: 0 });
      expect(plan.inWindow).toBe(Status === 'Optimal');
      if (plan.inWindow) expect(Math.abs(plan.effort - ObjectiveValue)).toBeLessThan(1e-6);
    },
  );

  it('the cases above hold windows that can be reached and windows that cannot', () => {
    const asked = SEEDS.flatMap((seed) => [wheelsAlone(seed), wholeAxle(seed)]);
    const reachable = asked.filter((one) => planMoves(one).inWindow).length;
    expect(reachable).toBeGreaterThan(20);
    expect(reachable).toBeLessThan(asked.length);
  });
});
