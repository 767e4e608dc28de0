/** How long it takes to learn from ten rounds of a whole car, and to explain the last of them. */
import { sideOf } from '../../core/adjuster/of-corner.ts';
import {
  type Adjuster,
  type Car,
  CORNERS,
  type Corner,
  type Position,
  type Round,
  type Settings,
} from '../../core/contract.ts';
import { adjusterPositions, adjustersOf, explain, learn } from '../../core/index.ts';
import { oneOf, type Random, stream } from '../tools/random-cars.ts';
import { builtWithin, shown } from '../tools/read-car.ts';
import { wholeCar } from './cars.ts';
import { ms, type Topic } from './topic.ts';

const ROUNDS = 10;
const TARGET = 20; // ms

const anywhere = (adjuster: Adjuster, random: Random): Position => oneOf(random, adjusterPositions(adjuster));

/** Every adjuster is set anew in every round, as nobody would: the most that ten rounds can hold. */
function roundsOf(car: Car): Round[] {
  const random = stream(41);
  const truth = new Map(CORNERS.map((corner) => [corner, builtWithin(sideOf(car, corner).suspension, 4, random)]));
  return Array.from({ length: ROUNDS }, (_, i) => {
    const settings = Object.fromEntries(
      CORNERS.map((corner): [Corner, Settings] => [
        corner,
        Object.fromEntries(adjustersOf(car, corner).map((one) => [one.id, i ? anywhere(one, random) : one.reference])),
      ]),
    ) as Record<Corner, Settings>;
    const reading = Object.fromEntries(
      CORNERS.map((corner) => [corner, shown(truth.get(corner)!, adjustersOf(car, corner), settings[corner], random)]),
    );
    return { id: `round-${i}`, at: `2026-03-02T08:${10 + i}:00Z`, reading, settings };
  });
}

const { car } = wholeCar(17, true);
const rounds = roundsOf(car);
const [before, last] = rounds.slice(-2) as [Round, Round];
const LEARN = 'learn, ten rounds of a whole car';
const EXPLAIN = 'explain, a whole car with every adjuster moved';

export const learning: Topic = {
  title: 'What readings teach',
  add: (bench) => {
    const { parts, leftOut } = learn(car, rounds).learned ?? { parts: [], leftOut: [] };
    if (parts.length !== CORNERS.length || leftOut.length > 0) throw new Error('not what ten rounds teach');
    if (explain(car, last, { before })[0]?.cause !== 'noise') throw new Error('not what there is to explain');
    bench.add(LEARN, () => {
      learn(car, rounds);
    });
    bench.add(EXPLAIN, () => {
      explain(car, last, { before });
    });
  },
  rows: (median) => [
    { what: LEARN, value: ms(median(LEARN)), target: `target ${TARGET} ms` },
    { what: EXPLAIN, value: ms(median(EXPLAIN)) },
  ],
};
