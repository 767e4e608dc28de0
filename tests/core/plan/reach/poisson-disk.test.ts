/** So few of many places that they can be drawn: spread evenly. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { poissonDisk } from '../../../../core/plan/reach/poisson-disk.ts';

describe('places that are thinned', () => {
  const spots = fc.array(
    fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
    {
      maxLength: 400,
    },
  );
  it('leaves nothing far from what it picks, and picks nothing close together', () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: 1, max: 50 }), (all, most) => {
        const { picked, spacing } = poissonDisk(all.length, (i) => all[i] as [number, number], most);
        expect(picked.length).toBeLessThanOrEqual(most);
        const apart = (i: number, j: number) =>
          Math.hypot((all[i]?.[0] ?? NaN) - (all[j]?.[0] ?? NaN), (all[i]?.[1] ?? NaN) - (all[j]?.[1] ?? NaN));
        all.forEach((_, i) => {
          expect(picked.some((j) => apart(i, j) < spacing || i === j)).toBe(true);
        });
        for (const i of picked)
          for (const j of picked) if (i !== j) expect(apart(i, j)).toBeGreaterThanOrEqual(spacing);
      }),
    );
  });

  it('is as fine as it may be: a spacing less than a sixteenth smaller would take too many', () => {
    const all = Array.from({ length: 40 }, (_, i) => [(i % 8) / 7, Math.floor(i / 8) / 4] as [number, number]);
    const spot = (i: number) => all[i] as [number, number];
    for (const most of [1, 3, 10, 25, 39, 40]) {
      const { picked, spacing } = poissonDisk(all.length, spot, most);
      expect(picked.length).toBeLessThanOrEqual(most);
      const finer = spacing / 1.07;
      if (most === 40) expect(spacing).toBe(1 / 64);
      else expect(one(finer)).toBeGreaterThan(most);
    }
    /** How many are taken one after the other, none nearer than so much to one taken before. */
    function one(space: number): number {
      const taken: [number, number][] = [];
      for (const [x, y] of all) if (!taken.some(([a, b]) => Math.hypot(a - x, b - y) < space)) taken.push([x, y]);
      return taken.length;
    }
  });
});
