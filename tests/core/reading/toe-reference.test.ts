/** Front toe against the centre line and against the thrust line: the same wheels seen from another line. */
import { describe, expect, it } from 'vitest';
import { InputError, type Reading, readAgainst } from '../../../core/index.ts';
import { axleAngles } from '../../../core/reading/axle-angles.ts';
import { angleAgainst, readAgainst as convert } from '../../../core/reading/toe-reference.ts';
import { between, stream } from '../../tools/random-cars.ts';

type Direction = readonly [forward: number, right: number];
const RAD = Math.PI / 180;
/** Where a wheel, or a line, points that is turned so many degrees to the right. */
const pointing = (right: number): Direction => [Math.cos(right * RAD), Math.sin(right * RAD)];
/** Degrees from one direction to another, + to the right. */
const turn = ([a, b]: Direction, [c, d]: Direction): number => Math.atan2(a * d - b * c, a * c + b * d) / RAD;

/** Headings of the four wheels, degrees to the right of the car's centre line. */
interface Headings {
  readonly LF: number;
  readonly RF: number;
  readonly LR: number;
  readonly RR: number;
}
/** Toe-in is inwards: of a left wheel to the right, of a right one to the left. Front toe from `line`. */
function seen({ LF, RF, LR, RR }: Headings, line: Direction): Reading {
  const ahead: Direction = [1, 0];
  return {
    LF: { camber: -0.5, toe: turn(line, pointing(LF)) },
    RF: { caster: 3, toe: turn(pointing(RF), line) },
    LR: { toe: turn(ahead, pointing(LR)) },
    RR: { toe: turn(pointing(RR), ahead) },
  };
}

const CARS = Array.from({ length: 20 }, (_, i): Headings => {
  const random = stream(i + 1);
  const one = () => between(random, -1.5, 1.5);
  return { LF: one(), RF: one(), LR: one(), RR: one() };
});
/** Halfway between where the rear wheels point. */
const thrustLine = ({ LR, RR }: Headings): Direction => pointing((LR + RR) / 2);
const CENTRE: Direction = [1, 0];

/** What two readings say of a wheel is the same. */
function same(one: Reading | undefined, other: Reading): void {
  for (const corner of ['LF', 'RF', 'LR', 'RR'] as const) {
    expect(one?.[corner]?.toe, corner).toBeCloseTo(other[corner]?.toe ?? Number.NaN, 12);
  }
}

describe('a reading of front toe against the other line', () => {
  it.each(CARS)('is what the wheels show from that line: %j', (car) => {
    const [centre, thrust] = [seen(car, CENTRE), seen(car, thrustLine(car))];
    const turned = readAgainst(centre, 'thrust-line');
    same(turned, thrust);
    expect(turned.toeReference).toBe('thrust-line');
    const back = readAgainst({ ...thrust, toeReference: 'thrust-line' }, 'centreline');
    same(back, centre);
    expect(back.toeReference).toBe('centreline');
  });

  it.each(CARS)('there and back is what it was, and so are all other angles: %j', (car) => {
    const centre = { ...seen(car, CENTRE), toeReference: 'centreline' as const };
    const back = readAgainst(readAgainst(centre, 'thrust-line'), 'centreline');
    same(back, centre);
    expect([back.LF?.camber, back.RF?.caster]).toEqual([-0.5, 3]);
    expect(readAgainst(centre, 'centreline')).toEqual(centre);
  });

  it.each(CARS)('has the same total toe, and points the thrust angle further to the left: %j', (car) => {
    const centre = seen(car, CENTRE);
    const turned = readAgainst(centre, 'thrust-line');
    const [before, after] = [axleAngles(centre.LF, centre.RF), axleAngles(turned.LF, turned.RF)];
    const { thrustAngle: thrust = Number.NaN } = axleAngles(centre.LR, centre.RR);
    expect(thrust).toBeCloseTo((car.LR + car.RR) / 2, 12);
    expect(after.totalToe).toBeCloseTo(before.totalToe ?? Number.NaN, 12);
    expect(after.thrustAngle).toBeCloseTo((before.thrustAngle ?? Number.NaN) - thrust, 12);
  });

  it('by the figures of one car: rear wheels both 0.2° to the right', () => {
    const reading: Reading = { LF: { toe: 0.1 }, RF: { toe: 0.1 }, LR: { toe: 0.2 }, RR: { toe: -0.2 } };
    const turned = readAgainst(reading, 'thrust-line');
    expect(turned.LF?.toe).toBeCloseTo(-0.1, 12);
    expect(turned.RF?.toe).toBeCloseTo(0.3, 12);
  });
});

describe('where the thrust angle is not known', () => {
  const front: Reading = { LF: { toe: 0.1 }, RF: { toe: 0.2, camber: 1 } };
  it.each([
    [{}, 'reading.LR.toe'],
    [{ LR: { toe: 0.1 } }, 'reading.RR.toe'],
    [{ RR: { toe: 0.1 }, LR: { camber: 1 } }, 'reading.LR.toe'],
  ])('with %j of the rear it is refused by name', (rear, field) => {
    const reading = { ...front, ...rear };
    expect(convert(reading, 'thrust-line')).toBeUndefined();
    const refused = () => readAgainst(reading, 'thrust-line');
    expect(refused).toThrow(InputError);
    expect(refused).toThrow(field);
    expect(readAgainst(reading, 'centreline')).toEqual({ ...reading, toeReference: 'centreline' });
  });

  it('what has no front toe is the same from both', () => {
    const reading: Reading = { RF: { camber: 1 }, toeReference: 'thrust-line' };
    expect(readAgainst(reading, 'centreline')).toEqual({ RF: { camber: 1 }, toeReference: 'centreline' });
  });

  it('total toe and camber are known all the same, toe of a wheel and steer-ahead not', () => {
    const against = (where: 'LF' | 'RF' | 'front', angle: string) => angleAgainst(front, where, angle, 'thrust-line');
    expect([against('LF', 'toe'), against('RF', 'toe'), against('front', 'thrustAngle')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(against('front', 'totalToe')).toBeCloseTo(0.3, 12);
    expect(against('RF', 'camber')).toBe(1);
  });
});

it('one angle alone is as in the whole reading', () => {
  for (const car of CARS) {
    const [centre, thrust] = [
      seen(car, CENTRE),
      { ...seen(car, thrustLine(car)), toeReference: 'thrust-line' as const },
    ];
    const far = (one: Reading, where: 'LF' | 'RF' | 'LR', reference: 'centreline' | 'thrust-line') =>
      angleAgainst(one, where, 'toe', reference);
    expect(far(centre, 'LF', 'thrust-line')).toBeCloseTo(thrust.LF?.toe ?? Number.NaN, 12);
    expect(far(centre, 'RF', 'thrust-line')).toBeCloseTo(thrust.RF?.toe ?? Number.NaN, 12);
    expect(far(thrust, 'RF', 'centreline')).toBeCloseTo(centre.RF?.toe ?? Number.NaN, 12);
    expect(far(thrust, 'LR', 'centreline')).toBe(thrust.LR?.toe);
    const ahead = (one: Reading) => angleAgainst(one, 'front', 'thrustAngle', 'thrust-line');
    expect(ahead(centre)).toBeCloseTo(ahead(thrust) ?? Number.NaN, 12);
  }
});

it('another line than the two is refused', () => {
  expect(() => readAgainst({}, 'axle' as never)).toThrow('toeReference');
});
