/** Shims that are counted: what the drawer and the packs that are changed can make, by trying every stack. */

import { describe, expect, it } from 'vitest';
import { type Adjuster, CORNERS, type Corner, type PlanRequest, type Position } from '../../../../core/contract.ts';
import type { Pack } from '../../../../core/plan/shims/drawer.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { combinations } from '../../../tools/brute-force.ts';
import { judgeOf } from '../../../tools/drawer.ts';
import { oneOf, stream } from '../../../tools/random-cars.ts';
import { adjustersAt, drawerOf, request, SEEDS, sizesOf } from '../../../tools/shim-request.ts';

describe('the drawer', () => {
  it.each(SEEDS)('seed %i: knows the packs that take what is counted, and what they hold', (seed) => {
    const asked = request(seed);
    const drawer = drawerOf(asked);
    const counted = sizesOf(asked);
    const wanted = CORNERS.flatMap((corner) =>
      adjustersAt(asked, corner)
        .filter(({ kind, sizes }) => kind === 'shim-pack' && sizes.some((size: number) => counted.includes(size)))
        .map(({ id }) => `${corner} ${id}`),
    );
    expect(drawer.packs.map(({ corner, adjuster }) => `${corner} ${adjuster}`)).toEqual(wanted);
    for (const { corner, adjuster, now, holds } of drawer.packs) {
      const own = adjustersAt(asked, corner).find(({ id }) => id === adjuster);
      expect(now).toBe(own?.reference);
      expect([...holds].reduce((sum, [size, count]) => sum + (size / 1e6) * count, 0)).toBeCloseTo(now as number, 9);
    }
    for (const { size, count } of asked.drawer ?? []) {
      const held = drawer.packs.reduce((sum, { holds }) => sum + (holds.get(Math.round(1e6 * size)) ?? 0), 0);
      expect(drawer.supply.get(Math.round(1e6 * size))).toBe(count + held);
    }
    expect(drawer.supply.size).toBe(counted.length);
    expect(drawer.find({ corner: 'LF', adjuster: 'rod' })).toBeUndefined();
  });

  it.each(SEEDS)('seed %i: serves what can be made, with stacks that make it, and nothing else', (seed) => {
    const asked = request(seed);
    const drawer = drawerOf(asked);
    const judge = judgeOf(asked);
    const random = stream(seed);
    const seen = { served: 0, not: 0 };
    for (let i = 0; i < 40; i++) {
      const at = Object.fromEntries(
        CORNERS.map((corner) => {
          const own = combinations(asked.car, corner);
          const still = own.find((settings) =>
            adjustersAt(asked, corner).every((one) => settings[one.id] === one.reference),
          );
          return [corner, random() < 0.4 ? still : oneOf(random, own)];
        }),
      ) as Record<Corner, Record<string, Position>>;
      const position = ({ corner, adjuster }: Pack) => at[corner][adjuster] as Position;
      const stacks = drawer.serve(position);
      // Packs that take nothing counted are made of plenty.
      expect(stacks !== undefined).toBe(judge(at));
      seen[stacks ? 'served' : 'not']++;
      if (!stacks) {
        // What it says is lacking, or more, has to be bought.
        const lacking = drawer.lacking(position);
        if (lacking.length === 0) continue;
        const more = asked.drawer?.map(({ size, count }) => ({
          size,
          count: count + (lacking.find((one) => one.size === size)?.count ?? 0),
        }));
        const bought = { ...asked, drawer: more ?? [] };
        if (mayBeMade(asked, at)) expect(drawerOf(bought).serve(position)).toBeDefined();
        expect(lacking.map(({ size }) => size)).toEqual(lacking.map(({ size }) => size).sort((a, b) => b - a));
        expect(lacking.every(({ count }) => count > 0)).toBe(true);
        continue;
      }
      const left = new Map(asked.drawer?.map(({ size, count }) => [Math.round(1e6 * size), count]));
      for (const pack of drawer.packs) {
        const changed = position(pack) !== pack.now;
        expect(stacks.has(pack)).toBe(changed);
        if (!changed) continue;
        const stack = stacks.get(pack) ?? new Map();
        const sum = [...stack].reduce((total, [size, count]) => total + size * count, 0);
        expect(sum).toBe(Math.round(1e6 * (position(pack) as number)));
        for (const [size, count] of stack) {
          expect(pack.sizes).toContain(size);
          if (left.has(size)) left.set(size, (left.get(size) ?? 0) - count);
        }
        for (const [size, count] of pack.holds) if (left.has(size)) left.set(size, (left.get(size) ?? 0) + count);
      }
      expect(Math.min(0, ...left.values())).toBe(0);
    }
    expect(seen.served).toBeGreaterThan(0);
  });

  /** Whether each pack's sizes make its thickness at all with as few shims as it takes. */
  function mayBeMade(asked: PlanRequest, at: Record<Corner, Record<string, Position>>): boolean {
    const plenty = { ...asked, drawer: (asked.drawer ?? []).map(({ size }) => ({ size, count: 999 })) };
    return judgeOf(plenty)(at);
  }

  it.each(SEEDS)('seed %i: allows what one pack could be made of alone, and where it stands', (seed) => {
    const asked = request(seed, 3);
    const drawer = drawerOf(asked);
    for (const pack of drawer.packs) {
      const { corner, adjuster } = pack;
      const own = adjustersAt(asked, corner).find(({ id }) => id === adjuster) as Adjuster;
      const { sizes, max, maxCount = 99 } = own as { sizes: number[]; max: number; maxCount?: number } & Adjuster;
      const makes = (i: number, thickness: number, count: number): boolean => {
        if (Math.abs(thickness) < 1e-9) return true;
        if (i === sizes.length || thickness < 0 || count === 0) return false;
        const size = sizes[i] as number;
        const there = drawer.supply.get(Math.round(1e6 * size)) ?? 99;
        for (let n = 0; n <= Math.min(there, count); n++)
          if (makes(i + 1, thickness - n * size, count - n)) return true;
        return false;
      };
      for (let thickness = 0; thickness <= max + 1; thickness += 0.5) {
        const wanted = thickness === pack.now || (thickness <= max + 1e-9 && makes(0, thickness, maxCount));
        expect(drawer.allows({ corner, adjuster }, thickness), `${thickness} mm of ${sizes}`).toBe(wanted);
      }
    }
    expect(drawer.allows({ corner: 'LF', adjuster: 'rod' }, 0.123)).toBe(true);
    expect(drawer.allows({ corner: 'LF', adjuster: 'no such thing' }, 0.123)).toBe(true);
  });

  it('joins what shares its shims, and leaves the rest apart', () => {
    const asked: PlanRequest = { ...request(1), drawer: [0.5, 1, 1.5, 2, 3].map((size) => ({ size, count: 1 })) };
    const [LF, RF, LR, RR] = compileCar(asked.car);
    if (!LF || !RF || !LR || !RR) throw new Error('a car without four wheels');
    expect(drawerOf(asked).join([[LF, RF], [LR], [RR]])).toEqual([[LF, RF, LR, RR]]);
    const locked = [{ corner: 'RR', adjuster: 'only' }] as const;
    expect(drawerOf({ ...asked, locked }).join([[RR], [LF, RF], [LR]])).toEqual([[RR], [LF, RF, LR]]);
    expect(drawerOf({ ...asked, drawer: [] }).join([[LF], [RF]])).toEqual([[LF], [RF]]);
  });
});
