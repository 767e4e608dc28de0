/** What an angle is and which way it counts, as those say it who define it: a source beside each. */
import { Vector3 } from 'three';
import { describe, expect, it, test } from 'vitest';
import type { Suspension } from '../../core/contract.ts';
import { spinAxis } from '../../core/geometry/wheel-angles.ts';
import { assess, axleAngles, casterFromSweep, solveCorner, toeFromStrings } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';

const deg = (r: number) => (r * 180) / Math.PI;

describe('toe (ISO 8855:2011, 7.1.6 and 7.1.7: static toe, toe-in positive; total toe is the sum)', () => {
  const parallel = (LF: number, RF: number) =>
    toeFromStrings({
      wheels: { LF: { ahead: 100 + LF, behind: 100 }, RF: { ahead: 100 + RF, behind: 100 } },
      diameter: 400,
    });
  it('is + where the front of the wheel is nearer the middle, on either side', () => {
    const { toe, totalToe } = parallel(2, 3);
    expect(toe.LF!.value).toBeGreaterThan(0);
    expect(toe.RF!.value).toBeGreaterThan(0);
    expect(totalToe.front!.value).toBeCloseTo(toe.LF!.value + toe.RF!.value, 12);
    expect(axleAngles({ toe: 0.1 }, { toe: 0.25 }).totalToe).toBeCloseTo(0.35, 12);
  });
});

describe('camber (ISO 8855:2011 projects it about the x axis of the car, a gauge reads the tilt from the vertical)', () => {
  /** Of the wheel's plane, seen along the car. */
  const projected = (spin: readonly [number, number, number]): number => deg(Math.atan2(-spin[2], spin[1]));
  /** Between the spin axis and the floor. */
  const byGauge = (spin: readonly [number, number, number]): number =>
    -deg(Math.asin(new Vector3(...spin).dot(new Vector3(0, 0, 1))));
  test.each([
    [-2, 0.3],
    [1.5, -0.5],
  ])('at camber %d, toe %d both agree to far below 0.001°', (camber, toe) => {
    const spin = spinAxis(camber, toe);
    expect(byGauge(spin)).toBeCloseTo(camber, 10);
    expect(Math.abs(projected(spin) - byGauge(spin))).toBeLessThan(1e-4);
  });
  it('in a steering sweep they do not, and the sweep goes by the gauge', () => {
    const spin = spinAxis(2, 20);
    expect(projected(spin) - byGauge(spin)).toBeGreaterThan(0.1);
  });
});

describe('caster (US Army TM 9-8000, ch. 33: positive where the top leans to the rear)', () => {
  const { points, kind } = starters.find((one) => one.kind === 'double-wishbone')!;
  const at = (back: number): number => {
    const [x, y, z] = points.upperBall as unknown as [number, number, number];
    const suspension = { kind, points: { ...points, upperBall: [x - back, y, z] }, camber: 0, toe: 0 };
    const pose = solveCorner(suspension as unknown as Suspension, [], {});
    if (!pose.reachable) throw new Error('no pose');
    return pose.caster!;
  };
  it('grows as the upper ball joint goes back', () => {
    expect(at(10)).toBeGreaterThan(at(0));
    expect(at(-200)).toBeLessThan(0);
  });
  it('is + in a sweep where the wheel turned out leans out more', () => {
    expect(casterFromSweep({ camberOut: 1, camberIn: -1, steer: 20 })).toBeGreaterThan(0);
    expect(casterFromSweep({ camberOut: -1, camberIn: 1, steer: 20 })).toBeLessThan(0);
  });
});

describe('what belongs to an axle', () => {
  it('cross is left − right (makers’ texts)', () => {
    expect(axleAngles({ camber: -0.2, caster: 4 }, { camber: -0.7, caster: 4.5 })).toMatchObject({
      crossCamber: expect.closeTo(0.5, 12),
      crossCaster: -0.5,
    });
  });
  it('the thrust angle is (left rear − right rear)/2, + to the right (Mercury 2004; Subaru Impreza 2003 has the opposite sign)', () => {
    const [LR, RR] = [{ toe: 0.3 }, { toe: 0.1 }];
    const mercury = (LR.toe - RR.toe) / 2;
    expect(axleAngles(LR, RR).thrustAngle).toBeCloseTo(mercury, 12);
    const { angles } = assess({ LR, RR }, { rear: { thrustAngle: { low: -0.2, high: 0.2 } } });
    expect(angles.find(({ angle }) => angle === 'thrustAngle')!.value).toBeCloseTo(mercury, 12);
  });
});
