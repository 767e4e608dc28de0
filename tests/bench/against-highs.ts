/**
 * The whole car made linear (every position's effect alone, as a chart), put to the planner and to HiGHS, a
 * general-purpose solver: both go from the same data to the optimum. Squares are not linear, so that "closest" is put
 * to it with windows of the wheels alone, one yes/no for each combination of a wheel that is in its windows.
 */
import loadHighs from 'highs';
import type { AxleSpec, PlanRequest } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { charted, closestProblem, leastWorkProblem } from '../tools/linear-model.ts';
import { wholeCar } from './cars.ts';
import { ms, type Topic } from './topic.ts';

const SAME = 1e-6; // minutes, or half windows squared

const whole = wholeCar(17, true);
const car = charted(whole.car);
const wheels = ({ camber, caster, toe }: AxleSpec = {}): AxleSpec => ({
  ...(camber && { camber }),
  ...(caster && { caster }),
  ...(toe && { toe }),
});
const leastWork: PlanRequest = { ...whole, car, style: 'least-work' };
const closest: PlanRequest = {
  ...leastWork,
  style: 'closest',
  spec: { front: wheels(whole.spec.front), rear: wheels(whole.spec.rear) },
  reading: { ...whole.reading, toeReference: 'centreline' },
};

const highs = await loadHighs();
const solve = (text: string) => highs.solve(text, { mip_rel_gap: 0 });
const byHighs = {
  leastWork: () => solve(leastWorkProblem(car, leastWork.spec, leastWork.reading)),
  closest: () => solve(closestProblem(car, closest.spec, closest.reading)),
};

function check(name: string, ours: number, theirs: { Status: string; ObjectiveValue: number }): void {
  if (theirs.Status === 'Optimal' && Math.abs(theirs.ObjectiveValue - ours) < SAME) return;
  throw new Error(`${name}: ours ${ours}, HiGHS ${theirs.ObjectiveValue} (${theirs.Status})`);
}

export const againstHighs: Topic = {
  title: 'The whole car made linear, the same optimum by both',
  add: (bench) => {
    check('least work', planMoves(leastWork).effort, byHighs.leastWork());
    check('closest', planMoves(closest).distance, byHighs.closest());
    bench.add('linear, least work', () => {
      planMoves(leastWork);
    });
    bench.add('HiGHS, least work', () => {
      byHighs.leastWork();
    });
    bench.add('linear, closest', () => {
      planMoves(closest);
    });
    bench.add('HiGHS, closest', () => {
      byHighs.closest();
    });
  },
  rows: (median) =>
    (
      [
        ['least work', 'least work, every window'],
        ['closest', 'closest, windows of the wheels'],
      ] as const
    ).flatMap(([task, what]) => {
      const [ours, theirs] = [median(`linear, ${task}`), median(`HiGHS, ${task}`)];
      return [
        { what: `${what}: the planner, all of a plan`, value: ms(ours) },
        { what: `${what}: HiGHS, the positions`, value: ms(theirs), target: `${(theirs / ours).toFixed(1)} × ours` },
      ];
    }),
};
