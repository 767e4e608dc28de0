/** What a file's own readings teach counts in every answer about it, as far as they were there by its last round. */
import { describe, expect, it } from 'vitest';
import type { AdjusterRef, CarFile, Moved, Round, Settings } from '../../../core/contract.ts';
import {
  expectationOfFile,
  expectReading,
  explanationOfFile,
  learn,
  planOfFile,
  planRequest,
  validateCar,
} from '../../../core/index.ts';
import { cam, pack, wishboneWithin } from '../../tools/learn-cars.ts';
import { rod, stream } from '../../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, roundsOf, shown } from '../../tools/read-car.ts';

const wishbone = wishboneWithin(30);
const packs = [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('rod', 'tieInner', 8)];
const car = frontCar(wishbone, packs);
const random = stream(21);
const truth = builtWithin(wishbone, 25, random);
const at = (front: number, rear: number, turns: number): Settings => ({ front, rear, rod: turns });
const wheel = (settings: Settings) => shown(truth, packs, settings, random);
const SIGHTS = [at(7.5, 7.5, 0), at(12, 4.5, 1), at(12, 10.5, -2)];
const read = roundsOf(
  'LF',
  SIGHTS.map((settings) => [settings, wheel(settings)] as const),
);
const window = (aim: number) => ({ low: aim - 0.3, aim, high: aim + 0.3 });
const spec = { front: { camber: window(-0.6), caster: window(2.5), toe: window(0.05) } };
const visit = (id: string, opened: string, rounds: readonly Round[]) => ({ id, carId: car.id, opened, rounds });
const fileWith = (...visits: readonly ReturnType<typeof visit>[]): CarFile => ({
  format: 'cornerwright',
  version: 1,
  car,
  spec,
  visits,
});
const options = { gauge: GAUGE };

describe('the car of a file', () => {
  const past = visit('past', '2026-03-01', read);
  const again = [{ id: 'today', reading: { LF: wheel(SIGHTS[2]!) }, settings: { LF: SIGHTS[2]! } }];

  it('is the car that was entered while no visit has a second reading', () => {
    const request = planRequest(fileWith(visit('one', '2026-03-01', read.slice(0, 1))), options);
    expect(request.car.learned).toBeUndefined();
    expect(request.car.front.suspension.points).toEqual(validateCar(car).front.suspension.points);
  });

  it('is what all its readings have taught, those of visits before among them', () => {
    const taught = learn(car, read, GAUGE);
    const request = planRequest(fileWith(past, visit('now', '2026-04-01', again)), options);
    expect(request.car.front.suspension.points).toEqual(taught.front.suspension.points);
    expect(request.car.learned?.parts).toEqual(taught.learned?.parts);
  });

  it('is no other for what was read in a visit after the last round that is asked about', () => {
    const then = planRequest(fileWith(visit('one', '2026-03-01', read.slice(0, 2))), options);
    expect(then.car.learned?.parts).toEqual(learn(car, read.slice(0, 2), GAUGE).learned?.parts);
    expect(then.car.learned?.parts).not.toEqual(learn(car, read, GAUGE).learned?.parts);
  });

  it('is expected of, judged by what was known then', () => {
    const moved: Moved[] = [{ corner: 'LF', adjuster: 'rod', from: 1, to: 3, outcome: 'done' }];
    const [first, second] = read as [Round, Round];
    const told = expectationOfFile(fileWith(visit('one', '2026-03-01', [first, { ...second, moved }])), options);
    const known = learn(car, [first, second], GAUGE);
    expect(told.LF).toEqual(expectReading(known, second.reading, second.settings, { LF: { ...SIGHTS[1], rod: 3 } }).LF);
  });

  it('is not learned twice where the file holds what was learned of it already', () => {
    const known = learn(car, read, GAUGE);
    const request = planRequest({ ...fileWith(past), car: known }, options);
    expect(request.car.learned).toEqual(validateCar(known).learned);
  });

  it('learns nothing of a reading of before it was built so, and is planned all the same', () => {
    const before = read.map((one) => ({ ...one, settings: { LF: { ...one.settings.LF, gone: 2 } } }));
    const request = planRequest(
      fileWith(visit('past', '2026-03-01', before), visit('now', '2026-04-01', again)),
      options,
    );
    expect(request.car.learned).toBeUndefined();
  });
});

describe('an adjuster of unknown place', () => {
  const cams = [cam('front', 'lowerFront', 1), cam('rear', 'lowerRear', 1), rod('rod', 'tieInner', 8)];
  const own = frontCar(wishboneWithin(5), cams);
  const real = builtWithin(own.front.suspension, 4, stream(3));
  const unknown: AdjusterRef[] = [{ corner: 'LF', adjuster: 'front' }];
  const PLACE = -60;
  const round = (id: string, by: number, rest: object = {}): Round => ({
    ...{ id, unknown, settings: { LF: { front: by, rear: 0, rod: 0 } } },
    reading: { LF: shown(real, cams, { front: PLACE + by, rear: 0, rod: 0 }, random) },
    ...rest,
  });
  const fileOf = (...rounds: readonly Round[]): CarFile => ({
    ...fileWith({ ...visit('v', '2026-03-01', rounds), carId: own.id }),
    car: own,
  });
  const turned = (from: number, to: number): Moved => ({ corner: 'LF', adjuster: 'front', from, to, outcome: 'done' });

  it('is left alone while nothing has told where it stands, and nothing is to be expected of turning it', () => {
    const file = fileOf(round('a', 0));
    expect(planRequest(file, options).locked).toEqual(unknown);
    expect(planOfFile(file, options).moves.map(({ adjuster }) => adjuster)).not.toContain('front');
    const told = expectationOfFile(fileOf(round('a', 0, { moved: [turned(0, 60)] })), options);
    expect(told.LF).toEqual({});
    expect(explanationOfFile(fileOf(round('a', 0), round('b', 60)), options)[0]?.cause).toBe('noise');
  });

  it('is planned with once a watched move has told, from where it stands on its own scale', () => {
    const request = planRequest(fileOf(round('a', 0), round('b', 60), round('c', 30)), options);
    expect(request.locked).toEqual([]);
    expect(Math.abs(Number(request.settings.LF?.front) - (PLACE + 30))).toBeLessThan(10);
  });

  it('is turned on by as much as a move says, and stands where it was set to', () => {
    const [a, b, c] = [round('a', 0), round('b', 60), round('c', 30)];
    const stands = (...moved: readonly Moved[]) =>
      planRequest(fileOf(a, b, { ...c, moved }), options).settings.LF?.front;
    const was = Number(stands());
    expect(Number(stands(turned(was, was + 15))) - was).toBeCloseTo(15, 9);
    expect(stands({ ...turned(was, -45), outcome: 'set-to' })).toBe(-45);
  });

  it('may be counted beyond its travel, as nobody knows from where', () => {
    const request = planRequest(fileOf(round('a', 0), round('b', 120), round('c', 100)), options);
    expect(Math.abs(Number(request.settings.LF?.front) - (PLACE + 100))).toBeLessThan(10);
  });
});

describe('the explanation of a file’s last reading', () => {
  it('there is none of a first one', () => {
    expect(explanationOfFile(fileWith(visit('v', '2026-03-01', read.slice(0, 1))), options)).toEqual([]);
  });

  it('is by the readings before it: a rod that was not turned', () => {
    const asked = { LF: at(12, 10.5, 3) };
    const left: Round = { id: 'left', reading: { LF: wheel(SIGHTS[2]!) }, settings: asked };
    const [first] = explanationOfFile(fileWith(visit('v', '2026-03-01', [...read, left])), options);
    expect(first).toMatchObject({
      cause: 'not-made',
      correction: { of: 'moves', stand: [{ corner: 'LF', adjuster: 'rod', at: -2 }] },
    });
    expect(first?.text).toContain('not to have been moved');
  });

  it('has front toe as it was typed, against the thrust line', () => {
    const thrust = { toeReference: 'thrust-line', LR: { toe: 0.3 }, RR: { toe: -0.1 } } as const;
    const typed = (settings: Settings, sign = 1) => {
      const { toe = 0, ...rest } = wheel(settings);
      return { ...thrust, LF: { ...rest, toe: sign * (toe - 0.2) } };
    };
    const turned = at(7.5, 7.5, -2);
    const rounds: Round[] = [
      ...SIGHTS.map((own, i) => ({ id: `${i}`, reading: typed(own), settings: { LF: own } })),
      { id: 'wrong', reading: typed(turned, -1), settings: { LF: turned } },
    ];
    const [first] = explanationOfFile(fileWith(visit('v', '2026-03-01', rounds)), options);
    const { toe = Number.NaN } = rounds[3]?.reading.LF ?? {};
    expect(first).toMatchObject({ cause: 'sign', angle: 'toe', reading: 'after', read: toe });
    expect(first?.correction).toEqual({
      of: 'reading',
      reading: 'after',
      values: [{ corner: 'LF', angle: 'toe', value: -toe }],
    });
  });
});
