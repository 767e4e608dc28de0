import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { formatAngle } from '../../../core/units/format.ts';
import { parseAngle } from '../../../core/units/parse.ts';

const DM = { mode: 'degrees-minutes' } as const;

describe('parseAngle', () => {
  test.each([
    ['4.35', 4.35],
    ['4,35', 4.35],
    ['-0.3', -0.3],
    ['−0.3', -0.3],
    ['− 0.3', -0.3],
    ['+1', 1],
    ['.5', 0.5],
    ['5.', 5],
    [' 2.5° ', 2.5],
    ['0', 0],
    ["1°30'", 1.5],
    ['1°30′', 1.5],
    ['1° 30’', 1.5],
    ['1°30', 1.5],
    ["-0°23'", -23 / 60],
    ["−0°23.5'", -23.5 / 60],
    ['30′', 0.5],
    ['90', 90],
  ])('reads %j as degrees', (text, value) => {
    expect(parseAngle(text)).toBeCloseTo(value, 12);
  });

  test.each([
    ['1 30', 1.5],
    ['-1 30', -1.5],
    ['−0 06', -0.1],
    ['+0 6,5', 6.5 / 60],
    ['1', 1],
    ['1°30', 1.5],
    ['30′', 0.5],
    ['1.5°', 1.5],
    ['0 0', 0],
  ])('reads %j as degrees and minutes', (text, value) => {
    expect(parseAngle(text, DM)).toBeCloseTo(value, 12);
  });

  it('gives no negative zero', () => {
    expect(Object.is(parseAngle('-0'), 0)).toBe(true);
    expect(Object.is(parseAngle("-0°00'"), 0)).toBe(true);
  });
});

describe('parse of format is the identity', () => {
  it('in decimal degrees', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9000, max: 9000 }),
        fc.boolean(),
        fc.constantFrom('.', ','),
        (n, sign, decimal) => {
          const text = formatAngle(n / 100, { sign, decimal: decimal as '.' | ',' });
          expect(parseAngle(text)).toBe(n === 0 ? 0 : n / 100);
        },
      ),
    );
  });

  it('in degrees and minutes, whichever mode reads it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -5400, max: 5400 }), fc.constantFrom('degrees', 'degrees-minutes'), (n, mode) => {
        const text = formatAngle(n / 60, DM);
        expect(parseAngle(text, { mode: mode as 'degrees' })).toBeCloseTo(n / 60, 12);
      }),
    );
  });
});
