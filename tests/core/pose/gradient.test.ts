/** What numbers gain by parameters and by points, against central differences of the full solve. */
import { describe, expect, it } from 'vitest';
import type { Side } from '../../../core/adjuster/of-corner.ts';
import type { Suspension, Vec3 } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/index.ts';
import { changeByPoint } from '../../../core/pose/by-point.ts';
import { applyChange, type Change, changeOf } from '../../../core/pose/change.ts';
import { Mechanism } from '../../../core/pose/mechanism.ts';
import { between, type Random, randomSuspension, stream } from '../../tools/random-cars.ts';
import { shortOrLong, upTo } from '../../tools/seeds.ts';

/** One corner, or both sides of a rigid axle: of what it has once the right one has nothing. */
function sidesOf(random: Random, kind: string): Side[] {
  const left = { suspension: randomSuspension(random, kind), adjusters: [] };
  const { rigidAxle } = suspensionKinds[kind] ?? {};
  if (!rigidAxle) return [left];
  const { points, ...right } = randomSuspension(random, kind);
  const own = Object.entries(points).filter(([name]) => !rigidAxle.once.includes(name));
  return [left, { suspension: { ...right, points: Object.fromEntries(own) }, adjusters: [] }];
}

function numbersAt(model: Mechanism, params: Float64Array): number[] {
  const out = new Float64Array(model.numbers);
  expect(model.angles(params.slice(), out)).toBe(true);
  return [...out];
}

/** mm or degrees: half of it takes the difference's own error to a sixteenth, until that of rounding is the greater. */
const STEP = 2e-3;

/** By central differences, of the 4th order in h. */
function differences(numbersBy: (by: number) => number[], h: number): number[] {
  const [a, b, c, d] = [-2 * h, -h, h, 2 * h].map(numbersBy) as [number[], number[], number[], number[]];
  return a.map((_, k) => (a[k]! - 8 * b[k]! + 8 * c[k]! - d[k]!) / (12 * h));
}

/** What adjusters of any kind may do: points elsewhere, links longer, wheels leaning, a strut tilted. */
function anyChange(random: Random, { linkage }: Mechanism): Change {
  const any = () => between(random, -2, 2);
  const all = linkage.wheels.map((wheel) =>
    changeOf(wheel, {
      shift: Object.fromEntries([...wheel.slots.keys()].map((point) => [point, [any(), any(), any()] as const])),
      lengthen: Object.fromEntries([...wheel.lengths.keys()].map((link) => [link, any()])),
      spin: { camber: any(), toe: any() },
      add: { camber: any(), caster: any(), toe: any() },
      tilt: wheel.normals.length > 0 ? any() : 0,
    }),
  );
  return { at: all.flatMap(({ at }) => at), by: all.flatMap(({ by }) => by) };
}

function changed({ linkage }: Mechanism, change: Change): Float64Array {
  const params = linkage.reference.slice();
  applyChange(params, change);
  return params;
}

function gradientAt(model: Mechanism, params: Float64Array): Float64Array {
  const solved = params.slice();
  expect(model.angles(solved, new Float64Array(model.numbers))).toBe(true);
  const gradient = model.gradient(solved);
  if (!gradient) throw new Error('a pose that is not held');
  return gradient;
}

const close = (found: number, expected: number): void => {
  expect(Math.abs(found - expected)).toBeLessThan(1e-7 + 1e-6 * Math.abs(expected));
};

describe.each(Object.keys(suspensionKinds))('%s', (kind) => {
  it.each(upTo(shortOrLong(3, 20)))('gains by each parameter what solving anew says, car %i', (seed) => {
    const random = stream(seed * 7919 + kind.length);
    const model = new Mechanism(sidesOf(random, kind));
    const params = changed(model, anyChange(random, model));
    // The normals of a clamped strut are worked out anew as it is solved.
    const worked = new Set(model.linkage.wheels.flatMap(({ normals }) => normals.flatMap((n) => [n, n + 1, n + 2])));
    const gradient = gradientAt(model, params);
    params.forEach((_, slot) => {
      if (worked.has(slot)) return;
      const by = (off: number) =>
        numbersAt(
          model,
          params.map((x, at) => (at === slot ? x + off : x)),
        );
      differences(by, STEP).forEach((expected, k) => {
        close(gradient[k * params.length + slot]!, expected);
      });
    });
  });

  it.each(upTo(shortOrLong(3, 20)))('gains by each coordinate what the car built so says, car %i', (seed) => {
    const random = stream(seed * 104729 + kind.length);
    const sides = sidesOf(random, kind);
    const model = new Mechanism(sides);
    const off = anyChange(random, model);
    const params = changed(model, off);
    const gradient = gradientAt(model, params);
    sides.forEach(({ suspension }, side) => {
      for (const point of Object.keys(suspension.points)) {
        for (const axis of [0, 1, 2]) {
          const by = (step: number) => {
            const moved = new Mechanism(sides.map((one, i) => (i === side ? nudged(one, point, axis, step) : one)));
            return numbersAt(moved, changed(moved, off));
          };
          const change = changeByPoint(model.linkage, side, point, axis);
          differences(by, STEP).forEach((expected, k) => {
            close(
              change.at.reduce((sum, at, i) => sum + gradient[k * params.length + at]! * change.by[i]!, 0),
              expected,
            );
          });
        }
      }
    });
  });
});

function nudged({ suspension, adjusters }: Side, point: string, axis: number, by: number): Side {
  const at = suspension.points[point]!.map((x, i) => (i === axis ? x + by : x)) as unknown as Vec3;
  const moved: Suspension = { ...suspension, points: { ...suspension.points, [point]: at } };
  return { suspension: moved, adjusters };
}
