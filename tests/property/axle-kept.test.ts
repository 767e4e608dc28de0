/** A rigid axle on links: its thrust line is set by what leaves the pinion angle and the place across the car alone. */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type {
  Axle,
  AxleSpec,
  Car,
  CarFile,
  CarSettings,
  Moved,
  PlanRequest,
  Position,
  Reading,
  Suspension,
  Vec3,
} from '../../core/contract.ts';
import {
  expectationOfFile,
  planMoves,
  planOfFile,
  planRequest,
  predictReading,
  solveAxle,
  validateCarFile,
} from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { better, bruteForce, randomReading, randomSpec, type Score } from '../tools/brute-force.ts';
import { type GeneralAxle, generalAxle } from '../tools/general-axle.ts';
import { between, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

/** mm a turn of every rod here. */
const LEAD = 1.5;
const { points } = starters.find(({ kind }) => kind === 'beam-linked')!;
const linked: Suspension = { kind: 'beam-linked', points, camber: 0, toe: 0 };
const thread = (id: string, link: string, turns: number, step: number) => ({
  ...rod(id, link, turns, step),
  lead: LEAD,
});
const starter: Axle = {
  suspension: linked,
  adjusters: [thread('lower', 'lowerBody', 4, 0.5), thread('upper', 'upperBody', 3, 0.5)],
  steered: false,
};
const plainFront: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [0, 780, 330] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: true,
};
const carOf = (rear: Axle): Car => ({ id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: plainFront, rear });
const fileOf = (rear: Axle, spec: AxleSpec, reading: Reading, moved: readonly Moved[] = []): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car: carOf(rear), spec: { rear: spec } },
  visits: [{ id: 'v', carId: 'a', opened: '2026-01-05', rounds: [{ reading, settings: {}, moved }] }],
});
/** The thrust line points so many degrees to the right. */
const off = (thrust: number): Reading => ({
  LR: { camber: -0.4, toe: 0.05 + thrust },
  RR: { camber: -0.4, toe: 0.05 - thrust },
});
const straight: AxleSpec = { thrustAngle: { low: -0.1, high: 0.1 } };

/** By a library that knows nothing of suspensions: how the axle stands with the rods at these turns. */
function standing({ LR = {}, RR = {} }: CarSettings): GeneralAxle {
  const longer = (at: Readonly<Record<string, Position>>) => ({
    longer: { lowerBody: LEAD * Number(at.lower ?? 0), upperBody: LEAD * Number(at.upper ?? 0) },
  });
  return generalAxle(linked, linked, longer(LR), longer(RR));
}

describe('a thrust line that is 0.35° off', () => {
  it.each(
    [0.35, -0.35].flatMap((thrust) =>
      (['closest', 'least-work', 'surest'] as const).map((style) => [thrust, style] as const),
    ),
  )('%f°, %s: set with the pinion within 0.5° and the axle within 3 mm of where it was', (thrust, style) => {
    const plan = planOfFile(fileOf(starter, straight, off(thrust)), { style });
    expect(plan.inWindow).toBe(true);
    const { left, right, pinionAngle, lateral } = standing(plan.positions);
    expect(Math.abs(thrust + (left.toe - right.toe) / 2)).toBeLessThan(0.1);
    expect(Math.abs(pinionAngle)).toBeLessThan(0.5);
    expect(Math.abs(lateral)).toBeLessThan(3);
    expect(plan.predicted.rear?.pinionChange).toBeCloseTo(pinionAngle, 3);
    expect(plan.predicted.rear?.lateralChange).toBeCloseTo(lateral, 3);
    expect(plan.moves.at(-1)?.expectAfter.rear).toEqual(plan.predicted.rear);
    expect(plan.notes.join(' ')).toContain('Kept within the usual ±0.5° of pinion and ±3 mm sideways');
  });

  it('with the least work by the lower links, as much longer on one side as shorter on the other', () => {
    const { moves } = planOfFile(fileOf(starter, straight, off(0.35)), { style: 'least-work' });
    expect(moves.map(({ corner, adjuster, to }) => [corner, adjuster, Number(to) * LEAD])).toEqual([
      ['LR', 'lower', 4.5],
      ['RR', 'lower', -4.5],
    ]);
  });

  it('windows that nobody typed are marked as such, those that were typed are kept as they are', () => {
    const typed = { low: -0.2, aim: 0.1, high: 0.3 };
    const { spec } = planRequest(fileOf(starter, { ...straight, pinionChange: typed }, off(0.35)));
    expect(spec.rear?.pinionChange).toEqual(typed);
    expect(spec.rear?.lateralChange).toEqual({ low: -3, aim: 0, high: 3, assumed: true });
    const plain = planRequest({ ...fileOf(plainFront, straight, off(0.1)) });
    expect(plain.spec.rear).toEqual(straight);
  });

  it('what was made since the reading counts: the rest is planned from there', () => {
    const made: Moved[] = [
      { corner: 'LR', adjuster: 'upper', from: 0, to: 2, outcome: 'done' },
      { corner: 'RR', adjuster: 'upper', from: 0, to: 2, outcome: 'done' },
    ];
    const file = fileOf(starter, straight, off(0.35), made);
    expect(Math.abs(expectationOfFile(file).rear?.pinionChange ?? 0)).toBeGreaterThan(0.5);
    const plan = planOfFile(file);
    const { pinionAngle, lateral } = standing(plan.positions);
    expect(Math.abs(pinionAngle)).toBeLessThan(0.5);
    expect(plan.predicted.rear?.pinionChange).toBeCloseTo(pinionAngle, 3);
    expect(plan.predicted.rear?.lateralChange).toBeCloseTo(lateral, 3);
  });
});

describe('where the windows cannot all be met', () => {
  const lower: Axle = { ...starter, adjusters: [thread('lower', 'lowerBody', 6, 0.25)] };
  const locked = [{ corner: 'RR', adjuster: 'lower' }] as const;

  it('what was typed goes before what nobody typed, and that is told', () => {
    const file = fileOf(lower, { thrustAngle: { low: -0.03, high: 0.03 } }, off(0.35));
    const plan = planOfFile(file, { locked });
    expect(plan.inWindow).toBe(true);
    expect(plan.shortfall).toEqual([]);
    expect(plan.chance).toBeGreaterThan(0.5);
    expect(Math.abs(standing(plan.positions).pinionAngle)).toBeGreaterThan(0.5);
    expect(plan.noted).toContainEqual(expect.objectContaining({ note: 'axle-goes', axle: 'rear', beyond: true }));
  });

  it('a window of change that was typed falls short as any other', () => {
    const spec = { thrustAngle: { low: -0.03, high: 0.03 }, pinionChange: { low: -0.05, high: 0.05 } };
    const plan = planOfFile(fileOf(lower, spec, off(0.35)), { locked });
    expect(plan.inWindow).toBe(false);
    const short = plan.shortfall.find(({ angle }) => angle === 'pinionChange');
    const { pinionAngle } = standing(plan.positions);
    expect(short?.where).toBe('rear');
    expect(short?.by).toBeCloseTo(pinionAngle - Math.sign(pinionAngle) * 0.05, 3);
  });

  it('of an axle that no links place it cannot be judged', () => {
    const spec = { ...straight, pinionChange: { low: -1, high: 1 } };
    const { unmeasured } = planMoves({ car: carOf(plainFront), spec: { rear: spec }, reading: off(0), settings: {} });
    expect(unmeasured).toEqual([{ where: 'rear', angle: 'pinionChange' }]);
  });
});

describe('the best of every combination of both sides', () => {
  const SEEDS = shortOrLong(upTo(4), upTo(24));
  function request(seed: number): PlanRequest {
    const random = stream(seed * 131);
    const half = between(random, 0.15, 0.8);
    const rear: Axle = {
      suspension: randomSuspension(random, 'beam-linked'),
      adjusters: [thread('lower', 'lowerBody', 1, 0.5), thread('upper', 'upperBody', 1, 0.5)],
      steered: false,
    };
    const spec = {
      ...randomSpec(random, false),
      pinionChange: { low: -half, aim: 0.1 * half, high: half },
      lateralChange: { low: -1, high: between(random, 0.2, 2) },
    };
    return {
      ...{ car: carOf(rear), spec: { rear: spec }, reading: randomReading(random, seed % 3 ? 0.3 : 0.9), settings: {} },
      style: seed % 2 ? 'closest' : 'least-work',
    };
  }

  it.each(SEEDS)('seed %i: none is better', (seed) => {
    const asked = request(seed);
    const plan = planMoves(asked);
    const best = bruteForce(asked, 'rear');
    const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
    expect(plan.inWindow).toBe(best.inWindow);
    const style = best.inWindow ? (asked.style ?? 'closest') : 'closest';
    expect(better(best, own, style), JSON.stringify({ best, own })).toBe(false);
    expect(plan.predicted).toEqual(predictReading(asked.car, asked.reading, {}, plan.positions));
  });

  it('some could be met and some could not', () => {
    const met = SEEDS.filter((seed) => planMoves(request(seed)).inWindow).length;
    expect(met).toBeGreaterThan(0);
    expect(met).toBeLessThan(SEEDS.length);
  });
});

describe('what an inclinometer and a tape say', () => {
  const read: Reading = { ...off(0.35), rear: { pinionAngle: 3.2, lateral: -4 } };

  it('goes on by what the axle goes; without it the change alone is told', () => {
    const to: CarSettings = { LR: { lower: 2 }, RR: { upper: -1 } };
    const pose = standing(to);
    const { rear } = predictReading(carOf(starter), read, {}, to);
    expect(rear).toEqual({
      pinionAngle: expect.closeTo(3.2 + pose.pinionAngle, 3),
      lateral: expect.closeTo(-4 + pose.lateral, 3),
      pinionChange: expect.closeTo(pose.pinionAngle, 3),
      lateralChange: expect.closeTo(pose.lateral, 3),
    });
    const { pinionChange, lateralChange } = rear ?? {};
    expect(predictReading(carOf(starter), off(0.35), {}, to).rear).toEqual({ pinionChange, lateralChange });
  });

  it('one step after another comes to the same as both at once, and no step to what was read', () => {
    const car = carOf(starter);
    const [half, whole]: CarSettings[] = [{ LR: { lower: 2 } }, { LR: { lower: 2 }, RR: { upper: -1 } }];
    const twice = predictReading(car, predictReading(car, read, {}, half!), half!, whole!);
    const once = predictReading(car, read, {}, whole!);
    for (const name of ['pinionAngle', 'lateral', 'pinionChange', 'lateralChange'] as const)
      expect(twice.rear?.[name]).toBeCloseTo(once.rear?.[name] ?? Number.NaN, 10);
    expect(predictReading(car, read, whole!, whole!)).toEqual(read);
  });

  it('is kept in a car file, and refused by name where it is no figure', () => {
    expect(validateCarFile(fileOf(starter, straight, read)).visits?.[0]?.rounds[0]?.reading).toEqual(read);
    const wrong = { ...read, rear: { pinionAngle: 'up' } } as unknown as Reading;
    expect(() => validateCarFile(fileOf(starter, straight, wrong))).toThrow('reading.rear.pinionAngle: "up"');
    const turned = { ...straight, lateralChange: { low: 3, high: -3 } };
    expect(() => validateCarFile(fileOf(starter, turned, read))).toThrow('spec.rear.lateralChange.low: 3');
  });

  it('the deviation is the gauge’s, every coordinate’s and every move’s', () => {
    const suspension = { ...linked, tolerance: 4 };
    const rear: Axle = {
      suspension,
      rightSuspension: withoutRod(suspension),
      adjusters: [{ ...thread('lower', 'lowerBody', 4, 0.5), tolerance: 0.2 }],
      steered: false,
    };
    const gauge = { camber: 0.02, caster: 0.05, toe: 0.01, pinionAngle: 0.15, lateral: 0.7 };
    const asked: PlanRequest = { car: carOf(rear), spec: { rear: straight }, reading: read, settings: {}, gauge };
    const plan = planMoves(asked);
    expect(plan.moves.length).toBeGreaterThan(0);
    const gone = (axle: Axle, at: CarSettings = plan.positions) => predictReading(carOf(axle), read, {}, at).rear!;
    const here = gone(rear);
    const h = 0.25;
    const variance = { pinionAngle: 2 * gauge.pinionAngle ** 2, lateral: 2 * gauge.lateral ** 2 };
    const add = (there: typeof here, weight: number): void => {
      for (const name of ['pinionAngle', 'lateral'] as const)
        variance[name] += weight * (there[name]! - here[name]!) ** 2;
    };
    for (const side of ['suspension', 'rightSuspension'] as const) {
      const given = rear[side] as Suspension;
      for (const [name, point] of Object.entries(given.points)) {
        for (const axis of [0, 1, 2]) {
          const moved = point.map((x, i) => (i === axis ? x + h : x)) as unknown as Vec3;
          add(gone({ ...rear, [side]: { ...given, points: { ...given.points, [name]: moved } } }), 4 ** 2 / 3 / h ** 2);
        }
      }
    }
    for (const { corner, adjuster, to } of plan.moves) {
      const own = { ...plan.positions[corner], [adjuster]: Number(to) + 0.1 };
      add(gone(rear, { ...plan.positions, [corner]: own }), 1);
    }
    expect(plan.deviation.rear?.pinionAngle).toBeCloseTo(Math.sqrt(variance.pinionAngle), 4);
    expect(plan.deviation.rear?.lateral).toBeCloseTo(Math.sqrt(variance.lateral), 3);
    expect(planMoves({ ...asked, reading: off(0.35) }).deviation.rear).toBeUndefined();
  });

  it('the chance knows that it reads twice, and that what nobody reads cannot be read wrong', () => {
    const spec = { rear: { pinionChange: { low: -0.1, high: 0.1 } } };
    const gauge = { camber: 0.02, caster: 0.05, toe: 0.01, pinionAngle: 0.1 };
    const chance = (reading: Reading) =>
      planMoves({ car: carOf({ ...starter, adjusters: [] }), spec, reading, settings: {}, gauge }).chance;
    // The difference of two readings has √2 of the deviation of one; within ±0.1 of it lies erf(0.1 / (√2·√2·0.1)).
    expect(Math.abs(chance(read) - erf(1 / 2))).toBeLessThan(0.03);
    expect(chance(off(0.35))).toBe(1);
  });
});

it('what a pose says of the axle is what a prediction says', () => {
  const pose = solveAxle(starter, { left: { lower: 1, upper: -2 }, right: { lower: 3 } });
  if (!pose.reachable) throw new Error(pose.message);
  const to: CarSettings = { LR: { lower: 1, upper: -2 }, RR: { lower: 3 } };
  const { rear } = predictReading(carOf(starter), off(0), {}, to);
  expect(rear?.pinionChange).toBeCloseTo(pose.pinionAngle, 9);
  expect(rear?.lateralChange).toBeCloseTo(pose.lateral, 9);
});

function withoutRod(given: Suspension): Suspension {
  const own = Object.entries(given.points).filter(([name]) => !name.startsWith('rod'));
  return { ...given, points: Object.fromEntries(own) };
}
