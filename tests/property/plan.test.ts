/** The planner against every combination, tried one by one with nothing but `predictReading`'s model and the formula. */
import { describe, expect, it } from 'vitest';
import {
  type AxleSpec,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
  type Position,
  type Reading,
  type Settings,
  type Spec,
  type Window,
} from '../../core/contract.ts';
import { adjusterKinds, adjusterPositions, planMoves, predictReading } from '../../core/index.ts';
import { between, type Random, randomCar, stream } from '../tools/random-cars.ts';

type Pair = readonly [Corner, Corner];
const PAIRS = { front: ['LF', 'RF'], rear: ['LR', 'RR'] } as const satisfies Record<string, Pair>;

const window = (random: Random, aim: number, half: number): Window => {
  const width = half * between(random, 0.6, 1.4);
  return { low: aim - width, aim: aim + between(random, -0.3, 0.3) * width, high: aim + width };
};

function randomSpec(random: Random, caster: boolean): AxleSpec {
  const maybe = <T>(value: T): T | undefined => (random() < 0.6 ? value : undefined);
  const spec = {
    camber: window(random, -0.5, 0.6),
    caster: caster ? maybe(window(random, 3, 0.7)) : undefined,
    toe: maybe(window(random, 0.05, 0.3)),
    totalToe: maybe(window(random, 0.1, 0.4)),
    crossCamber: maybe(window(random, 0, 0.5)),
    crossCaster: caster ? maybe(window(random, 0, 0.6)) : undefined,
    thrustAngle: maybe(window(random, 0, 0.2)),
    left: maybe({ camber: window(random, -0.4, 0.6) }),
  };
  return Object.fromEntries(Object.entries(spec).filter(([, value]) => value !== undefined));
}

const randomReading = (random: Random, spread: number): Reading =>
  Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      {
        camber: -0.5 + between(random, -spread, spread),
        ...(corner.endsWith('F') ? { caster: 3 + between(random, -spread, spread) } : {}),
        toe: between(random, -spread, spread) / 2,
      },
    ]),
  );

/** Written from the contract, not from the planner. */
function values(spec: Spec, reading: Reading): { value: number; window: Window }[] {
  const all: { value: number; window: Window }[] = [];
  const add = (value: number | undefined, given: Window | undefined): void => {
    if (given && value !== undefined) all.push({ value, window: given });
  };
  for (const axle of ['front', 'rear'] as const) {
    const own = spec[axle];
    if (!own) continue;
    const [left, right] = PAIRS[axle].map((corner) => reading[corner]);
    for (const angle of ['camber', 'caster', 'toe'] as const) {
      add(left?.[angle], own.left?.[angle] ?? own[angle]);
      add(right?.[angle], own.right?.[angle] ?? own[angle]);
    }
    const both = (angle: 'camber' | 'caster' | 'toe', of: (l: number, r: number) => number): number | undefined =>
      left?.[angle] === undefined || right?.[angle] === undefined ? undefined : of(left[angle], right[angle]);
    add(
      both('toe', (l, r) => l + r),
      own.totalToe,
    );
    add(
      both('camber', (l, r) => l - r),
      own.crossCamber,
    );
    add(
      both('caster', (l, r) => l - r),
      own.crossCaster,
    );
    add(
      both('toe', (l, r) => (l - r) / 2),
      own.thrustAngle,
    );
  }
  return all;
}

function score(spec: Spec, reading: Reading): { inWindow: boolean; distance: number } {
  let inWindow = true;
  let distance = 0;
  for (const { value, window: w } of values(spec, reading)) {
    if (value < w.low - 1e-9 || value > w.high + 1e-9) inWindow = false;
    distance += ((value - (w.aim ?? (w.low + w.high) / 2)) / ((w.high - w.low) / 2)) ** 2;
  }
  return { inWindow, distance };
}

function combinations(car: Car, corner: Corner, fixed: readonly string[] = []): Settings[] {
  const axle = corner.endsWith('F') ? car.front : car.rear;
  let all: Settings[] = [{}];
  for (const adjuster of axle.adjusters) {
    const positions = fixed.includes(adjuster.id) ? [adjuster.reference] : adjusterPositions(adjuster);
    all = all.flatMap((settings) => positions.map((position) => ({ ...settings, [adjuster.id]: position })));
  }
  return all;
}

/** Predicted angles of one corner at each combination: corners move one another's readings only along the thrust line. */
function readings(car: Car, reading: Reading, corner: Corner, list: readonly Settings[]): Reading[] {
  return list.map((settings) => predictReading(car, { [corner]: reading[corner] }, {}, { [corner]: settings }));
}

const minutes = (car: Car, corner: Corner, settings: Settings): number =>
  (corner.endsWith('F') ? car.front : car.rear).adjusters.reduce(
    (sum, one) =>
      sum + (settings[one.id] === one.reference ? 0 : (one.effort ?? adjusterKinds[one.kind]?.effort ?? Number.NaN)),
    0,
  );

/** The best of every pair of combinations of an axle. */
function bruteForce(request: PlanRequest, axle: 'front' | 'rear') {
  const { car, reading } = request;
  const spec: Spec = { [axle]: request.spec[axle] };
  const [left, right] = PAIRS[axle];
  const lists = [left, right].map((corner) => combinations(car, corner));
  const angles = lists.map((list, i) => readings(car, reading, (PAIRS[axle] as Pair)[i] as Corner, list));
  let best = { inWindow: false, distance: Number.POSITIVE_INFINITY, effort: Number.POSITIVE_INFINITY };
  lists[0]?.forEach((l, i) => {
    lists[1]?.forEach((r, j) => {
      const effort = minutes(car, left, l) + minutes(car, right, r);
      const found = { ...score(spec, { ...angles[0]?.[i], ...angles[1]?.[j] }), effort };
      if (better(found, best, request.style ?? 'closest')) best = found;
    });
  });
  return best;
}

type Score = { inWindow: boolean; distance: number; effort: number };
function better(a: Score, b: Score, style: 'closest' | 'least-work'): boolean {
  if (a.inWindow !== b.inWindow) return a.inWindow;
  if (a.inWindow && style === 'least-work' && Math.abs(a.effort - b.effort) > 1e-6) return a.effort < b.effort;
  return a.distance < b.distance - 1e-9;
}

function request(seed: number, style: 'closest' | 'least-work', axle: 'front' | 'rear'): PlanRequest {
  const random = stream(seed);
  const car = randomCar(random, 1 / 3);
  const reading = randomReading(random, seed % 3 === 0 ? 1.5 : 0.6);
  return { car, spec: { [axle]: randomSpec(random, axle === 'front') }, reading, settings: {}, style };
}

const SEEDS = Array.from({ length: 100 }, (_, i) => i + 1);
let reachable = 0;

describe('every plan', () => {
  describe.each(['closest', 'least-work'] as const)('%s', (style) => {
    it.each(SEEDS)('seed %i: no combination of both sides is better', (seed) => {
      const axle = seed % 2 ? 'front' : 'rear';
      const asked = request(seed, style, axle);
      const plan = planMoves(asked);
      const best = bruteForce(asked, axle);
      expect(plan.inWindow).toBe(best.inWindow);
      if (best.inWindow) reachable++;
      const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
      expect(better(best, own, best.inWindow ? style : 'closest'), JSON.stringify({ best, own })).toBe(false);
      expect(Math.abs(plan.distance - score(asked.spec, plan.predicted).distance)).toBeLessThan(1e-6);
    });
  });

  it('the cases above hold both kinds: windows that can be reached and windows that cannot', () => {
    expect(reachable).toBeGreaterThan(20);
    expect(reachable).toBeLessThan(180);
  });

  it.each(SEEDS.slice(0, 40))(
    'seed %i: predicted is what predictReading says of its positions, which exist',
    (seed) => {
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
    },
  );

  it.each(SEEDS.slice(0, 20))(
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

  it('leaves locked adjusters alone, and still finds the best of the rest', () => {
    for (const seed of SEEDS.slice(0, 15)) {
      const asked = request(seed, 'closest', 'front');
      const locked = [{ corner: 'LF', adjuster: 'first' }] as const;
      const plan = planMoves({ ...asked, locked });
      const reference = asked.car.front.adjusters[0]?.reference;
      expect(plan.positions.LF.first).toBe(reference);
      const lists = [combinations(asked.car, 'LF', ['first']), combinations(asked.car, 'RF')];
      const angles = lists.map((list, i) => readings(asked.car, asked.reading, i ? 'RF' : 'LF', list));
      let best: Score = { inWindow: false, distance: Number.POSITIVE_INFINITY, effort: 0 };
      for (const l of angles[0] ?? []) {
        for (const r of angles[1] ?? []) {
          const found = { ...score(asked.spec, { ...l, ...r }), effort: 0 };
          if (better(found, best, 'closest')) best = found;
        }
      }
      expect(plan.inWindow).toBe(best.inWindow);
      expect(plan.distance).toBeLessThan(best.distance + 1e-6);
    }
  });

  it('keeps an adjuster that stands between marks where it is, or puts it on a mark', () => {
    const asked = request(1, 'closest', 'front');
    const plan = planMoves({ ...asked, settings: { LF: { rod: 0.07 } } });
    const rod = asked.car.front.adjusters.find((one) => one.id === 'rod');
    expect([...adjusterPositions(rod as never), 0.07]).toContain(plan.positions.LF.rod);
  });
});
