/** What holds of learning whatever the car: order, repeats, mirror, there-and-back, misread figures, and how sure it is. */
import { describe, expect, it } from 'vitest';
import { unknownsOf } from '../../core/adjuster/unknowns.ts';
import type { Adjuster, Car, CarModel, Corner, LearnedPart, Round, Settings } from '../../core/contract.ts';
import { expectReading, learn, learnOfFile, planMoves, validateCar, validateCarFile } from '../../core/index.ts';
import { compileCar } from '../../core/pose/car-model.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { pack, wishboneWithin } from '../tools/learn-cars.ts';
import { rod, stream } from '../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, roundsOf, shown } from '../tools/read-car.ts';

const wishbone = wishboneWithin(30);
const adjusters = [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('rod', 'tieInner', 8)];
const car = frontCar(wishbone, adjusters);
const at = (front: number, rear: number, turns: number): Settings => ({ front, rear, rod: turns });
const SIGHTS = [at(7.5, 7.5, 0), at(12, 4.5, 1), at(12, 10.5, -2), at(3, 10.5, -2)];
const random = stream(11);
const truth = builtWithin(wishbone, 25, random);
const wheel = (settings: Settings, noise = 1) => shown(truth, adjusters, settings, random, noise);
const rounds = roundsOf(
  'LF',
  SIGHTS.map((settings) => [settings, wheel(settings)] as const),
);
const model = learn(car, rounds, GAUGE);
const partOf = (one: CarModel, corner: Corner = 'LF') =>
  one.learned?.parts.find(({ corners }) => corners[0] === corner) as LearnedPart;
const variances = ({ unknowns, covariance }: LearnedPart): number[] =>
  unknowns.map((_, i) => covariance[(i * (i + 3)) / 2] as number);

/** How far what is predicted from the first sight to another place is off, degrees, angle by angle. */
const missAt = (one: Car, settings: Settings): readonly number[] => {
  const first = shown(truth, adjusters, SIGHTS[0] as Settings, random, 0);
  const real = shown(truth, adjusters, settings, random, 0);
  const told = expectReading(one, { LF: first }, { LF: SIGHTS[0] as Settings }, { LF: settings }).LF ?? {};
  return (['camber', 'caster', 'toe'] as const).map((angle) => Math.abs((told[angle] ?? 9) - (real[angle] ?? 0)));
};
const ELSEWHERE = at(0.75, 2.25, 3);

describe('without anything to learn from', () => {
  it('the car is the car that was given, bit for bit', () => {
    expect(learn(car, [], GAUGE)).toBe(car);
  });

  it('one reading, or the same state read again, leaves its points as they were', () => {
    const [first] = rounds as [Round];
    const again = { ...first, id: 'again', reading: { LF: wheel(SIGHTS[0] as Settings) } };
    for (const some of [[first], [first, again]]) {
      const { learned, ...rest } = learn(car, some, GAUGE);
      expect(rest.front.suspension.points).toEqual(validateCar(car).front.suspension.points);
      expect(learned?.parts).toEqual([]);
    }
  });
});

describe('what is learned', () => {
  it('is nearer to the car than what was entered, and says so', () => {
    const [before, after] = [missAt(car, ELSEWHERE), missAt(model, ELSEWHERE)];
    expect(Math.hypot(...before)).toBeGreaterThan(0.15);
    expect(Math.hypot(...after)).toBeLessThan(Math.hypot(...before) / 2);
    const window = (aim: number) => ({ low: aim - 0.3, aim, high: aim + 0.3 });
    const request = {
      spec: { front: { camber: window(-0.6), caster: window(2.5), toe: window(0.05) } },
      reading: rounds[3]?.reading ?? {},
      settings: rounds[3]?.settings ?? {},
      gauge: GAUGE,
    };
    const [blind, taught] = [planMoves({ ...request, car }), planMoves({ ...request, car: model })];
    expect(taught.deviation.LF?.toe).toBeLessThan((blind.deviation.LF?.toe ?? 0) * 0.8);
  });

  it('hangs on no order, and a record that is there twice changes nothing', () => {
    const [a, b, c, d] = rounds as [Round, Round, Round, Round];
    expect(learn(car, [d, b, a, c], GAUGE)).toEqual(model);
    expect(learn(car, [a, b, c, d, b, { ...d }], GAUGE)).toEqual(model);
    const bare = rounds.map(({ reading, settings }) => ({ reading, settings }));
    expect(learn(car, [...bare].reverse(), GAUGE)).toEqual(learn(car, bare, GAUGE));
  });

  it('is by the record that holds, where one was corrected', () => {
    const wrong = { ...(rounds[1] as Round), id: 'wrong', reading: { LF: { camber: 2, toe: -1 } } };
    const right = { ...(rounds[1] as Round), replaces: 'wrong' };
    const others = rounds.filter((_, i) => i !== 1);
    expect(learn(car, [...others, wrong, right], GAUGE).front).toEqual(model.front);
  });

  it('is as sure as before or surer in every direction', () => {
    const part = partOf(model);
    const size = part.unknowns.length;
    const sigma = 30 / Math.sqrt(3);
    const entry = (i: number, j: number) =>
      part.covariance[(Math.max(i, j) * (Math.max(i, j) + 1)) / 2 + Math.min(i, j)] as number;
    for (let n = 0; n < 200; n++) {
      const v = Array.from({ length: size }, () => random() - 0.5);
      const known = v.reduce((sum, x, i) => sum + v.reduce((own, y, j) => own + x * y * entry(i, j), 0), 0);
      const before = sigma ** 2 * v.reduce((sum, x) => sum + x * x, 0);
      expect(known).toBeLessThan(before * (1 + 1e-9));
      expect(known).toBeGreaterThan(0);
    }
    const fewer = partOf(learn(car, rounds.slice(0, 2), GAUGE));
    for (const [i, value] of variances(part).entries()) {
      // The derivatives are taken at another car: not exactly the same ones.
      expect(value).toBeLessThan((variances(fewer)[i] as number) * 1.02);
    }
  });

  it('is the mirror of it on the other side', () => {
    const right = rounds.map(({ reading, settings, ...rest }) => ({
      ...rest,
      settings: { RF: settings.LF as Settings },
      reading: { RF: reading.LF ?? {} },
    }));
    const mirrored = learn(car, right, GAUGE);
    expect(mirrored.front.rightSuspension?.points).toEqual(model.front.suspension.points);
    expect(mirrored.front.suspension.points).toEqual(model.front.rightSuspension?.points);
    expect(partOf(mirrored, 'RF').covariance).toEqual(partOf(model).covariance);
  });

  it('takes a way there and back for two readings of where it began', () => {
    const [first, second] = SIGHTS as [Settings, Settings];
    const fine = { camber: 0.001, caster: 0.001, toe: 0.001 };
    const exact = adjusters.map((one) => ({ ...one, tolerance: 0 }));
    const sights = [first, second, first].map((settings) => [settings, wheel(settings, 0)] as const);
    const back = learn(frontCar(wishbone, exact), roundsOf('LF', sights), fine);
    const reading = { LF: sights[0]?.[1] ?? {} };
    const told = expectReading(back, reading, { LF: first }, { LF: second }).LF;
    expect(told?.camber).toBeCloseTo(sights[1]?.[1].camber ?? 0, 3);
    expect(told?.caster).toBeCloseTo(sights[1]?.[1].caster ?? 0, 3);
    expect(told?.toe).toBeCloseTo(sights[1]?.[1].toe ?? 0, 3);
  });

  it('takes what little a reading says', () => {
    const partial = rounds.map((one, i) =>
      i % 2 === 1 ? { ...one, reading: { LF: { toe: one.reading.LF?.toe as number } } } : one,
    );
    const some = partOf(learn(car, partial, GAUGE));
    const trace = (part: LearnedPart) => variances(part).reduce((sum, x) => sum + x, 0);
    expect(trace(some)).toBeGreaterThan(trace(partOf(model)));
    expect(trace(some)).toBeLessThan((900 / 3) * some.unknowns.length * 0.99);
  });

  it('goes on from what was learned before as if all had been read in one go', () => {
    const twice = [
      ...rounds.slice(0, 2),
      ...roundsOf('LF', []).concat(
        rounds.slice(2).map((one) => ({ ...one, at: one.at?.replace('03-02', '03-05') as string })),
      ),
    ];
    const once = learn(car, twice, GAUGE);
    const then = learn(learn(car, twice.slice(0, 2), GAUGE), twice.slice(2), GAUGE);
    const [a, b] = [missAt(once, ELSEWHERE), missAt(then, ELSEWHERE)];
    for (const [i, miss] of a.entries()) expect(Math.abs(miss - (b[i] as number))).toBeLessThan(0.02);
    for (const [i, value] of variances(partOf(then)).entries()) {
      expect(value / (variances(partOf(once))[i] as number)).toBeCloseTo(1, 1);
    }
  });

  it('is a car like another: it passes the check, and what is not of this car is refused', () => {
    expect(validateCar(model)).toEqual(model);
    const part = partOf(model);
    const withPart = (changed: object) =>
      validateCar({ ...model, learned: { ...model.learned, parts: [{ ...part, ...changed }] } });
    expect(() => withPart({ unknowns: ['LF.nowhere.x', ...part.unknowns.slice(1)] })).toThrow(
      'car.learned.parts[0].unknowns[0]',
    );
    expect(() => withPart({ covariance: part.covariance.slice(1) })).toThrow('car.learned.parts[0].covariance');
    expect(() => withPart({ corners: ['LF', 'RF'] })).toThrow('car.learned.parts[0].corners');
    expect(() => learn(car, [{ reading: {}, settings: { LF: { bolt: 1 } } }])).toThrow('rounds[0].settings.LF.bolt');
  });

  it('is of the visits of a file, each a sitting', () => {
    const visit = { id: 'one', carId: car.id, opened: '2026-03-02', rounds };
    const file = validateCarFile({ format: 'cornerwright', version: 1, car, visits: [visit] });
    expect(learnOfFile(file, GAUGE).front).toEqual(model.front);
    expect(learnOfFile({ ...file, visits: [] }, GAUGE)).toEqual(file.car);
  });
});

describe('a reading that cannot be', () => {
  it.each([
    ['another sign', { camber: 1.9 }],
    ['a decimal shifted', { toe: 2.4 }],
    ['caster of another car', { caster: 9 }],
  ])('%s: it is left out, told, and spoils nothing', (_, wrong) => {
    const spoilt = rounds.map((one, i) =>
      i === 2 ? { ...one, reading: { LF: { ...one.reading.LF, ...wrong } } } : one,
    );
    const kept = learn(car, spoilt, GAUGE);
    expect(kept.learned?.leftOut).toEqual([{ corner: 'LF', round: 'round-2' }]);
    const without = learn(
      car,
      rounds.filter((_, i) => i !== 2),
      GAUGE,
    );
    expect(kept.front.suspension.points).toEqual(without.front.suspension.points);
    expect(model.learned?.leftOut).toEqual([]);
  });

  it('of two alone nobody knows which: both are left out', () => {
    const [first, second] = rounds as [Round, Round];
    const wrong = { ...second, reading: { LF: { ...second.reading.LF, camber: 3 } } };
    const kept = learn(car, [first, wrong], GAUGE);
    expect(kept.learned?.leftOut).toHaveLength(2);
    expect(kept.learned?.parts).toEqual([]);
  });
});

describe.each(starters.map((one) => [one.kind, one] as const))('%s', (kind, starter) => {
  it('learns of every move that shows, and is never less sure of anything', () => {
    const own = suspensionFromStarter(starter, starter.axle);
    const table: Adjuster = {
      id: 'kit',
      kind: 'effect-table',
      perStep: { camber: 0.2, toe: 0.05 },
      range: [-9, 9],
      reference: 0,
    };
    const given = frontCar({ ...own, tolerance: 5 }, [table]);
    const sights = [0, 3, -4].map((kit) => [{ kit }, { camber: -0.5 + 0.24 * kit, toe: 0.1 + 0.03 * kit }] as const);
    const taught = learn(given, roundsOf('LF', sights), GAUGE);
    const part = partOf(taught);
    const [assembly] = compileCar(given);
    const prior = unknownsOf(assembly?.sides ?? []);
    expect(part.unknowns).toHaveLength(prior.length);
    for (const [i, value] of variances(part).entries()) {
      expect(value).toBeLessThan((prior[i]?.sigma ?? 0) ** 2 * (1 + 1e-9));
    }
    expect(taught.front.adjusters[0]?.perStep.camber).toBeCloseTo(0.24, 1);
    // Nothing of the other side was read; a rigid axle's is solved with it, to a last digit.
    expect(taught.front.rightAdjusters?.[0]?.perStep.camber, kind).toBeCloseTo(0.2, 9);
    expect(validateCar(taught)).toEqual(taught);
  });
});
