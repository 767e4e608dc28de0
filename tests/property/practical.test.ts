/** The plan that the app starts from: against the rule of the contract, and every cheaper combination tried one by one. */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Plan, PlanRequest, Reading, Settings, Window } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { chanceAt, complete, problemOf } from '../../core/plan/problem.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { everyCombination, randomReading, randomSpec } from '../tools/brute-force.ts';
import { randomCar, stream } from '../tools/random-cars.ts';
import { remembered } from '../tools/remembered.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';
import { seenOf } from '../tools/seen.ts';

function request(seed: number, off = 0.5): PlanRequest {
  const random = stream(seed + 71_000);
  const car = randomCar(random, 1 / 3);
  const reading = randomReading(random, off);
  const front = randomSpec(random, true);
  return { car, spec: { front }, reading, settings: {}, style: 'practical' };
}

const SURE = 0.95;
const ABOUT_AS_SURE = 0.02;
/** What it may cost of the chance to leave no cam near dead centre. */
const FOR_CARE = 0.15;
const enough = (surest: Plan): number => Math.min(SURE, surest.chance - ABOUT_AS_SURE);

/** An eccentric bolt that was turned to more than 70° from where it moves the arm most. */
const isNearDeadCentre = ({ kind, zero, reference }: Adjuster, to: unknown): boolean =>
  kind === 'eccentric-cam' &&
  to !== reference &&
  Math.abs((zero === 'end' ? Math.sin : Math.cos)((Number(to) * Math.PI) / 180)) <
    Math.cos((70 * Math.PI) / 180) - 1e-9;
const leftNearDeadCentre = ({ front }: Car, settings: Settings): boolean =>
  front.adjusters.some((one) => isNearDeadCentre(one, settings[one.id]));

const cam = (id: string, at: string, eccentricity: number): Adjuster => ({
  ...{ id, kind: 'eccentric-cam', at, direction: [0, 1, 0], eccentricity, marks: 24, range: [-90, 90], reference: 0 },
});
const planned = remembered((seed: number) => {
  const asked = request(seed);
  return { asked, plan: planMoves(asked), surest: planMoves({ ...asked, style: 'surest' }) };
});

const SEEDS = shortOrLong(upTo(5), upTo(60));

describe('the practical plan', () => {
  it.each(SEEDS)('seed %i: is sure enough, and takes no more work than the surest', (seed) => {
    const { plan, surest } = planned(seed);
    expect(plan.inWindow).toBe(surest.inWindow);
    if (!plan.inWindow) return;
    const cams = (one: Plan) => leftNearDeadCentre(request(seed).car, one.positions.LF);
    // Two wheels that nothing ties may each give so much.
    expect(plan.chance).toBeGreaterThanOrEqual(enough(surest) - (cams(surest) ? 2 * FOR_CARE : 0));
    if (!cams(surest)) expect(plan.effort).toBeLessThanOrEqual(surest.effort + 1e-6);
  });

  /** Draws of one plan and another differ a little: what stands for the chance in the search is not the chance itself. */
  const ABOUT = 0.02;
  const TRIED = shortOrLong(60, 200);
  it.each(SEEDS)('seed %i: no combination of less work is as sure', (seed) => {
    const { asked, plan, surest } = planned(seed);
    if (!plan.inWindow) return;
    const problem = problemOf(asked);
    const avoided = (left: Settings, right: Settings): boolean =>
      leftNearDeadCentre(asked.car, left) || leftNearDeadCentre(asked.car, right);
    const gaveUp = avoided(plan.positions.LF, plan.positions.RF);
    const rivals: { distance: number; LF: Settings; RF: Settings }[] = [];
    everyCombination(asked, 'front', ({ inWindow, effort, distance }, LF, RF) => {
      // Where it has a cam near dead centre none without is sure enough, whatever its work.
      if (!inWindow || avoided(LF, RF) || (effort > plan.effort - 1e-6 && !gaveUp)) return;
      rivals.push({ distance, LF, RF });
    });
    rivals.sort((a, b) => a.distance - b.distance);
    for (const { LF, RF } of rivals.slice(0, TRIED)) {
      const chance = chanceAt(problem, { ...complete(asked), LF, RF }, problem.terms);
      expect(chance, JSON.stringify({ LF, RF })).toBeLessThan(enough(surest) + ABOUT);
    }
  });

  it('takes less work than the surest on many of the cars above', () => {
    const { less } = seenOf(['less'], SEEDS.length / 4, SEEDS, (seed) => {
      const { plan, surest } = planned(seed);
      return plan.inWindow && plan.effort < surest.effort - 1 ? ['less'] : [];
    });
    expect(less).toBeGreaterThan(SEEDS.length / 4);
  });

  /** Two cams and a rod a side, marks 30° apart. */
  const withCams = (seed: number): PlanRequest => {
    const asked = request(seed, 0.8);
    const [, , last] = asked.car.front.adjusters;
    const cams = ['upperFront', 'upperRear'].map((at, i) => ({ ...cam(`cam${i}`, at, 3), marks: 12 }));
    const front = { ...asked.car.front, adjusters: [...cams, last!] };
    return { ...asked, car: { ...asked.car, front } };
  };
  const plannedWithCams = remembered((seed: number) => planMoves(withCams(seed)));
  const CAMS = shortOrLong(upTo(6), upTo(40));
  it.each(CAMS)('seed %i: leaves no cam near dead centre where a plan without is nearly as sure', (seed) => {
    const asked = withCams(seed);
    const plan = plannedWithCams(seed);
    const avoided = (left: Settings, right: Settings): boolean =>
      leftNearDeadCentre(asked.car, left) || leftNearDeadCentre(asked.car, right);
    if (!plan.inWindow || !avoided(plan.positions.LF, plan.positions.RF)) return;
    const surest = planMoves({ ...asked, style: 'surest' });
    const problem = problemOf(asked);
    everyCombination(asked, 'front', ({ inWindow }, LF, RF) => {
      if (!inWindow || avoided(LF, RF)) return;
      const chance = chanceAt(problem, { ...complete(asked), LF, RF }, problem.terms);
      expect(chance, JSON.stringify({ LF, RF })).toBeLessThan(surest.chance * (1 - FOR_CARE) + ABOUT);
    });
  });

  it('leaves none where the plan of the least work does, on some of those cars', () => {
    const { spared } = seenOf(['spared'], 1, CAMS, (seed) => {
      const asked = withCams(seed);
      const left = ({ positions: { LF, RF } }: Plan) =>
        leftNearDeadCentre(asked.car, LF) || leftNearDeadCentre(asked.car, RF);
      const plan = plannedWithCams(seed);
      return plan.inWindow && left(planMoves({ ...asked, style: 'least-work' })) && !left(plan) ? ['spared'] : [];
    });
    expect(spared).toBeGreaterThan(1);
  });
});

const window = (aim: number, half: number): Window => ({ low: aim - half, aim, high: aim + half });
const fiveLink = suspensionFromStarter(startersFor('five-link', 'rear')[0]!, 'rear');
const strut = suspensionFromStarter(startersFor('strut', 'front')[0]!, 'front');
const rod = (link: string): Adjuster => ({
  ...{ id: 'rod', kind: 'threaded-rod', links: [link], lead: 1.5, stepTurns: 1 / 12, range: [-6, 6], reference: 0 },
});
/** A front that its rods and plates adjust, a rear that nothing adjusts but what is given. */
const car = (rear: readonly Adjuster[]): Car => ({
  ...{ id: 'x', label: 'x', wheel: { rimDiameter: 420 } },
  front: {
    ...{ suspension: strut, steered: true },
    adjusters: [rod('tieInner'), { id: 'tilt', kind: 'clamp-bolt', step: 0.1, range: [-2, 2], reference: 0 }],
  },
  rear: { suspension: fiveLink, adjusters: rear, steered: false },
});
const FRONT = { camber: window(-0.5, 0.4), toe: window(0.05, 0.1) };
const READING: Reading = {
  ...{ LF: { camber: 0.4, toe: 0.4 }, RF: { camber: -0.2, toe: -0.3 } },
  ...{ LR: { camber: -1, toe: 1.2 }, RR: { camber: -1.1, toe: -0.4 }, toeReference: 'thrust-line' },
};

describe('what cannot be reached', () => {
  const front = ({ moves }: Plan) =>
    moves.filter(({ corner }) => corner.endsWith('F')).map(({ corner, adjuster, to }) => [corner, adjuster, to]);

  it('an angle that nothing changes leaves the other axle as it is', () => {
    const asked = { car: car([]), reading: READING, settings: {}, style: 'practical' as const };
    const without = planMoves({ ...asked, spec: { front: FRONT } });
    const hopeless = planMoves({ ...asked, spec: { front: FRONT, rear: { toe: window(0.1, 0.1) } } });
    expect(without.inWindow).toBe(true);
    expect(hopeless.inWindow).toBe(false);
    expect(front(hopeless)).toEqual(front(without));
    expect(front(without).length).toBeGreaterThan(2);
    // It is told, with the chance that it has, as what limits the plan.
    expect(hopeless.shortfall.map(({ where, angle }) => `${where} ${angle}`)).toEqual(['LR toe', 'RR toe']);
    expect(hopeless.odds[0]).toMatchObject({ angle: 'toe', chance: 0, fixed: true });
    expect(hopeless.odds).toHaveLength(6);
  });

  it('nor does one that is adjusted and not far enough, where nothing ties the axles', () => {
    const asked = {
      car: car([rod('inner5')]),
      reading: { ...READING, toeReference: 'centreline' as const },
      settings: {},
      style: 'practical' as const,
    };
    const without = planMoves({ ...asked, spec: { front: FRONT } });
    const spec = { front: FRONT, rear: { camber: window(2, 0.2), toe: window(0.1, 0.1) } };
    const hopeless = planMoves({ ...asked, spec });
    expect(hopeless.inWindow).toBe(false);
    expect(front(hopeless)).toEqual(front(without));
  });

  it('the practical meets what can be met beside it, on the same wheel too', () => {
    const toe = window(0.1, 0.1);
    const asked = { car: car([rod('inner5')]), reading: READING, settings: {} };
    const { predicted, odds } = planMoves({
      ...{ ...asked, style: 'practical', spec: { rear: { camber: window(2, 0.2), toe } } },
    });
    const alone = planMoves({ ...asked, style: 'surest', spec: { rear: { toe } } });
    for (const corner of ['LR', 'RR'] as const) {
      expect(Math.abs((predicted[corner]?.toe ?? Number.NaN) - toe.aim!)).toBeLessThan(0.1);
      const chance = ({ odds }: Pick<Plan, 'odds'>) =>
        odds.find(({ where, angle }) => where === corner && angle === 'toe')?.chance ?? Number.NaN;
      expect(chance({ odds })).toBeGreaterThan(chance(alone) - 0.03);
    }
  });
});

describe('odds', () => {
  it('of a window by itself are those of a normal distribution, least first', () => {
    const spec = { rear: { camber: window(-1.05, 0.05), toe: window(0.1, 0.04) } };
    const exact = { ...fiveLink, tolerance: 0 };
    const still: Car = { ...car([]), rear: { suspension: exact, adjusters: [], steered: false } };
    const gauge = { camber: 0.03, caster: 0.08, toe: 0.02 };
    const reading = { LR: { camber: -1.03, toe: 0.12 }, RR: { camber: -1.06, toe: 0.08 } };
    const { odds, chance } = planMoves({ car: still, spec, reading, settings: {}, gauge });
    const below = (z: number): number => (1 + erf(z / Math.SQRT2)) / 2;
    expect(odds).toHaveLength(4);
    for (const { where, angle, chance: told } of odds) {
      const name = angle as 'camber' | 'toe';
      const { low, high } = spec.rear[name];
      const mean = reading[where as 'LR'][name];
      // The gauge reads before and after.
      const sigma = Math.SQRT2 * gauge[name];
      // 2048 draws know a share to a hundredth.
      expect(Math.abs(told - (below((high - mean) / sigma) - below((low - mean) / sigma)))).toBeLessThan(0.035);
    }
    const all = odds.map((one) => one.chance);
    expect(all).toEqual([...all].sort((a, b) => a - b));
    expect(chance).toBeLessThanOrEqual(all[0]!);
  });

  it('name what is at the end of its travel', () => {
    const short: Adjuster = { ...rod('inner5'), range: [-0.25, 0.25] };
    const plan = planMoves({
      ...{
        car: car([short]),
        reading: READING,
        settings: {},
        style: 'practical',
        spec: { rear: { toe: window(0.1, 0.1) } },
      },
    });
    expect(plan.odds[0]?.atStop?.map(({ adjuster }) => adjuster)).toEqual(['rod']);
  });
});

describe('what a careful hand does', () => {
  /** Toe by a rod or by a cam: a cam turned out with a rod to undo it is work for nothing. */
  it('is no move that another undoes', () => {
    const rear = [cam('toe', 'inner5', 3), cam('camber', 'inner1', 6), rod('inner4')];
    const reading = { LR: { camber: -1.6, toe: 0.1 }, RR: { camber: -1, toe: 0.1 } };
    const spec = { rear: { camber: window(-1, 0.4), toe: window(0.1, 0.08) } };
    const plan = planMoves({ car: car(rear), spec, reading, settings: {}, style: 'practical' });
    expect(plan.inWindow).toBe(true);
    expect(plan.moves.every(({ corner }) => corner === 'LR')).toBe(true);
    expect(plan.moves.length).toBeLessThanOrEqual(2);
    expect(plan.moves.some(({ adjuster, to }) => adjuster !== 'rod' && Math.abs(Number(to)) > 70)).toBe(false);
  });
});
