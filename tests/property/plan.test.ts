/** The planner against every combination, tried one by one with nothing but `predictReading`'s model and the formula. */
import { describe, expect, it } from 'vitest';
import {
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
  type Position,
  type Reading,
  type Settings,
} from '../../core/contract.ts';
import { adjusterPositions, planMoves, predictReading } from '../../core/index.ts';
import {
  better,
  bruteForce,
  combinations,
  randomReading,
  randomSpec,
  type Score,
  score,
} from '../tools/brute-force.ts';
import { randomCar, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

function request(seed: number, style: 'closest' | 'least-work', axle: 'front' | 'rear'): PlanRequest {
  const random = stream(seed);
  const car = randomCar(random, 1 / 3);
  const reading = randomReading(random, seed % 3 === 0 ? 1.5 : 0.6);
  return { car, spec: { [axle]: randomSpec(random, axle === 'front') }, reading, settings: {}, style };
}

const SEEDS = shortOrLong([1, 4, 9, 27, 40, 66, 88], upTo(100));
const axleOf = (seed: number) => (seed % 2 ? 'front' : 'rear');

describe('every plan', () => {
  describe.each(['closest', 'least-work'] as const)('%s', (style) => {
    it.each(SEEDS)('seed %i: no combination of both sides is better', (seed) => {
      const axle = axleOf(seed);
      const asked = request(seed, style, axle);
      const plan = planMoves(asked);
      const best = bruteForce(asked, axle);
      expect(plan.inWindow).toBe(best.inWindow);
      const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
      expect(better(best, own, best.inWindow ? style : 'closest'), JSON.stringify({ best, own })).toBe(false);
      expect(Math.abs(plan.distance - score(asked.spec, plan.predicted).distance)).toBeLessThan(1e-6);
    });
  });

  it('the cases above hold both kinds: windows that can be reached and windows that cannot', () => {
    const asked = SEEDS.map((seed) => request(seed, 'closest', axleOf(seed)));
    const reachable = asked.filter((one) => planMoves(one).inWindow).length;
    expect(reachable).toBeGreaterThan(SEEDS.length / 10);
    expect(reachable).toBeLessThan((SEEDS.length * 9) / 10);
  });

  it.each(upTo(40))('seed %i: predicted is what predictReading says of its positions, which exist', (seed) => {
    const random = stream(seed + 5000);
    const car = randomCar(random, 2);
    const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
    const toeReference = seed % 2 ? ('thrust-line' as const) : ('centreline' as const);
    const reading: Reading = { ...randomReading(random, 0.6), toeReference };
    const plan = planMoves({ car, spec, reading, settings: {} });
    expect(plan.predicted).toEqual(predictReading(car, reading, {}, plan.positions));
    const stands: Record<Corner, Record<string, Position>> = { LF: {}, RF: {}, LR: {}, RR: {} };
    for (const corner of CORNERS) {
      const axle = corner.endsWith('F') ? car.front : car.rear;
      for (const adjuster of axle.adjusters) {
        stands[corner][adjuster.id] = adjuster.reference;
        expect(adjusterPositions(adjuster)).toContain(plan.positions[corner][adjuster.id]);
      }
    }
    // The moves lead from where the adjusters stand to where the plan ends, and the rack shows it on the way.
    let now: CarSettings = stands;
    for (const move of plan.moves) {
      expect(now[move.corner]?.[move.adjuster]).toBe(move.from);
      now = { ...now, [move.corner]: { ...now[move.corner], [move.adjuster]: move.to } };
      expect(move.expectAfter).toEqual(predictReading(car, reading, {}, now));
    }
    expect(now).toEqual(plan.positions);
    expect(plan.chance).toBeGreaterThanOrEqual(0);
    expect(plan.chance).toBeLessThanOrEqual(1);
    expect(JSON.stringify(plan)).not.toMatch(/null|NaN/);
    // The sum of the contract, of the predicted reading as the rack shows it.
    expect(plan.distance).toBeCloseTo(score(spec, plan.predicted).distance, 6);
  });

  it.each(shortOrLong([1, 6, 12, 19], upTo(20)))(
    'seed %i: against the thrust line, no random combination of the whole car is better',
    (seed) => {
      const random = stream(seed + 9000);
      const car = randomCar(random, 1 / 3);
      const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
      const reading: Reading = { ...randomReading(random, 0.5), toeReference: 'thrust-line' };
      const plan = planMoves({ car, spec, reading, settings: {} });
      const lists = Object.fromEntries(CORNERS.map((corner) => [corner, combinations(car, corner)]));
      const best: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: 0 };
      for (let i = 0; i < 400; i++) {
        const settings = Object.fromEntries(
          CORNERS.map((corner) => {
            const list = lists[corner] as Settings[];
            // Half of the tries are neighbours of the plan: one corner elsewhere.
            return [
              corner,
              random() < 0.6 ? plan.positions[corner] : (list[Math.floor(random() * list.length)] as Settings),
            ];
          }),
        );
        const found = { ...score(spec, predictReading(car, reading, {}, settings)), effort: 0 };
        expect(better(found, best, 'closest')).toBe(false);
      }
    },
  );

  it.each(shortOrLong(upTo(3), upTo(15)))(
    'seed %i: leaves locked adjusters alone, and still finds the best of the rest',
    (seed) => {
      const asked = request(seed, 'closest', 'front');
      const locked = [{ corner: 'LF', adjuster: 'first' }] as const;
      const plan = planMoves({ ...asked, locked });
      const reference = asked.car.front.adjusters[0]?.reference;
      expect(plan.positions.LF.first).toBe(reference);
      const best = bruteForce({ ...asked, locked }, 'front');
      expect(plan.inWindow).toBe(best.inWindow);
      expect(plan.distance).toBeLessThan(best.distance + 1e-6);
    },
  );

  it('keeps an adjuster that stands between marks where it is, or puts it on a mark', () => {
    const asked = request(1, 'closest', 'front');
    const plan = planMoves({ ...asked, settings: { LF: { rod: 0.07 } } });
    const rod = asked.car.front.adjusters.find((one) => one.id === 'rod');
    expect([...adjusterPositions(rod as never), 0.07]).toContain(plan.positions.LF.rod);
  });
});
