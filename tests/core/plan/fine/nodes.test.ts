/** Ranks along a travel, nodes between them, and settings spread over all travels. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Position } from '../../../../core/contract.ts';
import { nodesOf, ranked } from '../../../../core/plan/fine/nodes.ts';
import { lattice, scattered } from '../../../../core/plan/fine/spread.ts';
import type { Axis } from '../../../../core/plan/states/axis.ts';
import { rod } from '../../../tools/random-cars.ts';

const axisOf = (
  positions: readonly Position[],
  current: number,
  adjuster: Adjuster = rod('rod', 'inner', 2),
): Axis => ({
  side: 0,
  adjuster,
  positions,
  current,
  minutes: 5,
});
const tenths = (count: number): number[] => Array.from({ length: count }, (_, i) => i / 10);

describe('positions by their ranks', () => {
  it('go up, a stand between marks in its place', () => {
    const { digits, middle, isNumeric } = ranked(axisOf([0, 1, 2, 3, 1.5], 4));
    expect([...digits]).toEqual([0, 1, 4, 2, 3]);
    expect([middle, isNumeric]).toEqual([2, true]);
  });

  it('are those about one, as far as there are any to its sides', () => {
    const axis = axisOf(tenths(20), 3);
    const about = (digit: number, within: number) => [...ranked(axis, digit, within).digits];
    expect(about(10, 2)).toEqual([8, 9, 10, 11, 12]);
    expect(about(1, 3)).toEqual([0, 1, 2, 3, 4]);
    expect(about(19, 1)).toEqual([18, 19]);
    expect(ranked(axis, 1, 3).middle).toBe(1);
    expect(ranked(axis, 10, 2).middle).toBe(2);
  });

  it('of labels are as they are listed, all of them however near they are asked for', () => {
    const kind: Adjuster = { ...rod('rod', 'inner', 2), reference: 'B' };
    const { digits, middle, isNumeric } = ranked(axisOf(['C', 'B', 'A'], 1, kind), 1, 0);
    expect([...digits]).toEqual([0, 1, 2]);
    expect([middle, isNumeric]).toEqual([1, false]);
    // Numbers beside a label, or about one, are labels too.
    expect(ranked(axisOf([3, 'B', 1], 0)).isNumeric).toBe(false);
    expect(ranked(axisOf([3, 2, 1], 0, kind)).isNumeric).toBe(false);
  });
});

describe('nodes along a stretch', () => {
  const axis = ranked(axisOf(tenths(41), 20));

  it('are few and inside it, and what is a polynomial between them is exact at every rank', () => {
    for (const most of [2, 3, 6, 9]) {
      for (const [first, last] of [
        [0, 40],
        [5, 30],
      ] as const) {
        const { places, weights } = nodesOf(axis, [first, last], most);
        expect(places.length).toBe(most);
        for (const place of places as number[]) {
          expect(place).toBeGreaterThan(first / 10);
          expect(place).toBeLessThan(last / 10);
        }
        const value = (x: number): number =>
          Array.from({ length: most }, (_, n) => (n + 1) * (x / 4) ** n).reduce((a, b) => a + b);
        for (let rank = first; rank <= last; rank++) {
          const sum = (places as number[]).reduce(
            (all, place, n) => all + (weights[(rank - first) * most + n] as number) * value(place),
            0,
          );
          expect(sum).toBeCloseTo(value(rank / 10), 8);
        }
      }
    }
  });

  it('keep what is bent about as near as the best polynomial can', () => {
    // With n Chebyshev nodes over [a, b] the error of exp is at most e^b·(b−a)ⁿ·2^(1−2n)/n!, from any text on interpolation.
    const { places, weights } = nodesOf(axis, [0, 40], 6);
    const bound = (Math.exp(4) * 4 ** 6 * 2 ** -11) / 720;
    for (let rank = 0; rank <= 40; rank++) {
      const sum = (places as number[]).reduce((all, x, n) => all + (weights[rank * 6 + n] as number) * Math.exp(x), 0);
      expect(Math.abs(sum - Math.exp(rank / 10))).toBeLessThanOrEqual(bound);
    }
  });

  it('are the positions themselves where these are few, or labels', () => {
    const { places, weights } = nodesOf(axis, [3, 6], 4);
    expect(places).toEqual([0.3, 0.4, 0.5, 0.6]);
    expect([...weights]).toEqual([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);
    const labels = ranked(axisOf(['A', 'B', 'C', 'D'], 0));
    expect(nodesOf(labels, [0, 3], 2).places).toEqual(['A', 'B', 'C', 'D']);
    expect(nodesOf(axis, [3, 7], 4).places).not.toContain(0.3);
  });
});

describe('settings spread over all travels', () => {
  const axes = [axisOf(tenths(5), 2), axisOf(tenths(61), 30), axisOf([1], 0)];

  it('in a lattice go from end to end of each, evenly, every combination once', () => {
    // The cube root of 70 is a little more than 4.
    const all = lattice(axes, 70);
    expect(all.length).toBe(4 * 4);
    expect(new Set(all.map(String)).size).toBe(16);
    expect([...new Set(all.map(([, digit]) => digit))]).toEqual([0, 20, 40, 60]);
    expect([...new Set(all.map(([digit]) => digit))]).toEqual([0, 1, 3, 4]);
    expect(all.every(([, , digit]) => digit === 0)).toBe(true);
    // Both ends of each, however few may be tried.
    expect(lattice(axes, 1)).toEqual([
      [0, 0, 0],
      [0, 60, 0],
      [4, 0, 0],
      [4, 60, 0],
    ]);
    expect(lattice(axes, 4000).length).toBe(5 * 15);
  });

  it('in no order lie in every part of every travel, and not along a line', () => {
    const [count, parts] = [600, 5];
    const many = Array.from({ length: 3 }, () => axisOf(tenths(100), 0));
    const all = scattered(many, count);
    expect(all.length).toBe(count);
    const places = new Map<string, number>();
    for (const [a = -1, b = -1, c = -1] of all) {
      for (const digit of [a, b, c]) expect(Number.isInteger(digit) && digit >= 0 && digit < 100).toBe(true);
      for (const [name, x, y] of [
        ['ab', a, b],
        ['bc', b, c],
        ['ac', a, c],
      ] as const) {
        const key = `${name} ${Math.floor((x * parts) / 100)} ${Math.floor((y * parts) / 100)}`;
        places.set(key, (places.get(key) ?? 0) + 1);
      }
    }
    // 24 in each square, were they quite even.
    expect(places.size).toBe(3 * parts * parts);
    expect(Math.min(...places.values())).toBeGreaterThan(8);
    expect(Math.max(...places.values())).toBeLessThan(48);
  });
});
