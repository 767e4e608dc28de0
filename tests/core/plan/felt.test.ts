/** What moves do beside what the windows judge, held against poses solved by the public functions. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Settings, Suspension } from '../../../core/contract.ts';
import { sideEffects, solveCorner } from '../../../core/index.ts';
import { FeltBy } from '../../../core/plan/felt.ts';
import { WHEEL_PREFERENCES } from '../../../core/plan/preferences.ts';
import { axesOf } from '../../../core/plan/states/axis.ts';
import { compileCar } from '../../../core/pose/car-model.ts';
import { eccentric, randomSuspension, rod, shims, stream } from '../../tools/random-cars.ts';

interface Wheel {
  readonly suspension: Suspension;
  readonly adjusters: readonly Adjuster[];
}

const wheelOf = (seed: number): Wheel => {
  const random = stream(seed);
  const suspension = randomSuspension(random, 'double-wishbone');
  const adjusters = [
    shims(random, 'front', 'upperFront', 8),
    { ...eccentric(random, 'cam', 'lowerRear'), zero: 'middle', range: [-90, 90], reference: 0 },
    rod('rod', 'tieInner', 4),
  ];
  return { suspension, adjusters };
};

function felt({ suspension, adjusters }: Wheel, to: Settings) {
  const axle = { suspension, adjusters, steered: true };
  const car = { id: 'a', label: 'A', wheel: { rimDiameter: 400 }, front: axle, rear: axle };
  const [assembly] = compileCar(car);
  const now = Object.fromEntries(adjusters.map(({ id, reference }) => [id, reference]));
  const { axes } = axesOf([{ measured: {}, current: now, movable: adjusters, ties: [] }]);
  const digits = axes.map(({ adjuster, positions, current }) =>
    adjuster.id in to ? positions.indexOf(to[adjuster.id]!) : current,
  );
  expect(digits).not.toContain(-1);
  return new FeltBy(assembly!, now, axes).at(digits);
}
const toeAt = ({ suspension, adjusters }: Wheel, to: Settings): number => {
  const pose = solveCorner(suspension, adjusters, to);
  return pose.reachable ? pose.toe : Number.NaN;
};
const travelAt = ({ suspension, adjusters }: Wheel, to: Settings) => {
  const { bumpSteer, camberGain } = sideEffects(suspension, adjusters, to);
  return { steers: Math.max(...bumpSteer!.map(Math.abs)), lean: camberGain![0] };
};

describe.each([1, 2, 3, 4, 5, 6])('wheel %i', (seed) => {
  const wheel = wheelOf(seed);
  const [pack, , link] = wheel.adjusters as [Adjuster, Adjuster, Adjuster];
  const before = travelAt(wheel, {});

  it('feels nothing where nothing is moved', () => {
    expect(felt(wheel, {})).toEqual({ undone: 0, bumpSteer: 0, camberGain: 0 });
  });

  it('of one move feels what its pose has: more bump steer, less camber gain, and nothing that is undone', () => {
    for (const to of [{ front: 0 }, { front: pack.max }, { cam: -90 }, { cam: 90 }] as Settings[]) {
      const { undone, bumpSteer, camberGain } = felt(wheel, to);
      const after = travelAt(wheel, to);
      expect(undone).toBeCloseTo(0, 12);
      expect(bumpSteer).toBeCloseTo(Math.max(0, after.steers - before.steers), 9);
      expect(camberGain).toBeCloseTo(Math.max(0, after.lean - before.lean), 9);
    }
  });

  it('between the positions that are posed it goes along with them', () => {
    for (const turns of [-3.5, -1.5, 0.5, 2.5]) {
      const after = travelAt(wheel, { rod: turns });
      expect(felt(wheel, { rod: turns }).bumpSteer).toBeCloseTo(Math.max(0, after.steers - before.steers), 3);
    }
  });

  it('what the cam does to toe and the rod takes back is undone, the smaller of the two', () => {
    const start = toeAt(wheel, {});
    const byCam = toeAt(wheel, { cam: 90 }) - start;
    const turns = [-1, 1].map((way) => 3 * way).find((way) => (toeAt(wheel, { rod: way }) - start) * byCam < 0)!;
    const byRod = toeAt(wheel, { [link.id]: turns }) - start;
    const { undone } = felt(wheel, { cam: 90, rod: turns });
    expect(undone).toBeCloseTo(Math.min(Math.abs(byCam), Math.abs(byRod)), 9);
    // Wherever the rod goes, at the positions that are posed and between them.
    for (let there = turns / 6; Math.abs(there) <= 4; there += turns / 6) {
      const back = toeAt(wheel, { [link.id]: there }) - start;
      expect(felt(wheel, { cam: 90, rod: there }).undone).toBeCloseTo(Math.min(Math.abs(byCam), Math.abs(back)), 2);
    }
    // Both the same way: nothing is taken back.
    expect(felt(wheel, { cam: 90, rod: -turns }).undone).toBeCloseTo(0, 9);
  });
});

it('each of them weighs something, as much as any liking, and none is named twice', () => {
  expect(new Set(WHEEL_PREFERENCES.map(({ of }) => of))).toEqual(new Set(['undone', 'bumpSteer', 'camberGain']));
  for (const { weight, full } of WHEEL_PREFERENCES) {
    expect(weight).toBeGreaterThan(0);
    expect(weight).toBeLessThanOrEqual(0.1);
    expect(full).toBeGreaterThan(0);
  }
});
