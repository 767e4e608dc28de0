/** Figures as a shop writes them: inches against exact fractions, angles against their own reading back. */
import fc from 'fast-check';
import { type Fraction, fraction } from 'mathjs';
import { describe, expect, it, test } from 'vitest';
import { exactAngle } from '../../../core/units/exact-angle.ts';
import { parseLength } from '../../../core/units/length.ts';
import { parseAngle } from '../../../core/units/parse.ts';
import { parsePlusMinus } from '../../../core/units/plus-minus.ts';
import {
  aboutLength,
  bareLength,
  inShop,
  inUnit,
  lengthText,
  partAngle,
  wheelAngle,
} from '../../../core/units/shop.ts';
import { refusalOf } from '../../tools/spoil.ts';

const INCH = { length: 'inch' } as const;
const EURO = { angle: 'degrees-minutes', decimal: ',' } as const;

/** `1 3/32` as a fraction that knows no rounding. */
function asFraction(text: string): Fraction {
  const sign = text.startsWith('−') ? -1 : 1;
  const parts = text
    .replace('−', '')
    .split(' ')
    .map((part) => fraction(part));
  return parts.reduce((sum, part) => sum.add(part), fraction(0)).mul(sign) as Fraction;
}

describe('a length in inches', () => {
  it('is the very fraction, of any number of 64ths', () => {
    fc.assert(
      fc.property(fc.integer({ min: -6400, max: 6400 }), (parts) => {
        const mm = (parts * 254) / 640;
        const text = bareLength(mm, INCH);
        expect(asFraction(text).equals(fraction(parts, 64)), text).toBe(true);
        expect(parseLength(text, { unit: 'inch' })).toBeCloseTo(mm, 9);
      }),
    );
  });

  it('adds up: the shims of a pack are the pack', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 32 }), { minLength: 1, maxLength: 6 }), (sizes) => {
        const shims = sizes.map((parts) => (parts * 254) / 640);
        const pack = shims.reduce((sum, mm) => sum + mm, 0);
        const sum = shims.reduce((all, mm) => all.add(asFraction(bareLength(mm, INCH))), fraction(0));
        expect(sum.equals(asFraction(bareLength(pack, INCH)))).toBe(true);
      }),
    );
  });

  test.each([
    [4.7625, '3/16 in'],
    [2.38125, '3/32 in'],
    [27.78125, '1 3/32 in'],
    [1.5, '0.0591 in'],
    [0, '0 in'],
    [-1.5875, '−1/16 in'],
  ])('%d mm is %s', (mm, text) => expect(lengthText(mm, INCH)).toBe(text));

  it('that was worked out has the decimals that a tape can tell', () => {
    expect(aboutLength(25, 0, INCH)).toBe('0.98 in');
    expect(aboutLength(1.2, 1, INCH)).toBe('0.05 in');
    expect(aboutLength(1.2, 1, { decimal: ',' })).toBe('1,2 mm');
  });

  it('that is a limit is never a hair beyond it', () => {
    expect(inUnit(2000, 'mm', INCH, 'down')).toBe('78.74 in');
    expect(inUnit(100, 'mm', INCH, 'up')).toBe('3.938 in');
    expect(inUnit(20, 'mm a turn', INCH, 'down')).toBe('0.787 in a turn');
    expect(inUnit(-10000, 'mm')).toBe('−10 000 mm');
  });
});

describe('an angle', () => {
  it('has its marks in minutes, and no more digits than it needs', () => {
    expect(wheelAngle(-0.35, EURO)).toBe('−0°21′');
    expect(wheelAngle(-0.35, { decimal: ',' })).toBe('−0,35°');
    expect(partAngle(36, EURO)).toBe('36°');
    expect(partAngle(22.5, EURO)).toBe('22°30′');
    expect(partAngle(0.03, EURO)).toBe('0°01,8′');
    expect(partAngle(0.5, { decimal: ',' })).toBe('0,5°');
  });

  it('in a field is read back as it was', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -45, max: 45, noNaN: true }),
        fc.constantFrom('degrees', 'degrees-minutes'),
        fc.constantFrom('.', ','),
        (degrees, angle, decimal) => {
          const text = exactAngle(degrees, { angle, decimal } as const);
          expect(Math.abs(parseAngle(text) - degrees)).toBeLessThan(2e-7);
          if (angle === 'degrees-minutes') expect(text).toMatch(/^−?\d+°\d\d([.,]\d+)?′$/);
          expect(text).not.toContain(decimal === ',' ? '.' : ',');
        },
      ),
    );
    expect(exactAngle(-0.5)).toBe('−0.50');
    // Where a number's own text has an exponent.
    expect(exactAngle(2e-7, { decimal: ',' })).toBe('0,0000002');
    expect(exactAngle(-1e-7)).toBe('−0.0000001');
    expect(exactAngle(-0.0375, EURO)).toBe('−0°02,25′');
  });
});

it('says the lengths of a written text in the shop’s units', () => {
  expect(inShop('a clamp about {110 mm} above')).toBe('a clamp about 110 mm above');
  expect(inShop('a clamp about {110 mm} above', { length: 'inch', decimal: ',' })).toBe('a clamp about 4,3 in above');
});

describe('a window about its aim', () => {
  test.each<[string, number, number, number]>([
    ['−0.5 ± 0.75', -1.25, -0.5, 0.25],
    ['-0,5 +/- 0,75', -1.25, -0.5, 0.25],
    ['0.1±0.2', -0.1, 0.1, 0.3],
    ['−0°30′ ± 0°45′', -1.25, -0.5, 0.25],
  ])('%s', (text, low, aim, high) => {
    expect(parsePlusMinus(text, (part) => parseAngle(part))).toEqual({ low, aim, high });
  });

  it('in inches is exact to the part', () => {
    const { low, high } = parsePlusMinus('1/16 +/- 1/32', (part) => parseLength(part, { unit: 'inch' }))!;
    expect([bareLength(low, INCH), bareLength(high, INCH)]).toEqual(['1/32', '3/32']);
  });

  it('is none where nothing is said of how far, and refused where that is nothing or twice said', () => {
    expect(parsePlusMinus('−0.5', Number)).toBeUndefined();
    for (const text of ['1 ± 0', '1 ± -1', '1 ± 1 ± 1']) {
      expect(refusalOf(() => parsePlusMinus(text, (part) => parseAngle(part)))[0]?.rule.is).toMatch(/plus-minus|angle/);
    }
  });
});
