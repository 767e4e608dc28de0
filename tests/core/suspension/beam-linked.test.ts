import { describe, expect, it } from 'vitest';
import type { Axle, Car, Suspension, Vec3 } from '../../../core/contract.ts';
import { adjustersOf, predictReading, solveAxle, solveCorner, validateCar } from '../../../core/index.ts';
import { apart } from '../../tools/pose.ts';
import { between, LAYOUTS, randomSuspension, rod, stream } from '../../tools/random-cars.ts';

const points = LAYOUTS['beam-linked'] as Record<string, Vec3>;
const { rodBody: _, rodAxle: __, ...bare } = points;
const suspension: Suspension = { kind: 'beam-linked', points, camber: -0.5, toe: 0.125 };
const rods = [rod('lower', 'lowerBody', 3), rod('upper', 'upperBody', 3), rod('rod', 'rodBody', 3)];
const axle: Axle = { suspension, adjusters: rods, steered: false };
const independent: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [0, 780, 330] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: true,
};
const carOf = (rear: Axle): Car => ({
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: independent,
  rear,
});

function posed(...given: Parameters<typeof solveAxle>) {
  const pose = solveAxle(...given);
  if (!pose.reachable) throw new Error(pose.message);
  return pose;
}

describe('a rigid axle on links', () => {
  it('stands as it was entered', () => {
    for (const own of [points, bare]) {
      const pose = posed({ ...axle, suspension: { ...suspension, points: own }, adjusters: [] });
      for (const side of [pose.left, pose.right]) {
        expect(side).toMatchObject({ camber: expect.closeTo(-0.5, 10), toe: expect.closeTo(0.125, 10) });
        for (const [name, point] of Object.entries(side.points)) expect(apart(point, own[name])).toBeLessThan(1e-9);
      }
      for (const value of [pose.thrustAngle, pose.pinionAngle, pose.lateral, pose.strain])
        expect(value).toBeCloseTo(0, 9);
    }
  });

  it('shows what it has once with its left side', () => {
    const { left, right } = posed(axle);
    expect(Object.keys(left.points).sort()).toEqual(Object.keys(points).sort());
    expect(Object.keys(right.points).sort()).toEqual(Object.keys(bare).sort());
  });

  it('is one body: the distance between its wheels stays, and so do their heights', () => {
    const { left, right } = posed(axle, { left: { lower: 3, rod: -2 }, right: { upper: -3 } });
    const [x, y, z] = right.wheelCentre as Vec3;
    expect(apart(left.wheelCentre, [x, -y, z])).toBeCloseTo(1560, 9);
    expect([left.wheelCentre?.[2], z]).toEqual([expect.closeTo(330, 5), expect.closeTo(330, 5)]);
  });

  it('without a rod every link keeps its length; with one the strain says how far they are off', () => {
    for (const own of [points, bare]) {
      const given = { ...axle, suspension: { ...suspension, points: own }, adjusters: rods.slice(0, 2) };
      const pose = posed(given, { left: { lower: 2 }, right: { upper: 1 } });
      const off = [pose.left, pose.right].flatMap((side, i) =>
        Object.keys(side.points)
          .filter((name) => name.endsWith('Body'))
          .map((body) => {
            const outer = body.replace('Body', 'Axle');
            const grown = body === 'lowerBody' && i === 0 ? 3 : body === 'upperBody' && i === 1 ? 1.5 : 0;
            return apart(side.points[body], side.points[outer]) - apart(own[body], own[outer]) - grown;
          }),
      );
      expect(Math.max(...off.map(Math.abs))).toBeCloseTo(pose.strain, 7);
      if (own === bare) expect(pose.strain).toBeLessThan(1e-8);
      else expect(pose.strain).toBeGreaterThan(0.1);
    }
  });

  it('is mirrored: exchanging the sides, the rod turned round, exchanges the wheels', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = stream(seed * 17);
      const own = randomSuspension(random, 'beam-linked');
      const other = randomSuspension(random, 'beam-linked');
      const { rodBody, rodAxle } = own.points;
      const plain = (one: Suspension): Record<string, Vec3> =>
        Object.fromEntries(Object.entries(one.points).filter(([name]) => !name.startsWith('rod')));
      const turned: Record<string, Vec3> =
        rodBody && rodAxle
          ? { rodBody: [rodBody[0], -rodBody[1], rodBody[2]], rodAxle: [rodAxle[0], -rodAxle[1], rodAxle[2]] }
          : {};
      const adjusters = rodBody ? rods : rods.slice(0, 2);
      const at = () => ({ lower: between(random, -3, 3), upper: between(random, -2, 2) });
      const [l, r] = [at(), at()];
      const once: Record<string, number> = rodBody ? { rod: between(random, -3, 3) } : {};
      const here = solveAxle(
        { suspension: own, rightSuspension: { ...other, points: plain(other) }, adjusters, steered: false },
        { left: { ...l, ...once }, right: r },
      );
      const there = solveAxle(
        {
          suspension: { ...other, points: { ...plain(other), ...turned } },
          rightSuspension: { ...own, points: plain(own) },
          adjusters,
          steered: false,
        },
        { left: { ...r, ...once }, right: l },
      );
      if (!here.reachable || !there.reachable) throw new Error(`seed ${seed}: no pose`);
      for (const angle of ['camber', 'toe'] as const) {
        expect(there.left[angle]).toBeCloseTo(here.right[angle], 8);
        expect(there.right[angle]).toBeCloseTo(here.left[angle], 8);
      }
      expect(there.thrustAngle).toBeCloseTo(-here.thrustAngle, 8);
      expect(there.pinionAngle).toBeCloseTo(here.pinionAngle, 8);
      expect(there.lateral).toBeCloseTo(-here.lateral, 7);
      expect(there.strain).toBeCloseTo(here.strain, 7);
    }
  });

  it('moves both wheels in a predicted reading, whichever side was turned', () => {
    const wheel = { camber: -0.3, toe: 0.1 };
    const after = predictReading(carOf(axle), { LR: wheel, RR: wheel }, {}, { RR: { lower: 2 } });
    const pose = posed(axle, { right: { lower: 2 } });
    expect(after.LR?.toe).toBeCloseTo(0.1 + pose.left.toe - 0.125, 10);
    expect(after.RR?.toe).toBeCloseTo(0.1 + pose.right.toe - 0.125, 10);
    expect(Math.abs((after.LR?.toe ?? 0) - 0.1)).toBeGreaterThan(0.02);
    // What is read on the left alone moves as well.
    expect(predictReading(carOf(axle), { LR: wheel }, {}, { RR: { lower: 2 } }).LR).toEqual(after.LR);
    const lined = { LF: wheel, RF: wheel, LR: wheel, RR: wheel, toeReference: 'thrust-line' as const };
    const front = predictReading(carOf(axle), lined, {}, { RR: { lower: 2 } });
    expect(front.LF?.toe).toBeCloseTo(0.1 - pose.thrustAngle, 10);
  });

  it('torn apart it is no pose, and says so', () => {
    const long = [{ ...rod('upper', 'upperBody', 30), lead: 3 }];
    const pose = solveAxle({ ...axle, adjusters: long }, { left: { upper: 30 }, right: { upper: -30 } });
    expect(pose).toMatchObject({ reachable: false, verdict: { converged: false, reason: 'cannot-reach' } });
  });
});

describe('what is refused', () => {
  const level = (name: string): Vec3 => [points[name]?.[0] ?? 0, 440, points[name]?.[2] ?? 0];
  const parallel = Object.fromEntries(
    Object.keys(bare).map((name) => [name, name === 'wheelCentre' ? points[name] : level(name)]),
  ) as Record<string, Vec3>;

  it('four parallel links without a rod: the axle is free to go sideways', () => {
    const loose = { ...suspension, points: parallel };
    expect(() => solveCorner(loose, [], {})).toThrow('points whose links hold the wheel: these leave it free to move');
    const held = {
      ...loose,
      points: { ...parallel, rodBody: points.rodBody, rodAxle: points.rodAxle } as Record<string, Vec3>,
    };
    expect(solveCorner(held, [], {}).reachable).toBe(true);
  });

  it('half a rod', () => {
    const half = { ...suspension, points: { ...bare, rodBody: points.rodBody as Vec3 } };
    expect(() => solveCorner(half, [], {})).toThrow(
      'suspension.points.rodAxle: nothing is not allowed; allowed: three numbers, [x, y, z], mm',
    );
  });

  it('an adjuster of a rod that is not there', () => {
    expect(() => solveCorner({ ...suspension, points: bare }, [rods[2]!], {})).toThrow(
      'adjusters[0].links[0]: "rodBody" is not allowed; allowed: one of lowerBody, upperBody',
    );
  });

  it('the rod on the right: neither its points nor a position of what adjusts it', () => {
    const twice = { ...axle, rightSuspension: suspension };
    expect(() => solveAxle(twice)).toThrow('axle.rightSuspension.points.rodBody');
    expect(() => solveAxle(twice)).toThrow('nothing: it is given with the left');
    expect(() => solveAxle(axle, { right: { rod: 1 } })).toThrow('settings.right.rod: 1 is not allowed');
    const car = validateCar(carOf(axle));
    expect(adjustersOf(car, 'LR').map(({ id }) => id)).toEqual(['lower', 'upper', 'rod']);
    expect(adjustersOf(car, 'RR').map(({ id }) => id)).toEqual(['lower', 'upper']);
  });

  it('another kind on the right, and an axle whose wheels are not joined', () => {
    const other = { ...axle, rightSuspension: independent.suspension };
    expect(() => validateCar(carOf(other))).toThrow(
      'car.rear.rightSuspension.kind: "beam-rear" is not allowed; allowed: beam-linked, as on the left',
    );
    const turned = { ...independent, rightSuspension: { ...suspension, points: bare } };
    expect(() => validateCar(carOf(turned))).toThrow('car.rear.rightSuspension.kind');
    expect(() => solveAxle(independent)).toThrow(
      'axle.suspension.kind: "beam-rear" is not allowed; allowed: beam-linked',
    );
  });
});
