/** The small tools of the bench: against mathjs, against published figures, and what they refuse. */
import { std } from 'mathjs';
import { Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import {
  asideFromGaps,
  casterAgainstFrame,
  floorSlope,
  frameAngleFrom,
  heightsOff,
  InputError,
  lengthToToe,
  onLevelFloor,
  repeatability,
  roughToe,
  sideSlipOf,
  toeFromSideSlip,
  toeToLength,
  turnedRound,
  withoutRunOut,
} from '../../../core/index.ts';
import { USUAL_SCATTER } from '../../../core/measure/instruments.ts';
import { leanOf } from '../../../core/measure/phone.ts';
import { spreadOf } from '../../../core/measure/spread.ts';
import { BENCH } from '../../../core/records/preferences.ts';
import { between, stream } from '../../tools/random-cars.ts';

const rad = (d: number) => (d * Math.PI) / 180;
const deg = (r: number) => (r * 180) / Math.PI;
const normals = (seed: number) => {
  const draw = stream(seed);
  return () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
};

describe('the ± of what is worked out', () => {
  it('is what a thousand draws scatter by', () => {
    const draw = normals(5);
    const of = ({ a, b }: Record<'a' | 'b', number>) => ({ ratio: a / b, product: a * b });
    const told = spreadOf({ a: { value: 30, sd: 0.6 }, b: { value: 4, sd: 0.05 } }, of);
    const seen = Array.from({ length: 5_000 }, () => of({ a: 30 + 0.6 * draw(), b: 4 + 0.05 * draw() }));
    for (const name of ['ratio', 'product'] as const) {
      expect(told[name].sd / Number(std(...seen.map((one) => one[name])))).toBeCloseTo(1, 1);
    }
    expect(told.ratio.value).toBe(7.5);
  });

  it('knows nothing of a figure that is certain', () => {
    expect(spreadOf({ a: { value: 3, sd: 0 } }, ({ a }) => ({ b: 2 * a }))).toEqual({ b: { value: 6, sd: 0 } });
  });

  it('each instrument has a scatter below what a gauge can have', () => {
    expect(Object.keys(USUAL_SCATTER).sort()).toEqual(Object.keys(BENCH).sort());
    for (const [name, sd] of Object.entries(USUAL_SCATTER)) {
      expect(sd).toBeGreaterThan(0);
      expect(sd).toBeLessThan(BENCH[name as keyof typeof BENCH].most);
    }
  });
});

describe('repeated readings', () => {
  it('of one thing have the standard deviation of mathjs', () => {
    const readings = [1612.4, 1613, 1612.1, 1612.8, 1611.9];
    const found = repeatability([readings], 20);
    expect(found.sd).toBeCloseTo(Number(std(...readings)), 10);
    expect(found).toMatchObject({ freedom: 4 });
    expect(found.share).toBeCloseTo(1 / Math.sqrt(8), 12);
  });

  it('of several things are pooled: how far those lie apart is no scatter', () => {
    const draw = normals(9);
    const things = Array.from({ length: 300 }, (_, i) => Array.from({ length: 4 }, () => 10 * i + 0.3 * draw()));
    expect(repeatability(things, 20).sd).toBeCloseTo(0.3, 2);
    const [a, b] = [
      [1, 2],
      [7, 7, 10],
    ];
    const pooled = Math.sqrt((Number(std(...a!)) ** 2 * 1 + Number(std(...b!)) ** 2 * 2) / 3);
    expect(repeatability([a!, b!], 20).sd).toBeCloseTo(pooled, 12);
  });

  it.each([
    ['none', [], 'things: []'],
    ['one reading', [[3]], 'things[0]: 1 is not allowed; allowed: 2 readings or more'],
    ['no number', [[3, Number.NaN]], 'things[0]'],
    ['a slip', [[3, 300]], 'a standard deviation up to 20'],
  ])('%s is refused', (_, things, message) => {
    expect(() => repeatability(things, 20)).toThrow(message);
  });
});

describe('a level turned round', () => {
  it('gives the lean without its zero, as sure as its readings are', () => {
    const draw = normals(3);
    const [lean, zero] = [-1.35, 2.2];
    const many = (value: number) => Array.from({ length: 50 }, () => value + 0.1 * draw());
    const found = turnedRound(many(lean + zero), many(-lean + zero));
    expect(found.angle.value).toBeCloseTo(lean, 1);
    expect(found.zero).toBeCloseTo(zero, 1);
    expect(found.scatter).toBeCloseTo(0.1, 1);
    expect(found.angle.sd).toBeLessThan(0.06);
    expect(turnedRound([lean + zero], [-lean + zero])).toMatchObject({ scatter: 0 });
    expect(turnedRound([lean + zero], [-lean + zero]).angle.value).toBeCloseTo(lean, 12);
  });

  it('refuses one that jumps, and none', () => {
    expect(() => turnedRound([0.1, 0.2, 4.9], [0])).toThrow('first');
    expect(() => turnedRound([0], [0, 1.5, -1.5, 0])).toThrow('second');
    expect(() => turnedRound([], [0])).toThrow(InputError);
    expect(() => turnedRound([200], [0])).toThrow('first: 200');
  });
});

describe('a phone', () => {
  /** Z-X'-Y'' as the standard has it, by quaternions of three.js. */
  const placed = (alpha: number, beta: number, gamma: number) => {
    const turn = (x: number, y: number, z: number, angle: number) =>
      new Quaternion().setFromAxisAngle(new Vector3(x, y, z), rad(angle));
    return turn(0, 0, 1, alpha)
      .multiply(turn(1, 0, 0, beta))
      .multiply(turn(0, 1, 0, gamma));
  };
  it('leans as its screen’s normal goes down, whatever way it points', () => {
    const random = stream(6);
    for (let i = 0; i < 500; i++) {
      const [alpha, beta, gamma] = [between(random, 0, 360), between(random, -180, 180), between(random, -90, 90)];
      const by = placed(alpha, beta, gamma);
      const normal = new Vector3(0, 0, 1).applyQuaternion(by);
      expect(leanOf({ beta, gamma })).toBeCloseTo(-deg(Math.asin(normal.z)), 9);
    }
  });
  it('upright against a wheel reads its camber, and with its screen to the wheel the other way round', () => {
    // Its top leans 1.2° out, towards whoever looks at it.
    expect(leanOf({ beta: 91.2, gamma: 0 })).toBeCloseTo(1.2, 12);
    expect(leanOf({ beta: 88.8, gamma: 0 })).toBeCloseTo(-1.2, 12);
  });
});

describe('run-out', () => {
  const at = (true_: number, size: number, phase: number) => (angle: number) =>
    true_ + size * Math.cos(rad(angle - phase));
  it('is gone from four readings a quarter apart, which tell its size and place', () => {
    const random = stream(8);
    for (let i = 0; i < 200; i++) {
      const [value, size, phase] = [between(random, -3, 3), between(random, 0, 1), between(random, 0, 360)];
      const read = at(value, size, phase);
      const found = withoutRunOut([0, 90, 180, 270].map(read), 0.05);
      expect(found.value.value).toBeCloseTo(value, 12);
      expect(found.runOut).toBeCloseTo(size, 12);
      expect(Math.cos(rad(found.at! - phase))).toBeCloseTo(1, 9);
      expect(found.disagree).toBeCloseTo(0, 12);
      expect(found.value.sd).toBeCloseTo(0.05 / 2, 12);
      const two = withoutRunOut([0, 180].map(read), 0.05);
      expect(two.value.value).toBeCloseTo(value, 12);
      expect(two.runOut).toBeLessThanOrEqual(size + 1e-12);
      expect(two.value.sd).toBeCloseTo(0.05 / Math.SQRT2, 12);
    }
  });
  it('cannot be why two pairs disagree: that costs of the ±', () => {
    expect(withoutRunOut([1, 1.4, 1, 1.4], 0.05).value.sd).toBeGreaterThan(0.1);
    expect(() => withoutRunOut([1, 2, 3], 0.05)).toThrow('two readings half a turn apart, or four');
  });
});

describe('side slip', () => {
  it('1° is 17.455 mm a metre, 1 m/km is 3.438′ (published)', () => {
    expect(sideSlipOf(1)).toBeCloseTo(17.455, 3);
    expect(toeFromSideSlip(1, 0.3).value * 60).toBeCloseTo(3.438, 3);
    expect(toeFromSideSlip(-sideSlipOf(-0.4), 0.3).value).toBeCloseTo(0.4, 12);
    expect(() => toeFromSideSlip(60, 0.3)).toThrow('slip: 60 is not allowed');
    expect(() => sideSlipOf(30)).toThrow('toe: 30');
  });
});

describe('a rigid axle', () => {
  it('is as far to the left as half of what its gap there has more', () => {
    // Moved 4 mm to the left: that gap grows by 4, the other shrinks.
    expect(asideFromGaps({ left: 104, right: 96 }, 0.7)).toEqual({ value: 4, sd: expect.closeTo(0.7 / Math.SQRT2, 9) });
    expect(() => asideFromGaps({ left: -1, right: 96 }, 0.7)).toThrow('left: -1');
  });
  it('caster against a tilted frame: a front-down frame reads less (US Army TM 5-4210-230-14&P-1, p. 185)', () => {
    // Rear end 35 mm higher over 1000 mm: front down by 2°.
    const down = frameAngleFrom({ front: 400, rear: 400 + 1000 * Math.tan(rad(2)), between: 1000 }, 1);
    expect(down.value).toBeCloseTo(2, 10);
    expect(casterAgainstFrame(1, down.value)).toBeCloseTo(3, 10);
    expect(() => frameAngleFrom({ front: 400, rear: 400, between: 0 }, 1)).toThrow('between: 0');
  });
});

describe('ride heights', () => {
  it('tell how far each end has to go and how the body leans', () => {
    const found = heightsOff({ LF: 350, RF: 358, LR: 380 }, { LF: 362, RF: 362, LR: 380, RR: 380 }, 1);
    expect(found.front!.raise).toEqual({ value: 8, sd: expect.closeTo(Math.SQRT1_2, 9) });
    expect(found.front!.leftHigher.value).toBe(-8);
    expect(found.rear).toBeUndefined();
    expect(() => heightsOff({ LF: 5000 }, {}, 1)).toThrow('measured.LF: 5000');
  });
});

describe('a floor that is not level', () => {
  it('takes from the left what it gives to the right', () => {
    const slope = floorSlope(15 * Math.tan(rad(1)) * 100, 1500);
    expect(slope).toBeCloseTo(1, 10);
    // The left side high rolls the car to the right: a left wheel that stands square to the floor reads 1° less.
    expect(onLevelFloor({ value: -1, sd: 0.1 }, slope, 'left')).toEqual({ value: expect.closeTo(0, 10), sd: 0.1 });
    expect(onLevelFloor({ value: 1, sd: 0.1 }, slope, 'right').value).toBeCloseTo(0, 10);
  });
});

describe('a rough first toe', () => {
  const distances = { front: 1520, rear: 1500, diameter: 600 };
  const rods = { aim: 0.2, lead: 1.5, arm: 99.9, rods: 'behind', ratio: 16 } as const;
  it('a turn is 0.86° (Hyundai Santa Fe 2004; a 99.9 mm arm implied at 1.5 mm)', () => {
    expect(roughToe({ distances, ...rods }, { tape: 1 }).perTurn).toBeCloseTo(0.86, 2);
  });
  it('turns each rod by half of what is lacking, and the wheel straight by equal and opposite', () => {
    const { totalToe, turns, perTurn } = roughToe({ distances, ...rods, wheelOff: 16 }, { tape: 1 });
    expect(totalToe.value).toBeCloseTo(2 * lengthToToe(-10, 600), 10);
    const each = (0.2 - totalToe.value) / 2;
    // 16° at the steering wheel is 1° at the road wheels: level, they would point 1° to the left.
    expect(turns.LF.value * perTurn).toBeCloseTo(each + 1, 10);
    expect(turns.RF.value * perTurn).toBeCloseTo(each - 1, 10);
    expect(turns.LF.sd).toBeGreaterThan(0);
    const plain = roughToe({ distances, ...rods }, { tape: 1 }).turns;
    expect(plain.LF.value).toBeCloseTo(plain.RF.value, 12);
    expect((turns.LF.value + turns.RF.value) / 2).toBeCloseTo(plain.LF.value, 10);
  });
  it('rods behind the axle lengthen for toe-in, those ahead of it shorten', () => {
    const of = (side: 'ahead' | 'behind') => roughToe({ distances, ...rods, rods: side }, { tape: 1 }).turns.LF.value;
    expect(of('behind')).toBeGreaterThan(1);
    expect(of('ahead')).toBeCloseTo(-of('behind'), 12);
  });
  it('brings it there: the wheels turned by so much have the toe that was wanted', () => {
    const { turns, perTurn, totalToe } = roughToe({ distances, ...rods }, { tape: 1 });
    expect(totalToe.value + (turns.LF.value + turns.RF.value) * perTurn).toBeCloseTo(0.2, 10);
    expect(toeToLength(0.1, 600) * 2).toBeCloseTo(2.09, 2);
  });
  it.each([
    ['arm', { arm: 4 }, 'arm: 4 is not allowed'],
    ['lead', { lead: 0 }, 'lead: 0'],
    ['ratio', { ratio: 1 }, 'ratio: 1'],
    ['wheel', { wheelOff: 400 }, 'wheelOff: 400'],
    ['distance', { distances: { ...distances, front: -1520 } }, 'front: -1520'],
    ['diameter', { distances: { ...distances, diameter: 24 } }, 'diameter: 24'],
  ])('refuses a %s that cannot be', (_, wrong, message) => {
    expect(() => roughToe({ distances, ...rods, ...wrong }, { tape: 1 })).toThrow(message);
  });
});
