import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { formatLength, parseLength } from '../../../core/units/length.ts';
import { lengthToToe, toeToLength } from '../../../core/units/toe.ts';

describe('parseLength', () => {
  test.each([
    ['4.5', {}, 4.5],
    ['4,5 mm', {}, 4.5],
    ['−1.5', {}, -1.5],
    ['3/16 in', {}, 4.7625],
    ['1 1/4"', {}, 31.75],
    ['1/16″', {}, 1.5875],
    ['0.0625 inch', {}, 1.5875],
    ['3/16', { unit: 'inch' }, 4.7625],
    ['0.1', { unit: 'inch' }, 2.54],
    ['5 mm', { unit: 'inch' }, 5],
    ['-1/8 in', {}, -3.175],
    ['.25 in', {}, 6.35],
    ['3/16 in.', {}, 4.7625],
    ['1  1/4 in', {}, 31.75],
    ['10000', {}, 10_000],
    [`${'0'.repeat(58)}.5`, {}, 0.5],
  ] as const)('reads %j %j exactly', (text, options, mm) => {
    expect(parseLength(text, options)).toBe(mm);
  });

  it('gives no negative zero', () => {
    expect(Object.is(parseLength('-0'), 0)).toBe(true);
  });
});

describe('formatLength', () => {
  test.each([
    [4.5, {}, '4.50 mm'],
    [-0.004, {}, '0.00 mm'],
    [4.7625, { unit: 'inch', fraction: 16 }, '3/16 in'],
    [31.75, { unit: 'inch', fraction: 64 }, '1 1/4 in'],
    [25.3, { unit: 'inch', fraction: 16 }, '1 in'],
    [-1.5875, { unit: 'inch', fraction: 128 }, '−1/16 in'],
    [0.1, { unit: 'inch', fraction: 16 }, '0 in'],
    [2.54, { unit: 'inch', bare: true }, '0.100'],
    [1.5, { digits: 1, decimal: ',', sign: true, bare: true }, '+1,5'],
    [4.7625, { fraction: 16 }, '4.76 mm'],
  ] as const)('shows %d %j as %s', (mm, options, text) => {
    expect(formatLength(mm, options)).toBe(text);
  });

  it('is undone by parseLength, to the last digit: inch fractions', () => {
    fc.assert(
      fc.property(fc.integer({ min: -4000, max: 4000 }), fc.constantFrom(16, 32, 64, 128), (n, fraction) => {
        const mm = (n * 25.4) / fraction;
        const text = formatLength(mm, { unit: 'inch', fraction: fraction as 16 });
        expect(parseLength(text)).toBeCloseTo(mm, 9);
        expect(formatLength(parseLength(text), { unit: 'inch', fraction: fraction as 16 })).toBe(text);
      }),
    );
  });

  it('is undone by parseLength: hundredths of a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: -100000, max: 100000 }), (n) => {
        expect(parseLength(formatLength(n / 100))).toBe(n === 0 ? 0 : n / 100);
      }),
    );
  });
});

describe('toe as a length', () => {
  it('of a wheel across the car is the whole diameter, up to the largest wheel', () => {
    expect(toeToLength(90, 2000)).toBeCloseTo(2000, 9);
    expect(lengthToToe(-500, 500)).toBeCloseTo(-90, 9);
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), fc.integer({ min: 100, max: 2000 }), (toe, d) => {
        expect(lengthToToe(toeToLength(toe, d), d)).toBeCloseTo(toe, 10);
      }),
    );
  });
});
