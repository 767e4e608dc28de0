/** Plans of a car whose rear axle is one body on links: what one side is given moves both wheels. */
import { describe, expect, it } from 'vitest';
import {
  type Adjuster,
  type Axle,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type PlanRequest,
  type Position,
  type Reading,
  type Settings,
  type Suspension,
  type Vec3,
} from '../../core/contract.ts';
import { planMoves, predictReading } from '../../core/index.ts';
import {
  adjustersAt,
  better,
  bruteForce,
  combinations,
  randomReading,
  randomSpec,
  type Score,
  score,
  sidesHold,
} from '../tools/brute-force.ts';
import { between, oneOf, type Random, randomAxle, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

/** Two rods a side of five positions each, some of which may not differ much from side to side; the lateral rod too. */
function axleOf(random: Random): Axle {
  const suspension = randomSuspension(random, 'beam-linked');
  const limit = random() < 0.3 ? { maxSideDifference: between(random, 0.5, 2.5) } : {};
  const adjusters: Adjuster[] = [
    { ...rod('lower', 'lowerBody', 1, 0.5), ...limit },
    { ...rod('upper', 'upperBody', 1, 0.5), lead: 2 },
  ];
  if (suspension.points.rodBody) adjusters.push(rod('rod', 'rodBody', 0.5, 0.5));
  return { suspension, adjusters, steered: false };
}

const carOf = (random: Random, turns = 1 / 3): Car => ({
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: randomAxle(random, 'double-wishbone', true, turns),
  rear: axleOf(random),
});

const SEEDS = shortOrLong([1, 3, 4, 6, 7, 11, 16, 20, 24], upTo(24));

function rearRequest(seed: number): PlanRequest {
  const random = stream(seed * 77);
  return {
    car: carOf(random),
    spec: { rear: randomSpec(random, false) },
    reading: randomReading(random, seed % 3 ? 0.35 : 0.8),
    settings: {},
    style: seed % 2 ? 'closest' : 'least-work',
    locked: seed % 4 ? [] : [{ corner: oneOf(random, ['LR', 'RR'] as const), adjuster: 'upper' }],
  };
}

describe('the best of every combination of both sides', () => {
  it.each(SEEDS)('seed %i: none is better', (seed) => {
    const asked = rearRequest(seed);
    const plan = planMoves(asked);
    const best = bruteForce(asked, 'rear');
    expect(plan.inWindow).toBe(best.inWindow);
    const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: plan.effort };
    expect(
      better(best, own, best.inWindow ? (asked.style ?? 'closest') : 'closest'),
      JSON.stringify({ best, own }),
    ).toBe(false);
    expect(plan.distance).toBeCloseTo(score(asked.spec, plan.predicted).distance, 6);
    expect(plan.predicted).toEqual(predictReading(asked.car, asked.reading, {}, plan.positions));
    expect(Object.keys(plan.positions.RR)).not.toContain('rod');
    expect(sidesHold(adjustersAt(asked.car, 'RR'), plan.positions.LR, plan.positions.RR)).toBe(true);
    // The rack shows both rear wheels move on the way, whichever side is worked on.
    let now: CarSettings = Object.fromEntries(
      CORNERS.map((corner) => [
        corner,
        Object.fromEntries(adjustersAt(asked.car, corner).map(({ id, reference }) => [id, reference])),
      ]),
    );
    for (const move of plan.moves) {
      now = { ...now, [move.corner]: { ...now[move.corner], [move.adjuster]: move.to } };
      expect(move.expectAfter).toEqual(predictReading(asked.car, asked.reading, {}, now));
    }
    expect(now).toEqual(plan.positions);
    expect(JSON.stringify(plan)).not.toMatch(/null|NaN/);
  });

  it('some windows could be reached and some could not', () => {
    const reached = SEEDS.filter((seed) => planMoves(rearRequest(seed)).inWindow).length;
    expect(reached).toBeGreaterThan(SEEDS.length / 6);
    expect(reached).toBeLessThan(SEEDS.length - 2);
  });
});

describe('against the thrust line, front and rear together', () => {
  it.each(shortOrLong([1, 3, 4, 7, 8, 12], upTo(12)))(
    'seed %i: no random combination of the whole car is better',
    (seed) => {
      const random = stream(seed * 1009);
      const car = carOf(random);
      const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
      const reading: Reading = { ...randomReading(random, 0.4), toeReference: 'thrust-line' };
      const plan = planMoves({ car, spec, reading, settings: {} });
      const lists = Object.fromEntries(CORNERS.map((corner) => [corner, combinations(car, corner)]));
      const own: Score = { inWindow: plan.inWindow, distance: plan.distance, effort: 0 };
      let tried = 0;
      for (let i = 0; i < 400; i++) {
        const settings = Object.fromEntries(
          CORNERS.map((corner) => [
            corner,
            random() < 0.6 ? plan.positions[corner] : oneOf(random, lists[corner] as Settings[]),
          ]),
        );
        if (!sidesHold(adjustersAt(car, 'RR'), settings.LR as Settings, settings.RR as Settings)) continue;
        tried++;
        const found = { ...score(spec, predictReading(car, reading, {}, settings)), effort: 0 };
        expect(better(found, own, 'closest')).toBe(false);
      }
      expect(tried).toBeGreaterThan(100);
    },
  );
});

describe('how sure it is', () => {
  /** ± turns at 95 %. */
  const tolerance = 0.2;
  const random = stream(5);
  const suspension: Suspension = { ...randomSuspension(random, 'beam-linked'), tolerance: 4 };
  const car: Car = {
    ...carOf(random),
    rear: {
      suspension,
      rightSuspension: withoutRod(suspension),
      adjusters: [rod('lower', 'lowerBody', 3), rod('upper', 'upperBody', 3)].map((one) => ({ ...one, tolerance })),
      steered: false,
    },
  };
  const gauge = { camber: 0.02, caster: 0.05, toe: 0.01 };
  const reading: Reading = { LR: { camber: -0.5, toe: 0.35 }, RR: { camber: -0.4, toe: -0.15 } };
  const spec = {
    rear: { toe: { low: 0.08, high: 0.12 }, thrustAngle: { low: -0.013, high: 0.013 }, camber: { low: -1, high: 0 } },
  };
  const plan = planMoves({ car, spec, reading, settings: {}, gauge });

  /** The predicted reading where the points are these and the rods were left at these. */
  const where = (left: Suspension, right: Suspension, at: CarSettings = plan.positions): Reading =>
    predictReading({ ...car, rear: { ...car.rear, suspension: left, rightSuspension: right } }, reading, {}, at);
  /** The plan's positions with what was moved left `by` turns off. */
  const left = (by: () => number): CarSettings => {
    const at = structuredClone(plan.positions) as Record<Corner, Record<string, Position>>;
    for (const { corner, adjuster, to } of plan.moves) at[corner][adjuster] = Number(to) + by();
    return at;
  };
  const moved = (given: Suspension, name: string, by: Vec3): Suspension => {
    const [x, y, z] = given.points[name] as Vec3;
    return { ...given, points: { ...given.points, [name]: [x + by[0], y + by[1], z + by[2]] } };
  };

  it('the deviation is the gauge’s, every coordinate’s and every move’s, of both sides', () => {
    expect(plan.moves.length).toBeGreaterThan(1);
    const sides = [car.rear.suspension, car.rear.rightSuspension as Suspension] as const;
    let variance = 2 * gauge.toe ** 2;
    const h = 0.25;
    for (const [side, given] of sides.entries()) {
      for (const name of Object.keys(given.points)) {
        for (const by of [
          [h, 0, 0],
          [0, h, 0],
          [0, 0, h],
        ] as const) {
          const off = moved(given, name, by);
          const toe = (side === 0 ? where(off, sides[1]) : where(sides[0], off)).LR?.toe ?? NaN;
          variance += (4 ** 2 / 3) * ((toe - (plan.predicted.LR?.toe ?? NaN)) / h) ** 2;
        }
      }
    }
    for (const { corner, adjuster, to } of plan.moves) {
      const at = {
        ...plan.positions,
        [corner]: { ...plan.positions[corner], [adjuster]: Number(to) + tolerance / 2 },
      };
      const toe = where(car.rear.suspension, car.rear.rightSuspension as Suspension, at).LR?.toe ?? NaN;
      variance += (toe - (plan.predicted.LR?.toe ?? NaN)) ** 2;
    }
    expect(plan.deviation.LR?.toe).toBeCloseTo(Math.sqrt(variance), 5);
  });

  it('the chance is the share of cars, each built a little otherwise, that come out in the window', () => {
    const next = stream(77);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const built = (given: Suspension): Suspension =>
      Object.keys(given.points).reduce((one, name) => {
        const by = [0, 1, 2].map(() => between(next, -4, 4)) as unknown as Vec3;
        return moved(one, name, by);
      }, given);
    const draws = 1500;
    let hits = 0;
    for (let i = 0; i < draws; i++) {
      const off = left(() => (tolerance / 2) * normal());
      const after = where(built(car.rear.suspension), built(car.rear.rightSuspension as Suspension), off);
      const read = Object.fromEntries(
        (['LR', 'RR'] as const).map((corner) => [
          corner,
          {
            camber: (after[corner]?.camber ?? NaN) + Math.SQRT2 * gauge.camber * normal(),
            toe: (after[corner]?.toe ?? NaN) + Math.SQRT2 * gauge.toe * normal(),
          },
        ]),
      );
      if (score(spec, read).inWindow) hits++;
    }
    expect(plan.inWindow).toBe(true);
    expect(plan.chance).toBeGreaterThan(0.3);
    expect(plan.chance).toBeLessThan(0.98);
    expect(Math.abs(plan.chance - hits / draws)).toBeLessThan(0.05);
  });
});

function withoutRod(given: Suspension): Suspension {
  const points = Object.fromEntries(Object.entries(given.points).filter(([name]) => !name.startsWith('rod')));
  return { ...given, points };
}

describe('too many combinations to go through', () => {
  const random = stream(3);
  const fine = (id: string, link: string) => rod(id, link, 4, 1 / 12);
  const rear: Axle = {
    suspension: randomSuspension(random, 'beam-linked'),
    adjusters: [fine('lower', 'lowerBody'), fine('upper', 'upperBody')],
    steered: false,
  };
  const asked: PlanRequest = {
    car: { ...carOf(random), rear },
    spec: { rear: { thrustAngle: { low: -0.05, high: 0.05 }, toe: { low: 0, high: 0.2 } } },
    reading: { LR: { camber: -0.5, toe: 0.4 }, RR: { camber: -0.5, toe: -0.2 } },
    settings: {},
  };

  it('are planned all the same, and how many there are is told', () => {
    const plan = planMoves(asked);
    expect(plan.inWindow).toBe(true);
    expect(plan.optimum.combinations).toBe(97 ** 4);
    expect(plan.distance).toBeLessThan(1e-3);
  });

  it('locked adjusters make them fewer', () => {
    const locked = [
      { corner: 'LR', adjuster: 'upper' },
      { corner: 'RR', adjuster: 'upper' },
    ] as const;
    const plan = planMoves({ ...asked, locked });
    expect(plan.inWindow).toBe(true);
    expect(plan.optimum).toEqual({ proven: true, combinations: 97 ** 2 });
    expect(plan.moves.every(({ adjuster }) => adjuster === 'lower')).toBe(true);
  });

  it('one link alone in four that agree is told of: the bushes take it up', () => {
    const suspension: Suspension = {
      kind: 'beam-linked',
      camber: 0,
      toe: 0,
      points: {
        lowerBody: [-2050, 440, 230],
        lowerAxle: [-2600, 440, 230],
        upperBody: [-2100, 440, 430],
        upperAxle: [-2600, 440, 430],
        rodBody: [-2600, -430, 330],
        rodAxle: [-2600, 450, 330],
        wheelCentre: [-2600, 780, 330],
      },
    };
    const car = { ...asked.car, rear: { ...rear, suspension } };
    const locked = [
      { corner: 'LR', adjuster: 'upper' },
      { corner: 'RR', adjuster: 'upper' },
      { corner: 'RR', adjuster: 'lower' },
    ] as const;
    const { moves, notes } = planMoves({ ...asked, car, locked });
    expect(moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`)).toEqual(['LR lower']);
    expect(notes).toEqual([
      expect.stringMatching(
        /^LR and RR: the links no longer agree; their bushes take up 1\.\d mm \(before: 0\.0 mm\)\.$/,
      ),
    ]);
  });
});
