/** What the reach picture shows of a corner by a chart, whose places are plain sums. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, PlanRequest } from '../../../../core/contract.ts';
import { reachOf } from '../../../../core/index.ts';

const chart = (id: string, perStep: Readonly<Record<string, number>>, range: readonly [number, number]): Adjuster => ({
  id,
  kind: 'effect-table',
  perStep,
  range,
  reference: 0,
});
const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const lean = chart('lean', { camber: 0.2, caster: 0.05 }, [-3, 4]);
const trail = chart('trail', { caster: 0.3, toe: 0.02 }, [-2, 2]);
const car: Car = {
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { suspension: bare, adjusters: [lean, trail], steered: true },
  rear: { suspension: bare, adjusters: [chart('turn', { toe: 0.1, camber: -0.01 }, [-30, 30])], steered: false },
};
const reading = { LF: { camber: -1, caster: 3, toe: 0.1 }, LR: { camber: -0.5, toe: 0.2 } };
const ask = (spec: PlanRequest['spec'], more: Partial<PlanRequest> = {}): PlanRequest => ({
  car,
  spec,
  reading,
  settings: {},
  ...more,
});
const near = (value: number) => expect.closeTo(value, 9);

/** The marks with as much room again on each side, half a degree at the least, no further than the reach. */
function view(marks: readonly number[], [least, most]: readonly [number, number]): [number, number] {
  const [first, last] = [Math.min(...marks), Math.max(...marks)];
  const room = Math.max(0.5, last - first);
  return [Math.max(first - room, Math.min(first, least)), Math.min(last + room, Math.max(last, most))];
}

describe('the reach of a wheel with caster', () => {
  const extent = [
    [3 - 3 * 0.05 - 2 * 0.3, 3 + 4 * 0.05 + 2 * 0.3],
    [-1 - 3 * 0.2, -1 + 4 * 0.2],
  ] as const;

  it('has its marks, its extent and all its places', () => {
    const spec = { front: { camber: { low: -0.9, high: -0.7 }, caster: { low: 3.2, high: 3.4 } } };
    const reach = reachOf(ask(spec), 'LF');
    expect(reach).toMatchObject({ corner: 'LF', across: 'caster', adjusters: 2, found: [3, -1] });
    expect(reach.planned).toBeUndefined();
    expect(reach.windows).toEqual([spec.front.caster, spec.front.camber]);
    expect(reach.extent).toEqual(extent.map((range) => range.map(near)));
    expect(reach.view).toEqual([view([3.2, 3.4, 3], extent[0]).map(near), view([-0.9, -0.7, -1], extent[1]).map(near)]);
    expect(reach.withToe).toBeUndefined();
    const places = Array.from({ length: 40 }, (_, i) => [i % 8, Math.floor(i / 8)] as const)
      .map(([x, y]) => [3 + (x - 3) * 0.05 + (y - 2) * 0.3, -1 + (x - 3) * 0.2] as const)
      .filter((place) =>
        place.every((z, axis) => z >= (reach.view[axis]?.[0] ?? 9) - 1e-9 && z <= (reach.view[axis]?.[1] ?? -9) + 1e-9),
      );
    // All of them are far enough from one another to be drawn.
    const sorted = (all: readonly (readonly number[])[]) =>
      all.map((one) => one.map((x) => x.toFixed(6)).join()).sort();
    expect(sorted(reach.all.places)).toEqual(sorted(places));
    expect(reach.all.inWindow).toBe(true);
    for (const axis of [0, 1] as const) {
      expect(reach.all.within[axis]).toBeCloseTo(((reach.view[axis]?.[1] ?? 0) - (reach.view[axis]?.[0] ?? 0)) / 64, 6);
    }
  });

  it.each([
    [{ low: -0.9, high: -0.75 }, true],
    [{ low: -0.95, high: -0.85 }, false],
    [{ low: -0.2, high: 0 }, true],
    [{ low: -0.1, high: 0 }, false],
  ])('camber in %j can be reached: %s', (camber, inWindow) => {
    expect(reachOf(ask({ front: { camber } }), 'LF').all.inWindow).toBe(inWindow);
    expect(reachOf(ask({ front: { left: { camber } } }), 'LF').all.inWindow).toBe(inWindow);
  });

  it('shows apart what has toe in its window', () => {
    const toe = { low: 0.05, high: 0.125 };
    const { withToe, all } = reachOf(ask({ front: { toe, caster: { low: 3.5, high: 3.55 } } }), 'LF');
    // Trail 1 or less high and −2 left out: caster 3.3 + lean at the most, where 3.5 is reached with lean 4.
    expect(withToe?.places.length).toBeLessThan(all.places.length);
    expect(all.inWindow).toBe(true);
    expect(withToe?.inWindow).toBe(true);
    const narrow = reachOf(ask({ front: { toe: { low: 0.05, high: 0.101 }, caster: { low: 3.5, high: 3.55 } } }), 'LF');
    expect(narrow.withToe?.inWindow).toBe(false);
    const half = reachOf(
      ask({ front: { totalToe: { low: 0.1, high: 0.202 }, caster: { low: 3.5, high: 3.55 } } }),
      'LF',
    );
    expect(half.withToe).toEqual(narrow.withToe);
  });

  it('is of what may be moved, with the mark of where a plan puts it', () => {
    const locked = [{ corner: 'LF', adjuster: 'lean' }] as const;
    const to = { LF: { trail: 2 } };
    const reach = reachOf(ask({}, { locked }), 'LF', to);
    expect(reach.adjusters).toBe(1);
    expect(reach.planned).toEqual([near(3.6), near(-1)]);
    expect(reach.all.places.length).toBeLessThanOrEqual(5);
    expect(reach.extent[1]).toEqual([near(-1), near(-1)]);
    // Never nothing: half a degree where there is less to see.
    expect(reach.view[1]).toEqual([near(-1.25), near(-0.75)]);
    expect(reach.windows).toEqual([undefined, undefined]);
    expect(reach.all.inWindow).toBe(true);
  });
});

describe('the reach of a wheel without caster', () => {
  it('is about toe', () => {
    const totalToe = { low: 0.2, high: 0.6 };
    const reach = reachOf(ask({ rear: { totalToe } }), 'LR');
    expect(reach).toMatchObject({ across: 'toe', found: [0.2, -0.5], windows: [{ low: 0.1, high: 0.3 }, undefined] });
    expect(reach.extent[0]).toEqual([near(0.2 - 3), near(0.2 + 3)]);
    expect(reach.view[0]).toEqual([near(0.1 - 0.5), near(0.3 + 0.5)]);
    expect(reach.withToe).toBeUndefined();
  });

  it.each(['LF', 'RF'] as const)('%s cannot be drawn where camber was not read', (corner) => {
    const request = ask({}, { reading: { [corner]: { toe: 0.1 } } });
    expect(() => reachOf(request, corner)).toThrow(`reading.${corner}.camber`);
    expect(() => reachOf(ask({}, { reading: { [corner]: { camber: 0.1 } } }), corner)).toThrow(`reading.${corner}.toe`);
  });
});
