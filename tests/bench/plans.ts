/** How long a plan takes: one axle, the whole car, and how that grows with the number of positions. */

import { many } from '../../app/terminal/report.ts';
import type { PlanRequest } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { request, wholeCar } from './cars.ts';
import { ms, type Topic } from './topic.ts';

const TARGET = 50; // ms
/** Positions of each of the four packs, over the same travel. */
const SIZES = [5, 9, 17, 33];

interface Case {
  readonly name: string;
  readonly request: PlanRequest;
  /** Whether the windows can be reached. */
  readonly within: boolean;
  readonly target?: number;
  /** The case that it is compared with. */
  readonly besides?: string;
}

function topic(title: string, cases: readonly Case[]): Topic {
  const combinations = new Map<string, number>();
  return {
    title,
    add: (bench) => {
      for (const { name, request, within } of cases) {
        const { optimum, inWindow } = planMoves(request);
        // Nothing is proven of what is set between marks.
        const isProven = request.style !== 'surest' && request.style !== 'practical' && !request.live;
        if (optimum.proven !== isProven || inWindow !== within) throw new Error(`${name}: not the plan that there is`);
        combinations.set(name, optimum.combinations);
        bench.add(name, () => {
          planMoves(request);
        });
      }
    },
    rows: (median) => [
      ...cases.map(({ name, target }) => ({
        what: `${name} (${many(combinations.get(name) as number)} combinations)`,
        value: ms(median(name)),
        ...(target === undefined ? {} : { target: `target ${target} ms` }),
      })),
      ...cases.flatMap(({ name, besides }) =>
        besides === undefined
          ? []
          : [
              {
                what: `how many times as long as ${besides}: ${name}`,
                value: `${(median(name) / median(besides)).toFixed(2)} ×`,
              },
            ],
      ),
    ],
  };
}

export const plans = topic('A plan', [
  { name: 'front axle', request, within: true, target: TARGET },
  { name: 'whole car', request: wholeCar(17, true), within: true, target: TARGET },
  { name: 'whole car, out of reach', request: wholeCar(17, false), within: false, target: TARGET },
  {
    name: 'whole car, least work',
    request: { ...wholeCar(17, true), style: 'least-work' },
    within: true,
    target: TARGET,
  },
  { name: 'whole car, surest', request: { ...wholeCar(17, true), style: 'surest' }, within: true, target: TARGET },
  {
    name: 'whole car, practical',
    request: { ...wholeCar(17, true), style: 'practical' },
    within: true,
    target: 60,
  },
  {
    name: 'whole car, practical, by a rack that shows camber and toe',
    request: { ...wholeCar(17, true), style: 'practical', live: ['camber', 'toe'] },
    within: true,
    target: 60,
    besides: 'whole car, practical',
  },
]);

export const growth = topic(
  'The whole car as its four packs get finer',
  SIZES.flatMap((size) => [
    { name: `${size} positions`, request: wholeCar(size, true), within: true },
    { name: `${size} positions, out of reach`, request: wholeCar(size, false), within: false },
  ]),
);
