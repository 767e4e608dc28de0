/** Plans over every suspension kind, with random adjusters of every kind that fits: the best there is, within limits. */
import { describe, expect, it } from 'vitest';
import {
  type Axle,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
  type PlanStyle,
} from '../../core/contract.ts';
import { adjusterPositions, planMoves, predictReading, shimStack, suspensionKinds } from '../../core/index.ts';
import {
  adjustersAt,
  better,
  bruteForce,
  combinations,
  PAIRS,
  pairsHold,
  randomReading,
  randomSpec,
  type Score,
  score,
  sidesHold,
} from '../tools/brute-force.ts';
import { between, oneOf, type Random, randomSuspension, rod, shims, stream } from '../tools/random-cars.ts';
import { sampleAxle } from '../tools/samples.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

/** Where caster is read: on a steered axle with a steering axis, or by the chart. */
const hasCaster = (kind: string): boolean => kind === 'unknown' || suspensionKinds[kind]?.steeringAxis !== undefined;

function request(seed: number, kind: string, style: PlanStyle): PlanRequest {
  const random = stream(seed * 31 + kind.length);
  const axle = sampleAxle(random, kind, true);
  const car: Car = {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: axle,
    rear: { ...axle, steered: false },
  };
  const name = hasCaster(kind) ? 'front' : 'rear';
  const reading = randomReading(random, seed % 3 === 0 ? 1.2 : 0.5);
  return { car, spec: { [name]: randomSpec(random, name === 'front') }, reading, settings: {}, style };
}

const SEEDS = shortOrLong([1, 3, 9], upTo(14));
const KINDS = Object.keys(suspensionKinds);
const styleOf = (seed: number): PlanStyle => (seed % 2 ? 'closest' : 'least-work');

describe.each(KINDS)('%s', (kind) => {
  it.each(SEEDS)('seed %i: no combination of both sides is better, and every limit is kept', (seed) => {
    const asked = request(seed, kind, styleOf(seed));
    const name = hasCaster(kind) ? 'front' : 'rear';
    const plan = planMoves(asked);
    const best = bruteForce(asked, name);
    expect(plan.inWindow).toBe(best.inWindow);
    const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
    const style = best.inWindow ? (asked.style ?? 'closest') : 'closest';
    expect(better(best, own, style), JSON.stringify({ best, own })).toBe(false);
    expect(plan.distance).toBeCloseTo(score(asked.spec, plan.predicted).distance, 6);
    expect(plan.predicted).toEqual(predictReading(asked.car, asked.reading, {}, plan.positions));
    expect(kept(asked.car, plan.positions)).toBe(true);
    expect(JSON.stringify(plan)).not.toMatch(/null|NaN/);
    const surest = planMoves({ ...asked, style: 'surest' });
    expect(surest.inWindow).toBe(best.inWindow);
    expect(surest.chance).toBeGreaterThanOrEqual(plan.chance);
    expect(kept(asked.car, surest.positions)).toBe(true);
    expect(JSON.stringify(surest)).not.toMatch(/null|NaN/);
  });
});

it('the cases above hold both kinds: windows that can be reached and windows that cannot', () => {
  const all = KINDS.flatMap((kind) => SEEDS.map((seed) => planMoves(request(seed, kind, styleOf(seed))).inWindow));
  const reached = all.filter(Boolean).length;
  expect(reached).toBeGreaterThan(all.length / 10);
  expect(reached).toBeLessThan((all.length * 9) / 10);
});

/** Every limit, worded here as the contract words it. */
function kept(car: Car, positions: CarSettings): boolean {
  for (const corner of CORNERS) {
    const settings = positions[corner] ?? {};
    for (const one of adjustersAt(car, corner)) {
      expect(adjusterPositions(one)).toContain(settings[one.id]);
      const position = settings[one.id] as number;
      if (one.kind === 'shim-pack') {
        expect(position).toBeLessThanOrEqual(one.max);
        const stack = shimStack(position, one.sizes, { max: one.max });
        expect(stack.exact).toBe(true);
        expect(stack.count).toBeLessThanOrEqual(one.maxCount ?? Number.POSITIVE_INFINITY);
      }
      if (one.leastEngaged !== undefined) {
        const left = one.engaged - (position - (one.reference as number));
        expect(left).toBeGreaterThanOrEqual(one.leastEngaged - 1e-9);
      }
    }
    expect(pairsHold(adjustersAt(car, corner), settings), corner).toBe(true);
  }
  for (const axle of ['front', 'rear'] as const) {
    const [left, right] = PAIRS[axle];
    expect(sidesHold(adjustersAt(car, right), positions[left] ?? {}, positions[right] ?? {}), axle).toBe(true);
  }
  return true;
}

/** A double wishbone with every limit that packs and rods have, and a rigid axle with wedges. */
function limitedCar(random: Random): Car {
  const pack = (id: string, at: string) => ({
    ...shims(random, id, at),
    sizes: [1, 1.5],
    max: 6,
    maxCount: 3,
    reference: oneOf(random, [1, 2, 2.5]),
  });
  const most = between(random, 0.8, 2.5);
  const tie = { ...rod('rod', 'tieInner', 2, 0.25), maxSideDifference: between(random, 0.5, 2) };
  const front: Axle = {
    suspension: randomSuspension(random, 'double-wishbone'),
    adjusters: [
      { ...pack('packA', 'upperFront'), reference: 2, pair: { with: 'packB', most } },
      { ...pack('packB', 'upperRear'), reference: 2 },
      { ...tie, engaged: 10, leastEngaged: oneOf(random, [9, 9.5, 10]) },
    ],
    steered: true,
  };
  const wedge = { id: 'wedge', kind: 'axle-wedge', degrees: [-1, -0.5, 0.5, 1], reference: 0 };
  const beam: Axle = {
    suspension: randomSuspension(random, 'beam-front'),
    adjusters: [wedge, rod('rod', 'tieInner', 1, 0.25)],
    steered: false,
  };
  return { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front, rear: beam };
}

describe('limits', () => {
  it.each(shortOrLong([1, 4, 16, 20, 30], upTo(30)))('seed %i: hold in a plan, in reach or out of it', (seed) => {
    const random = stream(seed + 400);
    const car = limitedCar(random);
    const measured = randomReading(random, seed % 2 ? 2.5 : 0.6);
    const caster = { LR: { ...measured.LR, caster: 3.6 }, RR: { ...measured.RR, caster: between(random, 1, 5) } };
    const reading = { ...measured, ...caster };
    // One side wants up, the other down: what tears at every limit that ties the two.
    const apart = { left: { toe: { low: 0.5, high: 0.7 } }, right: { toe: { low: -0.7, high: -0.5 } } };
    const spec = {
      front: { ...randomSpec(random, true), ...(seed % 3 ? {} : apart) },
      rear: randomSpec(random, true),
    };
    const locked = seed % 5 === 0 ? [{ corner: 'LF' as const, adjuster: oneOf(random, ['packA', 'packB']) }] : [];
    const plan = planMoves({ car, spec, reading, settings: {}, locked });
    expect(kept(car, plan.positions)).toBe(true);
    const surest = planMoves({ car, spec, reading, settings: {}, locked, style: 'surest' });
    expect(kept(car, surest.positions)).toBe(true);
    expect(surest.chance).toBeGreaterThanOrEqual(plan.chance);
    // No random combination that keeps them is better.
    const lists = Object.fromEntries(
      CORNERS.map((corner) => [
        corner,
        combinations(
          car,
          corner,
          locked.filter((one) => one.corner === corner).map(({ adjuster }) => adjuster),
        ),
      ]),
    ) as Record<Corner, CarSettings[Corner][]>;
    const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: 0 };
    let tried = 0;
    for (let i = 0; i < 250; i++) {
      const settings = Object.fromEntries(
        CORNERS.map((corner) => [corner, random() < 0.6 ? plan.positions[corner] : oneOf(random, lists[corner])]),
      ) as Record<Corner, Record<string, number>>;
      if (!sidesHold(car.front.adjusters, settings.LF, settings.RF)) continue;
      if (!sidesHold(car.rear.adjusters, settings.LR, settings.RR)) continue;
      tried++;
      const found = { ...score(spec, predictReading(car, reading, {}, settings)), effort: 0 };
      expect(better(found, own, 'closest')).toBe(false);
    }
    expect(tried).toBeGreaterThan(20);
  });
});
