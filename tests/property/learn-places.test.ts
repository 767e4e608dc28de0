/** Adjusters of which nobody knew where they stood: where they did is learned with the rest, once a watched move tells. */
import { describe, expect, it } from 'vitest';
import type { Round, Settings } from '../../core/contract.ts';
import { expectReading, learn, planMoves } from '../../core/index.ts';
import { cam, wishboneWithin } from '../tools/learn-cars.ts';
import { rod, stream } from '../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, roundsOf, shown } from '../tools/read-car.ts';

const wishbone = wishboneWithin(5);
const adjusters = [cam('front', 'lowerFront', 1), cam('rear', 'lowerRear', 1), rod('rod', 'tieInner', 8)];
const car = frontCar(wishbone, adjusters);

/** The front cam is turned on from a place that the records count as 0. */
const seen = (place: number, turned: readonly number[], seed: number): readonly Round[] => {
  const random = stream(seed);
  const truth = builtWithin(wishbone, 4, random);
  const said = (by: number): Settings => ({ front: by, rear: 0, rod: 0 });
  const sights = turned.map(
    (by) => [said(by), shown(truth, adjusters, { ...said(by), front: place + by }, random)] as const,
  );
  return roundsOf('LF', sights).map((one) => ({ ...one, unknown: [{ corner: 'LF', adjuster: 'front' }] }));
};

describe('an adjuster of unknown place', () => {
  it.each([
    [-60, [0, 60, 30], 3],
    [45, [0, -75, -30], 4],
    [0, [0, 45, -30], 5],
  ] as const)('stood at %s°: found after %j', (place, turned, seed) => {
    const { learned } = learn(car, seen(place, turned, seed), GAUGE);
    const [found] = learned?.places ?? [];
    expect(found).toMatchObject({ corner: 'LF', adjuster: 'front' });
    const stands = place + (turned.at(-1) as number);
    const { at, deviation } = found as { at: number; deviation: number };
    expect(deviation).toBeLessThan(15);
    expect(Math.abs(at - stands)).toBeLessThan(3 * deviation);
    expect(learned?.leftOut).toEqual([]);
  });

  it('is said to be anywhere while nothing was moved from there', () => {
    const [first] = seen(-60, [0], 3) as [Round];
    expect(learn(car, [first], GAUGE).learned?.places).toBeUndefined();
  });

  it('may have stood at either of two places where one move does not tell, and says that it does not know', () => {
    // From −60° to 0° a cam moves its point as far as from 0° to 60°.
    const [found] = learn(car, seen(-60, [0, 60], 3), GAUGE).learned?.places ?? [];
    expect(found?.deviation).toBeGreaterThan(25);
  });

  it('can be planned from: what is predicted with it is nearer, and the chance counts how well it is known', () => {
    const model = learn(car, seen(-60, [0, 60, 30], 3), GAUGE);
    const { at } = model.learned?.places?.[0] ?? { at: Number.NaN };
    const random = stream(3);
    const truth = builtWithin(wishbone, 4, random);
    const real = (front: number) => shown(truth, adjusters, { front, rear: 0, rod: 0 }, random, 0);
    const read = real(-30);
    const told = (one: typeof car, from: number) =>
      expectReading(one, { LF: read }, { LF: { front: from } }, { LF: { front: from - 60 } }).LF?.camber ?? 9;
    const miss = (camber: number): number => Math.abs(camber - (real(-90).camber ?? 0));
    expect(miss(told(model, at))).toBeLessThan(0.1);
    // The records count it at 30°, where as many marks move it twice as far.
    expect(miss(told(car, 30))).toBeGreaterThan(0.2);
    const aim = told(model, at);
    const request = {
      spec: { front: { left: { camber: { low: aim - 0.1, aim, high: aim + 0.1 } } } },
      reading: { LF: read },
      settings: { LF: { front: at } },
      gauge: GAUGE,
      locked: ['rear', 'rod'].map((adjuster) => ({ corner: 'LF' as const, adjuster })),
    };
    const sure = { ...model, learned: { parts: [], leftOut: [], ...model.learned, places: [] } };
    const [doubtful, certain] = [planMoves({ ...request, car: model }), planMoves({ ...request, car: sure })];
    expect(doubtful.moves.map(({ adjuster }) => adjuster)).toEqual(['front']);
    expect(doubtful.deviation.LF?.camber).toBeGreaterThan(certain.deviation.LF?.camber ?? 9);
  });
});
