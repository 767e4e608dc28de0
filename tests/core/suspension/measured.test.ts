/** Lengths that were measured of a layout: as the points have them, how they change, and the nearest points that have them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../core/contract.ts';
import { pointsFromTape } from '../../../core/index.ts';
import { startersFor } from '../../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../../core/starters/starter.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';
import { gradientIn, lengthIn, lengthsOf, pointsWith } from '../../../core/suspension/tape/measure.ts';

type Points = Readonly<Record<string, Vec3>>;
const kinds = Object.keys(tapeLayouts);
const ANGLES = { caster: 4, camber: -0.5, toe: 0.1 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const typical = (kind: string): Points => suspensionFromStarter(startersFor(kind, 'front')[0]!, 'front').points;

const far = (a: Points, b: Points): number =>
  Math.sqrt(
    Object.keys(a).reduce((sum, name) => sum + a[name]!.reduce((own, x, k) => own + (x - b[name]![k]!) ** 2, 0), 0),
  );

describe.each(kinds)('%s', (kind) => {
  const lengths = lengthsOf(kind);

  it('has in the points from a tape the lengths that the tape had: each is measured where its label and its ends say', () => {
    const { caster: _, ...ofLinks } = ANGLES;
    const { points, used } = pointsFromTape({ ...(kind === 'five-link' ? ofLinks : ANGLES), kind });
    expect(lengths.length).toBeGreaterThan(15);
    for (const one of lengths) expect(lengthIn(one, points), one.name).toBeCloseTo(used[one.name]!, 9);
  });

  it('changes with the points as its gradient says: against a central difference', () => {
    const points = typical(kind);
    for (const one of lengths) {
      const gradient = gradientIn(one, points);
      for (const name of Object.keys(points)) {
        for (const k of [0, 1, 2]) {
          const by = (h: number): Points => ({
            ...points,
            [name]: points[name]!.map((x, i) => (i === k ? x + h : x)) as unknown as Vec3,
          });
          const slope = (lengthIn(one, by(0.01)) - lengthIn(one, by(-0.01))) / 0.02;
          expect(gradient[name]?.[k] ?? 0, `${one.name} by ${name}`).toBeCloseTo(slope, 6);
        }
      }
    }
  });

  it('comes back of the nearest points within 1e-9, whatever was measured', () => {
    let count = 0;
    fc.assert(
      fc.property(
        fc.subarray([...lengths]),
        fc.array(between(-25, 25), { minLength: 40, maxLength: 40 }),
        (some, off) => {
          const points = typical(kind);
          const measured = Object.fromEntries(some.map((one, i) => [one.name, lengthIn(one, points) + off[i]!]));
          let there: Points;
          try {
            there = pointsWith(points, kind, measured);
          } catch (error) {
            // A height or two lengths that cannot go together.
            expect(error).toHaveProperty('rule', { is: 'near-layout' });
            return;
          }
          count++;
          for (const one of some)
            expect(Math.abs(lengthIn(one, there) - measured[one.name]!), one.name).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 60, seed: 20261127 },
    );
    expect(count).toBeGreaterThan(55);
  });

  it('moves the points no further than it must: others that have the same lengths are further off', () => {
    const points = typical(kind);
    const some = lengths.filter((_, i) => i % 3 === 0);
    const measured = Object.fromEntries(some.map((one, i) => [one.name, lengthIn(one, points) + (i % 2 ? 12 : -9)]));
    const nearest = pointsWith(points, kind, measured);
    fc.assert(
      fc.property(fc.array(between(-8, 8), { minLength: 40, maxLength: 40 }), (off) => {
        let i = 0;
        const away = Object.fromEntries(
          Object.entries(points).map(([name, point]) => [
            name,
            point.map((x) => x + off[i++ % 40]!) as unknown as Vec3,
          ]),
        );
        const other = pointsWith(away, kind, measured);
        expect(far(other, points)).toBeGreaterThanOrEqual(far(nearest, points) - 1e-6);
      }),
      { numRuns: 30, seed: 20261127 },
    );
  });

  it('leaves points that have them as they are, to the bit', () => {
    const points = typical(kind);
    const once = pointsWith(points, kind, { [lengths[0]!.name]: lengthIn(lengths[0]!, points) + 10 });
    expect(pointsWith(once, kind, { [lengths[0]!.name]: lengthIn(lengths[0]!, points) + 10 })).toBe(once);
  });
});

it('five links of which nothing is typed are the typical layout', () => {
  const { points } = pointsFromTape({ kind: 'five-link', camber: -1, toe: 0.15 });
  const starter = startersFor('five-link', 'rear')[0]!;
  for (const [name, point] of Object.entries(starter.points)) {
    for (const k of [0, 1, 2]) expect(points[name]?.[k], name).toBeCloseTo(point[k]!, 9);
  }
});

it('two lengths that no corner has are refused by name', () => {
  const points = typical('double-wishbone');
  const refused = () =>
    pointsWith(points, 'double-wishbone', { upperPivotSpacing: 60, upperFrontHeight: 200, upperRearHeight: 600 });
  expect(refused).toThrow(/measured\.\w+: [\d.]+ is not allowed/);
});
