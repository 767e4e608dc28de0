/** The angles of every combination against the prediction, which solves each of them in full. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Corner, Settings, Suspension, WheelReading } from '../../../../core/contract.ts';
import { predictReading } from '../../../../core/index.ts';
import type { CornerStand } from '../../../../core/plan/states/corner-stand.ts';
import { StateSpace, TIE } from '../../../../core/plan/states/state-space.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { CAMBER, CASTER, TOE } from '../../../../core/pose/mechanism.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

const slide = (range: readonly [number, number], step: number): Adjuster => ({
  id: 'slide',
  kind: 'slide',
  at: 'upperFront',
  direction: [0, 1, 0],
  step,
  range,
  reference: 0,
});
const suspensionOf = (kind: string): Suspension => ({ kind, points: LAYOUTS[kind] ?? {}, camber: -0.5, toe: 0.1 });
function carOf(front: readonly Adjuster[], rear: readonly Adjuster[] = []): Car {
  return {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: { suspension: suspensionOf('double-wishbone'), adjusters: front, steered: true },
    rear: { suspension: suspensionOf('beam-linked'), adjusters: rear, steered: false },
  };
}
const READ: WheelReading = { camber: -1.1, caster: 3.2, toe: 0.35 };

/** All states of some wheels that are solved together; all adjusters of an axle may be moved. */
function statesOf(car: Car, corners: readonly Corner[], current: Settings, ties: readonly Adjuster[] = []) {
  const assembly = compileCar(car).find((one) => one.corners.includes(corners[0] as Corner));
  if (!assembly) throw new Error('no such wheels');
  const { adjusters } = car[corners[0]?.endsWith('F') ? 'front' : 'rear'];
  const stands = corners.map((): CornerStand => ({ measured: READ, current, movable: adjusters, ties }));
  return new StateSpace(assembly, stands);
}

/** Compares every state with the prediction; says how many have a pose and how many do not. */
function compare(car: Car, corners: readonly Corner[], states: StateSpace, current: Settings) {
  const seen = { posed: 0, lost: 0, interpolated: 0 };
  const reading = Object.fromEntries(corners.map((corner) => [corner, READ]));
  const from = Object.fromEntries(corners.map((corner) => [corner, current]));
  for (let state = 0; state < states.count; state++) {
    const settings = states.settings(state);
    const to = Object.fromEntries(corners.map((corner, side) => [corner, settings[side] as Settings]));
    const predicted = predictReading(car, reading, from, to);
    const [near, exact] = [states.near(state), states.exact(state)];
    for (const corner of corners) {
      const wheel = predicted[corner];
      if (!wheel) {
        seen.lost++;
        expect([...near].every(Number.isNaN)).toBe(true);
        expect([...exact].every(Number.isNaN)).toBe(true);
        continue;
      }
      seen.posed++;
      for (const [angle, value] of [
        [CAMBER, wheel.camber],
        [CASTER, wheel.caster],
        [TOE, wheel.toe],
      ] as const) {
        const at = states.placeOf(corner, angle);
        expect(exact[at]).toBeCloseTo(value ?? Number.NaN, 8);
        const off = Math.abs((near[at] ?? Number.NaN) - (exact[at] ?? Number.NaN));
        expect(off).toBeLessThanOrEqual(states.slack);
        if (off > 0) seen.interpolated++;
      }
    }
  }
  return seen;
}

describe('the angles of every combination', () => {
  it.each([0, 4, -3])(
    'of a slide and a rod of many turns that stands at %d: within the slack, which is small',
    (at) => {
      const car = carOf([slide([-6, 6], 4), rod('rod', 'tieInner', 6, 0.5)]);
      const current = { slide: -2, rod: at };
      const states = statesOf(car, ['LF'], current);
      expect(states.count).toBe(25 * 4);
      const seen = compare(car, ['LF'], states, current);
      expect(seen.lost).toBe(0);
      expect(seen.interpolated).toBeGreaterThan(100);
      // Six nodes leave next to nothing of a smooth curve.
      expect(states.slack).toBeGreaterThanOrEqual(1e-9);
      expect(states.slack).toBeLessThan(1e-3);
    },
  );

  it('of few positions are solved, each', () => {
    const car = carOf([slide([-6, 6], 3), rod('rod', 'tieInner', 1, 0.5)]);
    const states = statesOf(car, ['RF'], { slide: 3, rod: 0.5 });
    expect(compare(car, ['RF'], states, { slide: 3, rod: 0.5 })).toEqual({ posed: 25, lost: 0, interpolated: 0 });
    expect(states.slack).toBeLessThanOrEqual(1e-9);
  });

  it('are none where the links do not reach, on a line that ends on the way too', () => {
    // A tie rod of 350 mm that grows and shrinks by 240.
    const car = carOf([slide([0, 4], 4), { ...rod('rod', 'tieInner', 60, 5), lead: 4 }]);
    const current = { slide: 0, rod: 0 };
    const states = statesOf(car, ['LF'], current);
    const seen = compare(car, ['LF'], states, current);
    expect(seen.lost).toBeGreaterThan(2);
    expect(seen.posed).toBeGreaterThan(10);
  });

  it('of both wheels of a rigid axle stand side by side, and so do what left and right must agree in', () => {
    const lower = { ...rod('lower', 'lowerBody', 1, 0.5), maxSideDifference: 2 };
    const upper = { ...rod('upper', 'upperBody', 0.5, 0.5), maxSideDifference: 3, lead: 2 };
    const car = carOf([], [lower, upper]);
    const current = { lower: 0.5, upper: 0 };
    const states = statesOf(car, ['LR', 'RR'], current, [lower, upper]);
    expect(states.count).toBe(15 ** 2);
    // Three angles a wheel, two of the body, two ties a wheel.
    expect(states.stride).toBe(12);
    expect(compare(car, ['LR', 'RR'], states, current).lost).toBe(0);
    for (let state = 0; state < states.count; state++) {
      const numbers = states.near(state);
      states.settings(state).forEach((settings, side) => {
        const corner = side === 0 ? 'LR' : 'RR';
        expect(numbers[states.placeOf(corner, TIE)]).toBeCloseTo(1.5 * (settings.lower as number), 9);
        expect(numbers[states.placeOf(corner, TIE + 1)]).toBeCloseTo(2 * (settings.upper as number), 9);
      });
    }
    const places = (['LR', 'RR'] as const).flatMap((corner) =>
      [0, 1, 2, TIE, TIE + 1].map((k) => states.placeOf(corner, k)),
    );
    expect([...places].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 8, 9, 10, 11]);
    expect([3, 4].map((k) => states.placeOf('RR', k))).toEqual([6, 7]);
  });

  it('what is not moved agrees with the other side in where it stands', () => {
    const held = { ...rod('held', 'tieInner', 6), maxSideDifference: 3 };
    const car = carOf([held]);
    const assembly = compileCar(car)[0];
    if (!assembly) throw new Error('no wheels');
    for (const [current, value] of [
      [{ held: 2 }, 3],
      [{}, 0],
    ] as const) {
      const states = new StateSpace(assembly, [{ measured: READ, current, movable: [], ties: [held] }]);
      expect(states.near(0)[states.placeOf('LF', 3)]).toBeCloseTo(value, 9);
    }
  });

  it('an angle that was not read counts from 0', () => {
    const car = carOf([rod('rod', 'tieInner', 1, 0.5)]);
    const assembly = compileCar(car)[0];
    if (!assembly) throw new Error('no wheels');
    const states = new StateSpace(assembly, [
      { measured: {}, current: { rod: 0.5 }, movable: car.front.adjusters, ties: [] },
    ]);
    const still = Array.from({ length: states.count }, (_, i) => i).find((i) => states.settings(i)[0]?.rod === 0.5);
    for (const angle of states.exact(still ?? -1)) expect(angle).toBeCloseTo(0, 9);
  });

  it('are refused where there are more of them than can be looked at', () => {
    const fine = (id: string, link: string) => ({ ...rod(id, link, 100, 0.1) });
    const car = carOf([fine('rod', 'tieInner'), fine('second', 'tieOuter')], []);
    expect(() => statesOf(car, ['LF'], {})).toThrow('4000000 combinations a corner');
  });

  it('are refused where the adjusters stand so that there is no pose', () => {
    const car = carOf([rod('rod', 'tieInner', 400, 10)]);
    expect(() => statesOf(car, ['LF'], { rod: 400 })).toThrow('settings.LF');
  });
});
