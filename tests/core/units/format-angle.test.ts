import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { InputError } from '../../../core/input-error.ts';
import { formatAngle } from '../../../core/units/format.ts';

const DM = { mode: 'degrees-minutes' } as const;

describe('formatAngle', () => {
  test.each([
    [4.351, {}, '4.35'],
    [-0.3, {}, '−0.30'],
    [-0.004, {}, '0.00'],
    [0.004, { sign: true }, '0.00'],
    [0.3, { sign: true }, '+0.30'],
    [1.5, { mark: true, digits: 1 }, '1.5°'],
    [-1.25, { decimal: ',' }, '−1,25'],
    [1.5, DM, '1°30′'],
    [-0.35, DM, '−0°21′'],
    [59.6 / 60, DM, '1°00′'],
    [-59.6 / 60, DM, '−1°00′'],
    [-0.4 / 60, DM, '0°00′'],
    [1 + 5.25 / 60, { ...DM, minuteDigits: 1 }, '1°05.3′'],
    [1 + 59.96 / 60, { ...DM, minuteDigits: 1 }, '2°00.0′'],
  ] as const)('shows %d %j as %s', (value, options, text) => {
    expect(formatAngle(value, options)).toBe(text);
  });

  it('is within half of its last place, and never shows 60 minutes', () => {
    fc.assert(
      fc.property(fc.double({ min: -90, max: 90, noNaN: true }), (value) => {
        const [, sign, degrees, minutes] = /^(−?)(\d+)°(\d\d)′$/.exec(formatAngle(value, DM)) ?? [];
        expect(Number(minutes)).toBeLessThan(60);
        const shown = (Number(degrees) + Number(minutes) / 60) * (sign ? -1 : 1);
        expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.5 / 60 + 1e-12);
      }),
    );
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses %d, so that it never reaches a screen', (value) => {
    expect(() => formatAngle(value)).toThrow(InputError);
    expect(() => formatAngle(value)).toThrow(/^angle: /);
  });
});
