import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { inFlats } from '../../../core/units/flats.ts';
import { inFractions, inQuarters } from '../../../core/units/fractions.ts';
import { plain, tidy } from '../../../core/units/plain.ts';

const QUARTER = { '¼': 1, '½': 2, '¾': 3 } as const;

/** What a person reads in a count of quarters: its quarters. */
function quartersRead(text: string): number {
  const [, whole, mark] = /^(\d*)([¼½¾]?)$/.exec(text) ?? [];
  return Number(whole) * 4 + (mark ? QUARTER[mark as '¼'] : 0);
}

describe('figures as hands count them', () => {
  test.each([
    [0, '0'],
    [0.7, '¾'],
    [2.5, '2½'],
    [-2.5, '2½'],
    [0.25, '¼'],
    [3, '3'],
    [2.99, '3'],
    [10.24, '10¼'],
  ])('%d in quarters is %s', (count, text) => {
    expect(inQuarters(count)).toBe(text);
  });

  it('a quarter that is read is the nearest, and no whole number of 0 stands before one', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), (count) => {
        const text = inQuarters(count);
        expect(Math.abs(quartersRead(text) - Math.abs(count) * 4)).toBeLessThanOrEqual(0.5 + 1e-9);
        expect(text).toMatch(/^(0|[1-9]\d*[¼½¾]?|[¼½¾])$/);
      }),
    );
  });

  it('parts of an inch are the same amount in lowest terms, and less than an inch beside the whole', () => {
    fc.assert(
      fc.property(fc.nat(2000), fc.constantFrom(16, 32, 64, 128), (total, parts) => {
        const [, whole, top, bottom] = /^(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(inFractions(total, parts)) ?? [];
        expect(Number(whole ?? 0) + Number(top ?? 0) / Number(bottom ?? 1)).toBe(total / parts);
        if (top !== undefined) expect([Number(top) % 2, Number(top) < Number(bottom)]).toEqual([1, true]);
        expect(whole === '0' && top !== undefined).toBe(false);
      }),
    );
  });

  it('turns of a nut are whole turns and flats to a hundredth, six to the turn', () => {
    expect(inFlats(-4 / 3)).toEqual({ whole: 1, flats: 2 });
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (turns) => {
        const { whole, flats } = inFlats(turns);
        expect(Math.abs(whole * 6 + flats - Math.abs(turns) * 6)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect([Number.isInteger(whole), flats >= 0 && flats < 6]).toEqual([true, true]);
        expect(flats).toBe(Number(flats.toFixed(2)));
      }),
    );
  });
});

describe('a number for a sentence', () => {
  test.each([
    [1.5, '1.5'],
    [-0.25, '−0.25'],
    [2, '2'],
    [0.12345, '0.123'],
    [-0.0001, '0'],
  ])('%d reads %s', (x, text) => {
    expect(plain(x)).toBe(text);
  });

  it('has as many decimals as are asked for', () => {
    expect(plain(1.005678, 5)).toBe('1.00568');
    expect(plain(1.5, 0)).toBe('2');
  });
});

describe('a position without the noise of binary fractions', () => {
  it('is what its six decimals say, and zero has no sign', () => {
    expect(tidy(0.1 + 0.2)).toBe(0.3);
    for (const zero of [-0, 1e-9, -1e-9]) expect(tidy(zero)).toBe(0);
    fc.assert(
      fc.property(fc.integer({ min: -1e8, max: 1e8 }), fc.double({ min: -0.4, max: 0.4, noNaN: true }), (n, noise) => {
        expect(tidy((n + noise) / 1e6)).toBe(n === 0 ? 0 : Number(`${n}e-6`));
      }),
    );
  });
});
