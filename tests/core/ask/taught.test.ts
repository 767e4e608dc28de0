/** What was learned of a car, step by step, and what a second car of its build starts from. */
import { describe, expect, it } from 'vitest';
import type { Axle, Car, CarFile, LearnedPart, Round, Settings } from '../../../core/contract.ts';
import { axleEffects, learn, planOfFile, solveCorner, taughtOfFile, validateCarFile } from '../../../core/index.ts';
import { pack, wishboneWithin } from '../../tools/learn-cars.ts';
import { rod, stream } from '../../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, roundsOf, shown } from '../../tools/read-car.ts';

const wishbone = wishboneWithin(30);
const adjusters = [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('rod', 'tieInner', 8)];
const car = frontCar(wishbone, adjusters);
const random = stream(31);
const truth = builtWithin(wishbone, 25, random);
const at = (front: number, rear: number, turns: number): Settings => ({ front, rear, rod: turns });
const SIGHTS = [at(7.5, 7.5, 0), at(12, 4.5, 1), at(12, 10.5, -2), at(3, 10.5, -2), at(3, 6, 2)];
const rounds = roundsOf(
  'LF',
  SIGHTS.map((settings) => [settings, shown(truth, adjusters, settings, random)] as const),
);
const window = (aim: number) => ({ low: aim - 0.3, aim, high: aim + 0.3 });
const spec = { front: { camber: window(-0.6), caster: window(2.5), toe: window(0.05) } };
const fileOf = (of: Car, own: readonly Round[]): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car: of, spec },
  visits: [{ id: 'v', carId: of.id, opened: '2026-03-02', rounds: own }],
});
const options = { gauge: GAUGE };
const told = taughtOfFile(fileOf(car, rounds), options);

describe('what was learned', () => {
  it('is what a step does on the car as it was entered and as it was learned, as their poses say', () => {
    const model = learn(car, rounds, GAUGE);
    const [before, after] = [car, model].map((one) => axleEffects(one.front as Axle).left);
    expect(told.steps.map(({ adjuster }) => adjuster.adjuster)).toEqual(['front', 'rear', 'rod']);
    for (const { adjuster, step, angles } of told.steps) {
      const [was, is] = [before, after].map((all) => all!.find((one) => one.adjuster === adjuster.adjuster)!);
      expect(step).toBe(is!.step);
      for (const { angle, entered, learned } of angles) {
        expect(entered.by).toBeCloseTo(was![angle]!, 6);
        expect(learned.by).toBeCloseTo(is![angle]!, 6);
      }
    }
    expect(told.readings).toBe(5);
  });

  it('is nearer to what the car does, and as sure as it says', () => {
    let [off, was] = [0, 0];
    for (const { adjuster, angles } of told.steps) {
      const own = adjusters.find(({ id }) => id === adjuster.adjuster)!;
      const reference = at(7.5, 7.5, 0);
      const from = Number(own.reference);
      const by = own.kind === 'shim-pack' ? 1 : 1;
      const real = [from, from + by].map((position) => {
        const pose = solveCorner(truth, adjusters, { ...reference, [own.id]: Math.min(position, 15) });
        if (!pose.reachable) throw new Error('no pose there');
        return pose;
      });
      for (const { angle, entered, learned } of angles) {
        const does = real[1]![angle]! - real[0]![angle]!;
        // A step of a pack is its thinnest shim.
        const share = own.kind === 'shim-pack' ? learned.by / does : 1;
        if (own.kind !== 'shim-pack') {
          off = Math.max(off, Math.abs(learned.by - does) / learned.deviation);
          was = Math.max(was, Math.abs(entered.by - does));
        }
        expect(share).toBeGreaterThan(0);
        expect(learned.deviation).toBeLessThan(entered.deviation * 1.001);
      }
    }
    expect(off).toBeLessThan(3);
    expect(was).toBeGreaterThan(0);
  });

  it('is nothing of what was not moved, nor of a car that was read once', () => {
    const turned = rounds.slice(0, 1).concat({ ...rounds[0]!, id: 'again' });
    expect(taughtOfFile(fileOf(car, turned), options)).toEqual({ steps: [], readings: 2, leftOut: 0, start: {} });
    expect(taughtOfFile(fileOf(car, []), options).readings).toBe(0);
  });
});

describe('a second car of the build', () => {
  const second: Car = { ...car, id: 'second', front: { ...car.front, start: told.start.front! } };
  // Not quite the first one.
  const own = builtWithin(truth, 2, random);
  const found = roundsOf('LF', [[SIGHTS[0]!, shown(own, adjusters, SIGHTS[0]!, random)]]);

  it('starts from what the first has shown, as its file says, and is planned with that', () => {
    const file = validateCarFile(JSON.parse(JSON.stringify(fileOf(second, found))));
    expect(file.car.front.start?.of).toBe(car.label);
    const [with_, without] = [file, fileOf({ ...car, id: 'second' }, found)].map((one) => planOfFile(one, options));
    expect(with_!.chance).toBeGreaterThan(without!.chance);
    expect(with_!.deviation.LF?.camber).toBeLessThan(without!.deviation.LF?.camber ?? 0);
  });

  it('is known no better by it than the first, and no worse than one of which nothing was read', () => {
    const [started, first] = [learn(second, [], GAUGE), learn(car, rounds, GAUGE)].map(
      (one) => one.learned!.parts[0]!,
    ) as [LearnedPart, LearnedPart];
    const variances = ({ unknowns, covariance }: LearnedPart) => unknowns.map((_, i) => covariance[(i * (i + 3)) / 2]!);
    variances(started).forEach((value, i) => {
      expect(value).toBeGreaterThanOrEqual(variances(first)[i]! * (1 - 1e-5));
      expect(value).toBeLessThanOrEqual((30 ** 2 / 3) * 1.001 + 4);
    });
    expect(learn(second, [], GAUGE).front.start).toBeUndefined();
  });

  it('learns on from there by its own readings', () => {
    const ofOwn = roundsOf(
      'LF',
      SIGHTS.slice(0, 3).map((settings) => [settings, shown(own, adjusters, settings, random)] as const),
    );
    const [before, after] = [learn(second, [], GAUGE), learn(second, ofOwn, GAUGE)];
    expect(after.learned?.parts[0]?.covariance[0]).toBeLessThan(before.learned?.parts[0]?.covariance[0] ?? 0);
    expect(after.learned?.last?.id).toBe('round-2');
  });
});
