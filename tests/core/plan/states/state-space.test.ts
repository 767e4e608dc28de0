import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Settings } from '../../../../core/contract.ts';
import { StateSpace, TIE } from '../../../../core/plan/states/state-space.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

/** Two packs of the upper arm, of which the first says by how much the two may differ, mm. */
function packs(sizes: readonly number[], max: number, most: number): Adjuster[] {
  const pack = (id: string, at: string): Adjuster => ({
    ...{ id, kind: 'shim-pack', at, direction: [0, 1, 0], sizes, max, reference: 0 },
  });
  return [{ ...pack('front', 'upperFront'), pair: { with: 'rear', most } }, pack('rear', 'upperRear')];
}

/** The left front wheel's states with its packs standing like this; all of them may be moved, or the first alone. */
function statesOf(adjusters: readonly Adjuster[], current: Settings, movable = adjusters): StateSpace {
  const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
  const axle = { suspension, adjusters, steered: true };
  const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: axle, rear: axle };
  const [assembly] = compileCar(car);
  if (!assembly) throw new Error('a car without assemblies');
  return new StateSpace(assembly, [{ measured: { camber: 0 }, current, movable, ties: [] }]);
}

/** Of every state by how much the packs differ, in thousandths of a millimetre, and whether it is forbidden. */
function gapsOf(states: StateSpace): { gap: number; forbidden: boolean }[] {
  return Array.from({ length: states.count }, (_, state) => {
    const { front, rear } = states.settings(state)[0] as { front: number; rear: number };
    const forbidden = Number.isNaN(states.values[state * states.stride]);
    return { gap: Math.round(1000 * Math.abs(front - rear)), forbidden };
  });
}

describe('two packs that may differ by 3 mm', () => {
  const pair = packs([1], 8, 3);

  it.each([
    ['alike', { front: 2, rear: 2 }, 3],
    ['at their limit', { front: 5, rear: 2 }, 3],
    ['further apart, the first thinner', { front: 0, rear: 5 }, 5],
    ['further apart, the first thicker', { front: 7, rear: 1 }, 6],
  ])('that stand %s: no further apart than that or than they are', (_, stands, most) => {
    const all = [pair, pair.slice(0, 1)].flatMap((movable) => gapsOf(statesOf(pair, stands, movable)));
    for (const { gap, forbidden } of all) expect(forbidden, `${gap / 1000} mm apart`).toBe(gap > 1000 * most);
    expect(all.some(({ forbidden }) => forbidden)).toBe(true);
  });

  it('at their limit but for the noise of a binary fraction are at their limit', () => {
    // 0.4 − 0.1 is 0.30000000000000004.
    const all = gapsOf(statesOf(packs([0.1], 0.5, 0.3), { front: 0, rear: 0 }));
    for (const { gap, forbidden } of all) expect(forbidden).toBe(gap > 300);
    expect(all.filter(({ gap }) => gap === 300)).toHaveLength(6);
  });
});

it('some of all states, listed, are what they are among all, what the sides must agree in too', () => {
  const adjusters = packs([1], 4, 9);
  const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
  const tied: Adjuster = { ...rod('rod', 'tieInner', 2, 0.5), maxSideDifference: 3 };
  const axle = { suspension, adjusters: [...adjusters, tied], steered: true };
  const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: axle, rear: axle };
  const [assembly] = compileCar(car);
  const current = { front: 1, rear: 1, rod: 0.5 };
  // All numbers far from 0, so that one too many would show in what they range over.
  const measured = { camber: 30, caster: 30, toe: 30 };
  const stands = [{ measured, current, movable: axle.adjusters, ties: [tied] }];
  const all = new StateSpace(assembly!, stands);
  const some = Array.from({ length: 20 }, (_, i) => (i * 37 + 5) % all.count);
  const listed = new StateSpace(assembly!, stands, {
    digits: Uint16Array.from(some.flatMap((state) => all.axes.map((_, axis) => all.digit(state, axis)))),
    angles: Float64Array.from(some.flatMap((state) => [...all.near(state).slice(0, 3)])),
    slack: all.slack,
  });
  expect([listed.count, listed.stride]).toEqual([20, all.stride]);
  some.forEach((state, i) => {
    expect(listed.settings(i)).toEqual(all.settings(state));
    expect([...listed.near(i)]).toEqual([...all.near(state)]);
    expect([...listed.exact(i)]).toEqual([...all.exact(state)]);
    expect(listed.effort[i]).toBe(all.effort[state]);
  });
  const place = listed.placeOf('LF', TIE);
  expect(new Set(some.map((_, i) => listed.near(i)[place])).size).toBeGreaterThan(2);
  listed.ranges.forEach(([low, high], k) => {
    const numbers = some.map((state) => all.near(state)[k] as number);
    expect([low, high]).toEqual([Math.min(...numbers), Math.max(...numbers)]);
  });
});
