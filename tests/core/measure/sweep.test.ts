/** The wheel is turned about its steering axis with a rotation matrix of its own here, and read as a gauge reads it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { casterFromSweep, saiFromSweep } from '../../../core/measure/sweep.ts';

type V = [number, number, number];
const rad = (d: number) => (d * Math.PI) / 180;
const deg = (r: number) => (r * 180) / Math.PI;

/** Rodrigues' rotation of v about unit k. */
function turned(v: V, k: V, a: number): V {
  const dot = v[0] * k[0] + v[1] * k[1] + v[2] * k[2];
  const cross: V = [k[1] * v[2] - k[2] * v[1], k[2] * v[0] - k[0] * v[2], k[0] * v[1] - k[1] * v[0]];
  return [0, 1, 2].map((i) => v[i]! * Math.cos(a) + cross[i]! * Math.sin(a) + k[i]! * dot * (1 - Math.cos(a))) as V;
}

/** Camber and roll of a wheel that has been steered until the turntable shows `steer`, + out. */
function atSteer(caster: number, sai: number, camber: number, steer: number) {
  const raw: V = [-Math.tan(rad(caster)), -Math.tan(rad(sai)), 1];
  const size = Math.hypot(...raw);
  const k = raw.map((x) => x / size) as V;
  const spin: V = [0, Math.cos(rad(camber)), -Math.sin(rad(camber))];
  const forward: V = [1, 0, 0];
  const table = (a: number) => deg(Math.atan2(-turned(spin, k, a)[0], turned(spin, k, a)[1]));
  let [low, high] = [rad(-80), rad(80)];
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (table(middle) < steer) low = middle;
    else high = middle;
  }
  const s = turned(spin, k, low);
  const f = turned(forward, k, low);
  const gamma = Math.asin(-s[2]);
  return { camber: deg(gamma), roll: deg(Math.asin(f[2] / Math.cos(gamma))) };
}

const caster = fc.double({ min: -5, max: 12, noNaN: true });
const sai = fc.double({ min: 0, max: 20, noNaN: true });
const camber = fc.double({ min: -4, max: 4, noNaN: true });
const steer = fc.double({ min: 8, max: 25, noNaN: true });

describe('a steering sweep', () => {
  it('gives caster back exactly with SAI, and within 0.01° of a road car without', () => {
    fc.assert(
      fc.property(caster, sai, camber, steer, (t, s, g, d) => {
        const camberOut = atSteer(t, s, g, d).camber;
        const camberIn = atSteer(t, s, g, -d).camber;
        expect(casterFromSweep({ camberOut, camberIn, steer: d, sai: s })).toBeCloseTo(t, 8);
      }),
    );
    const [out, inn] = [atSteer(7, 14, -1, 20).camber, atSteer(7, 14, -1, -20).camber];
    expect(Math.abs(casterFromSweep({ camberOut: out, camberIn: inn, steer: 20 }) - 7)).toBeLessThan(0.01);
  });

  it('takes the least and the most steer, and the most camber', () => {
    for (const d of [5, 45]) {
      const [camberOut, camberIn] = [atSteer(6, 12, -1, d).camber, atSteer(6, 12, -1, -d).camber];
      expect(casterFromSweep({ camberOut, camberIn, steer: d, sai: 12 })).toBeCloseTo(6, 8);
    }
    // (sin 30° + sin 30°)/(sin 30°·2 cos 30°) = 2/√3
    const most = casterFromSweep({ camberOut: 30, camberIn: -30, steer: 30 });
    expect(most).toBeCloseTo(deg(Math.atan(2 / Math.sqrt(3))), 10);
  });

  it('gives SAI back exactly with camber and caster', () => {
    fc.assert(
      fc.property(caster, sai, camber, steer, (t, s, g, d) => {
        const [out, inn] = [atSteer(t, s, g, d), atSteer(t, s, g, -d)];
        const found = saiFromSweep({
          rollOut: out.roll,
          rollIn: inn.roll,
          steer: d,
          camberOut: out.camber,
          camberIn: inn.camber,
          caster: t,
        });
        expect(found).toBeCloseTo(s, 8);
      }),
    );
  });

  it('gives SAI within 0.2° from the rolls alone on a road car', () => {
    const [out, inn] = [atSteer(5, 12, -0.5, 20), atSteer(5, 12, -0.5, -20)];
    expect(Math.abs(saiFromSweep({ rollOut: out.roll, rollIn: inn.roll, steer: 20 }) - 12)).toBeLessThan(0.2);
  });
});
