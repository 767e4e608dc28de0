/** A sweep against rotations by three.js, a general-purpose library that knows nothing of wheels, on 1,000 random axes. */
import { Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { axisFromSweep, casterFromSweep, type SweepEnd, saiFromSweep } from '../../core/index.ts';
import { between, stream } from '../tools/random-cars.ts';

const rad = (d: number) => (d * Math.PI) / 180;
const deg = (r: number) => (r * 180) / Math.PI;
const NONE = { camber: 0, turned: 0, roll: 0 };
const AXES = 1_000;
const CLOSE = 1e-9;

interface Axis {
  readonly caster: number;
  readonly sai: number;
}

/** What gauges show of a wheel of that camber straight ahead, turned about its steering axis by an angle; roll from `zero`. */
function read({ caster, sai }: Axis, camber: number, angle: number, zero: number): Required<SweepEnd> {
  const axis = new Vector3(-Math.tan(rad(caster)), -Math.tan(rad(sai)), 1).normalize();
  const turn = new Quaternion().setFromAxisAngle(axis, rad(angle));
  const lean = new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), -rad(camber));
  const spin = new Vector3(0, 1, 0).applyQuaternion(lean);
  // A line across the wheel, wherever the gauge was zeroed on it.
  const line = new Vector3(1, 0, 0).applyQuaternion(new Quaternion().setFromAxisAngle(spin, -rad(zero)));
  spin.applyQuaternion(turn);
  line.applyQuaternion(turn);
  const level = new Vector3(spin.y, -spin.x, 0).normalize();
  const up = new Vector3().crossVectors(level, spin);
  return {
    turned: -deg(Math.atan2(spin.x, spin.y)),
    camber: deg(Math.atan2(-spin.z, Math.hypot(spin.x, spin.y))),
    roll: deg(Math.atan2(line.dot(up), line.dot(level))),
  };
}

describe('a steering sweep, against quaternions', () => {
  const random = stream(1_414);
  const cases = Array.from({ length: AXES }, () => {
    const axis = { caster: between(random, -6, 14), sai: between(random, -2, 22) };
    const camber = between(random, -5, 5);
    const zero = between(random, -15, 15);
    const [out, back] = [between(random, 6, 30), -between(random, 6, 30)];
    return { axis, ends: [read(axis, camber, out, zero), read(axis, camber, back, zero)] as const };
  });

  it(`gives caster and SAI of ${AXES} axes within ${CLOSE}°, between any two places of the steering`, () => {
    for (const { axis, ends } of cases) {
      expect(Math.abs(ends[0].turned + ends[1].turned), 'not the same each way').toBeGreaterThan(0);
      const found = axisFromSweep(...ends, NONE);
      expect(Math.abs(found.caster.value - axis.caster)).toBeLessThan(CLOSE);
      expect(Math.abs(found.sai!.value - axis.sai)).toBeLessThan(CLOSE);
    }
  });

  it('gives caster without roll, where SAI is known', () => {
    for (const { axis, ends } of cases) {
      const [first, second] = ends.map(({ roll: _, ...end }) => end) as [SweepEnd, SweepEnd];
      const found = axisFromSweep(first, second, NONE, { value: axis.sai, sd: 0 });
      expect(Math.abs(found.caster.value - axis.caster)).toBeLessThan(CLOSE);
      expect(found.sai).toBeUndefined();
    }
  });

  it('is the same by the functions for equal angles', () => {
    for (const { axis } of cases) {
      const steer = 20;
      // The angle about the axis at which the turntable shows 20°.
      const at = (way: number) => {
        let angle = way * steer;
        for (let i = 0; i < 60; i++) angle -= read(axis, -1, angle, 0).turned - way * steer;
        return read(axis, -1, angle, 0);
      };
      const [out, back] = [at(1), at(-1)];
      expect(out.turned).toBeCloseTo(steer, 11);
      const sweep = { camberOut: out.camber, camberIn: back.camber, steer };
      expect(Math.abs(casterFromSweep({ ...sweep, sai: axis.sai }) - axis.caster)).toBeLessThan(CLOSE);
      const rolls = { rollOut: out.roll, rollIn: back.roll, caster: axis.caster };
      expect(Math.abs(saiFromSweep({ ...sweep, ...rolls }) - axis.sai)).toBeLessThan(CLOSE);
    }
  });

  it('has a ± that the scatter of 4,000 sweeps bears out', () => {
    const scatter = { camber: 0.05, turned: 0.3, roll: 0.1 };
    const draw = stream(77);
    const normal = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
    const off = (end: Required<SweepEnd>): SweepEnd => ({
      turned: end.turned + scatter.turned * normal(),
      camber: end.camber + scatter.camber * normal(),
      roll: end.roll + scatter.roll * normal(),
    });
    const axis = { caster: 5, sai: 13 };
    const [first, second] = [read(axis, -0.8, 18, 0), read(axis, -0.8, -22, 0)];
    const told = axisFromSweep(first, second, scatter);
    const seen = Array.from({ length: 4_000 }, () => axisFromSweep(off(first), off(second), NONE));
    for (const angle of ['caster', 'sai'] as const) {
      const mean = seen.reduce((sum, one) => sum + one[angle]!.value, 0) / seen.length;
      const sd = Math.sqrt(seen.reduce((sum, one) => sum + (one[angle]!.value - mean) ** 2, 0) / seen.length);
      expect(told[angle]!.sd / sd).toBeGreaterThan(0.93);
      expect(told[angle]!.sd / sd).toBeLessThan(1.07);
    }
  });
});

describe('the workshop’s factor beside it', () => {
  it('is 3 at ±10°, 2 at ±15° and 1.5 at ±20°; there it reads 2.6 % high', () => {
    const of = (steer: number) =>
      axisFromSweep({ turned: steer, camber: 0.5 }, { turned: -steer, camber: -0.5 }, NONE, { value: 0, sd: 0 });
    expect([10, 15, 20].map((steer) => of(steer).workshop.factor)).toEqual([3, 2, 1.5]);
    // 1.5/1.4619, the factor of small angles at ±20°.
    const { workshop, caster } = of(20);
    expect(workshop.caster).toBeCloseTo(1.5, 12);
    expect(workshop.error).toBeCloseTo(workshop.caster - caster.value, 12);
    expect(workshop.caster / caster.value - 1).toBeCloseTo(0.026, 3);
  });
});

describe('nonsense', () => {
  const end = { turned: 20, camber: 1 };
  it.each([
    ['a sweep of 0°', [end, end], 'turned: 0 is not allowed; allowed: two places of the steering at least 10° apart'],
    ['one of 6°', [end, { ...end, turned: 14 }], 'turned: 6 is not allowed'],
    [
      'a camber of 40°',
      [
        { ...end, camber: 40 },
        { ...end, turned: -20 },
      ],
      'first.camber: 40 is not allowed',
    ],
    ['an angle that is none', [end, { ...end, turned: Number.NaN }], 'second.turned: NaN is not allowed'],
  ] as const)('%s is refused', (_, [first, second], message) => {
    expect(() => axisFromSweep(first, second, NONE)).toThrow(message);
  });
});
