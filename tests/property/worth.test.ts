/**
 * What a measured length takes away of what is not known, and what it would be worth. Against: the information form of the
 * same posterior by a general-purpose library (mathjs); cars drawn at random of which those are kept whose length came out
 * as measured, solved in full; and against really measuring it.
 */
import { inv, type Matrix, matrix, multiply, transpose } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { covarianceAfter, sightedOf } from '../../core/adjuster/measured.ts';
import { sidesOf } from '../../core/adjuster/of-corner.ts';
import { unknownsOf } from '../../core/adjuster/unknowns.ts';
import type { Adjuster, Axle, Car, CarFile, Reading, Spec, Suspension, Vec3 } from '../../core/contract.ts';
import { dimensionWorth, learn, planOfFile, predictReading, validateCar, validateCarFile } from '../../core/index.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { lengthIn, lengthsOf } from '../../core/suspension/tape/measure.ts';
import { stream } from '../tools/random-cars.ts';

const pack = (id: string, at: string): Adjuster => ({
  ...{ id, kind: 'shim-pack', at, direction: [0, 1, 0] },
  ...{ sizes: [0.5, 1, 2], max: 14, reference: 7 },
});
const cam = (id: string, at: string): Adjuster => ({
  ...{
    id,
    kind: 'eccentric-cam',
    at,
    direction: [0, 1, 0],
    eccentricity: 6,
    marks: 24,
    range: [-90, 90],
    reference: 0,
  },
});
const rod = (link: string): Adjuster => ({
  ...{ id: 'rod', kind: 'threaded-rod', links: [link], lead: 1.5, stepTurns: 1 / 12, range: [-8, 8], reference: 0 },
});
const wishbone: Axle = {
  suspension: suspensionFromStarter(startersFor('double-wishbone', 'front')[0]!, 'front'),
  adjusters: [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('tieInner')],
  steered: true,
};
const links: Axle = {
  suspension: suspensionFromStarter(startersFor('five-link', 'rear')[0]!, 'rear'),
  adjusters: [cam('lean', 'inner4'), cam('turn', 'inner5')],
  steered: false,
};
const car: Car = { id: 'c', label: 'c', wheel: {}, front: wishbone, rear: links };
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const spec: Spec = {
  front: { camber: window(-0.5, 0.25), caster: window(4.5, 0.4), toe: window(0.08, 0.08) },
  rear: { camber: window(-1, 0.25), toe: window(0.15, 0.08) },
};
const reading: Reading = {
  LF: { camber: -1.2, caster: 3.6, toe: 0.4 },
  RF: { camber: 0.1, caster: 5.2, toe: -0.2 },
  LR: { camber: -1.7, toe: 0.45 },
  RR: { camber: -0.5, toe: -0.1 },
};
const fileOf = (own: Car, windows = spec): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car: own, spec: windows },
  visits: [{ id: 'v', carId: own.id, opened: '2026-01-01T00:00:00Z', rounds: [{ reading, settings: {} }] }],
});
const own = (suspension: Suspension, name: string): number =>
  lengthIn(lengthsOf(suspension.kind).find((one) => one.name === name)!, suspension.points);
const measuredOn = (end: 'front' | 'rear', ...names: string[]): Car => {
  const { suspension } = car[end];
  const measured = Object.fromEntries(names.map((name) => [name, own(suspension, name)]));
  return { ...car, [end]: { ...car[end], suspension: { ...suspension, measured } } };
};

describe('what lengths leave unknown', () => {
  const names = [
    'upperFrontLength',
    'upperPivotSpacing',
    'lowerRearLength',
    'ballSpacing',
    'lowerBallInset',
    'tieInnerHeight',
  ];
  const sides = sidesOf(measuredOn('front', ...names).front).slice(0, 1);
  const unknowns = unknownsOf(sides);
  const lengths = sightedOf(sides, unknowns);

  it('is the inverse of what is known before and what each length tells', () => {
    expect(lengths).toHaveLength(names.length);
    const size = unknowns.length;
    // Information adds up: P⁻¹ = 1 + Σ g·gᵀ/r. Source: any text on estimation; from memory.
    let information: Matrix = matrix(
      Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_, j) => (i === j ? 1 : 0))),
    );
    for (const { gradient, variance } of lengths) {
      const g = matrix([[...gradient]]);
      const told = multiply(transpose(g), g) as Matrix;
      information = information.map((x, [i, j]: number[]) => x + told.get([i!, j!]) / variance) as Matrix;
    }
    const expected = inv(information).toArray() as number[][];
    const found = covarianceAfter(size, lengths);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) expect(found[i * size + j]).toBeCloseTo(expected[i]![j]!, 9);
    }
  });

  it('is never more than before, in no direction, and does not hang on their order', () => {
    const found = covarianceAfter(unknowns.length, lengths);
    const other = covarianceAfter(unknowns.length, [...lengths].reverse());
    const next = stream(7);
    for (let n = 0; n < 50; n++) {
      const way = unknowns.map(() => next() - 0.5);
      const spread = (square: Float64Array) =>
        way.reduce((sum, x, i) => sum + way.reduce((row, y, j) => row + x * y * square[i * way.length + j]!, 0), 0);
      const before = way.reduce((sum, x) => sum + x * x, 0);
      expect(spread(found)).toBeGreaterThan(0);
      expect(spread(found)).toBeLessThanOrEqual(before + 1e-12);
      expect(spread(other)).toBeCloseTo(spread(found), 10);
    }
  });
});

const normal = (next: () => number): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

it('of cars drawn at random those whose arm is as long as measured part as the plan says', () => {
  const given = measuredOn('front', 'upperFrontLength', 'upperRearLength');
  const { positions, deviation } = planOfFile(fileOf(given), { style: 'practical' });
  const { suspension } = given.front;
  const sigma = 30 / Math.sqrt(3);
  const tape = 5 / Math.sqrt(3);
  const next = stream(20261127);
  const apart = (p: Suspension['points'], a: string, b: string) =>
    Math.hypot(...[0, 1, 2].map((k) => p[a]![k]! - p[b]![k]!));
  const gains: { gain: number; weight: number }[] = [];
  for (let n = 0; n < 6000; n++) {
    const points = Object.fromEntries(
      Object.entries(suspension.points).map(([name, p]) => [
        name,
        p.map((x) => x + sigma * normal(next)) as unknown as Vec3,
      ]),
    );
    const off = (['Front', 'Rear'] as const).map(
      (end) => apart(points, `upper${end}`, 'upperBall') - apart(suspension.points, `upper${end}`, 'upperBall'),
    );
    const weight = Math.exp(-off.reduce((sum, x) => sum + x * x, 0) / (2 * tape * tape));
    if (weight < 1e-4) continue;
    const { measured: _, ...bare } = suspension;
    const drawn: Car = { ...given, front: { ...given.front, suspension: { ...bare, points } } };
    const after = predictReading(drawn, reading, {}, positions);
    if (after.LF?.camber !== undefined) gains.push({ gain: after.LF.camber - reading.LF!.camber!, weight });
  }
  const all = gains.reduce((sum, { weight }) => sum + weight, 0);
  const mean = gains.reduce((sum, { gain, weight }) => sum + (gain * weight) / all, 0);
  const variance = gains.reduce((sum, { gain, weight }) => sum + ((gain - mean) ** 2 * weight) / all, 0);
  // The gauge reads twice; a pack is made to 0.1 mm, the rod to 0.05 turns: what the plan counts beside the points.
  const exact = planOfFile(
    fileOf({ ...given, front: { ...given.front, suspension: { ...suspension, tolerance: 0 } } }),
    { style: 'practical' },
  );
  const points = Math.sqrt(deviation.LF!.camber! ** 2 - exact.deviation.LF!.camber! ** 2);
  expect(gains.length).toBeGreaterThan(300);
  expect(points / Math.sqrt(variance)).toBeGreaterThan(0.8);
  expect(points / Math.sqrt(variance)).toBeLessThan(1.2);
});

describe('what a length would be worth', () => {
  const file = fileOf(car);
  const asked = { live: ['camber', 'toe'] as const };
  const worth = dimensionWorth(file);
  const alone = (end: 'front' | 'rear', options = {}) =>
    planOfFile(fileOf(car, { [end]: spec[end]! }), { style: 'practical', ...options });

  it.each(['front', 'rear'] as const)('begins from the chance that the plan states of the %s axle', (end) => {
    const own = dimensionWorth(fileOf(car, { [end]: spec[end]! }));
    expect(own[end]!.now).toBeCloseTo(alone(end).chance, 9);
    const live = dimensionWorth(fileOf(car, { [end]: spec[end]! }), asked);
    expect(live[end]!.now).toBeCloseTo(alone(end, asked).chance, 9);
    expect(live[end]!.now).toBeGreaterThan(own[end]!.now);
    expect(Object.keys(own)).toEqual([end]);
  });

  it.each([
    ['front', 0],
    ['front', 4],
    ['front', 12],
    ['rear', 0],
    ['rear', 5],
  ] as const)('is the chance of the car of which it really was measured: %s, %d', (end, place) => {
    const own = dimensionWorth(fileOf(car, { [end]: spec[end]! }))[end]!;
    const { name, chance } = own.lengths[place]!;
    const measured = fileOf(measuredOn(end, name), { [end]: spec[end]! });
    const made = planOfFile(measured, { style: 'practical' });
    // Its plan is the same, or another that is surer still or as sure for less work.
    const same = JSON.stringify(made.positions) === JSON.stringify(alone(end).positions);
    expect(Math.abs(made.chance - chance), name).toBeLessThan(same ? 1e-6 : 0.03);
    expect(dimensionWorth(measured)[end]!.lengths.map((one) => one.name)).not.toContain(name);
  });

  it('goes from what helps most to what does not help at all, and harms nowhere', () => {
    for (const { now, lengths, all } of [worth.front!, worth.rear!]) {
      expect(all).toBeGreaterThan(lengths[0]!.chance);
      const chances = lengths.map(({ chance }) => chance);
      expect(chances).toEqual([...chances].sort((a, b) => b - a));
      // How high the rod's ends are beside the ball joint is what its toe goes by.
      expect(chances[0]! - now).toBeGreaterThan(0.04);
      for (const { name, chance } of lengths) {
        expect(chance, name).toBeGreaterThanOrEqual(now - 0.005);
        // A car that stands elsewhere as a whole is set just so.
        if (name === 'track' || name === 'wheelCentreHeight') expect(Math.abs(chance - now), name).toBeLessThan(0.002);
      }
    }
  });

  it('is asked of nothing that was taped, of no other point than a hand reaches, and of a car that was never read', () => {
    expect(worth.rear!.lengths.map(({ name }) => name)).not.toContain('axleBehindFront');
    const taped: Axle = { ...wishbone, suspension: { ...wishbone.suspension, tolerance: 5 } };
    expect(Object.keys(dimensionWorth(fileOf({ ...car, front: taped })))).toEqual(['rear']);
    const { visits: _, ...unread } = file;
    const first = dimensionWorth(unread);
    expect(first.front!.now).toBeGreaterThan(0);
    expect(first.front!.lengths.length).toBe(worth.front!.lengths.length);
  });
});

describe('a car with measured lengths', () => {
  it('has points that have them, once checked, and stays so to the bit', () => {
    const { suspension } = wishbone;
    const measured = { upperFrontLength: 261, ballSpacing: { value: 300, tolerance: 2 } };
    const asked: Car = { ...car, front: { ...wishbone, suspension: { ...suspension, measured } } };
    const once = validateCar(asked);
    expect(own(once.front.suspension, 'upperFrontLength')).toBeCloseTo(261, 9);
    expect(own(once.front.suspension, 'ballSpacing')).toBeCloseTo(300, 9);
    expect(validateCar(once)).toEqual(once);
    expect(validateCarFile(fileOf(once)).car).toEqual(once);
    expect(once.front.suspension.measured).toEqual(measured);
  });

  it.each([
    [{ upperFrontLenght: 1 }, 'car.front.suspension.measured.upperFrontLenght'],
    [{ upperFrontLength: 5 }, 'car.front.suspension.measured.upperFrontLength'],
    [{ upperFrontLength: '300' }, 'car.front.suspension.measured.upperFrontLength'],
    [{ upperFrontLength: { value: 300, tolerance: -1 } }, 'car.front.suspension.measured.upperFrontLength.tolerance'],
    [
      { upperPivotSpacing: 60, upperFrontHeight: 200, upperRearHeight: 600 },
      'car.front.suspension.measured.upperPivotSpacing',
    ],
  ])('%j is refused by name', (measured, field) => {
    const asked = { ...car, front: { ...wishbone, suspension: { ...wishbone.suspension, measured } } };
    expect(() => validateCar(asked)).toThrow(
      expect.objectContaining({ field: expect.stringContaining(field.slice(0, 30)) }),
    );
  });

  it('learns on from what was measured: its arm is moved less by readings than one that was not', () => {
    const to = { LF: { front: 10, rear: 4 } };
    const after = predictReading(car, reading, {}, to);
    const read = { ...after, LF: { ...after.LF, camber: after.LF!.camber! + 0.25 } };
    const rounds = [
      { id: 'a', reading, settings: {} },
      { id: 'b', reading: read, settings: to },
    ];
    const off = (model: Car) =>
      Math.abs(own(model.front.suspension, 'upperFrontLength') - own(car.front.suspension, 'upperFrontLength'));
    const [free, held] = [learn(car, rounds), learn(measuredOn('front', 'upperFrontLength'), rounds)];
    expect(off(free)).toBeGreaterThan(2);
    expect(off(held)).toBeLessThan(off(free) / 2);
    // And it can be asked on: its points are as they were learned.
    expect(validateCar(held).front.suspension.points).toEqual(held.front.suspension.points);
  });
});
