/**
 * Figures as one shop writes them: lengths in mm or inches, angles in decimal degrees or in degrees and minutes, a decimal
 * point or a comma. All that is said to a person goes through here, with the shop's units as an argument. Exact through
 * decimal.js: not for first load.
 */
import { Decimal } from 'decimal.js';
import { formatAngle } from './format.ts';
import { inFractions } from './fractions.ts';
import { plain } from './plain.ts';

/** How a shop writes. Default: mm, decimal degrees, a point. */
export interface ShopUnits {
  readonly length?: 'mm' | 'inch';
  readonly angle?: 'degrees' | 'degrees-minutes';
  readonly decimal?: '.' | ',';
}

const MM_PER_INCH = 25.4;
/** Parts of an inch that a rule and a shim have. */
const PARTS = 64;
/** Decimals of a mm beyond which there is but the noise of sums of binary fractions. */
const NOISE = 6;

/** A bare number, with as many decimals as it needs and a true minus sign. */
export const figure = (x: number, { decimal = '.' }: ShopUnits = {}, decimals?: number): string =>
  plain(x, decimals).replace('.', decimal);

/** A number with all its decimals, so that those of a column stand under one another. */
export const fixed = (x: number, decimals: number, { decimal = '.' }: ShopUnits = {}): string =>
  formatAngle(x, { digits: decimals, decimal });

/** `mm` or `in` */
export const lengthUnit = ({ length = 'mm' }: ShopUnits = {}): string => (length === 'mm' ? 'mm' : 'in');

/** A length, mm, without its unit: what is a whole number of 64ths of an inch is a fraction, as on a rule and a shim. */
export function bareLength(mm: number, units: ShopUnits = {}): string {
  if (units.length !== 'inch') return figure(mm, units, 4);
  const inches = new Decimal(mm).toDecimalPlaces(NOISE).div(MM_PER_INCH);
  const parts = inches.times(PARTS);
  if (!parts.isInteger()) return figure(inches.toNumber(), units, 4);
  return `${parts.lt(0) ? '−' : ''}${inFractions(parts.abs().toNumber(), PARTS)}`;
}

/** `4.5 mm`, `3/32 in` */
export const lengthText = (mm: number, units?: ShopUnits): string => `${bareLength(mm, units)} ${lengthUnit(units)}`;

/** A length that was worked out, mm, to so many decimals of a mm; in inches to one more, at the least two. */
export function aboutLength(mm: number, decimals: number, units: ShopUnits = {}): string {
  const digits = units.length === 'inch' ? Math.max(2, decimals + 1) : decimals;
  const size = units.length === 'inch' ? new Decimal(mm).div(MM_PER_INCH).toNumber() : mm;
  return `${fixed(size, digits, units)} ${lengthUnit(units)}`;
}

/** An angle of a wheel or an axle with its mark, to the hundredth or the minute: `−0.35°`, `−0°21′`. */
export const wheelAngle = (
  degrees: number,
  { angle = 'degrees', decimal = '.' }: ShopUnits = {},
  sign = false,
): string => formatAngle(degrees, { mode: angle, decimal, sign, mark: true });

/** An angle of a part or of its turning with its mark, no longer than it need be: `36°`, `0.5°`, `0°30′`. */
export function partAngle(degrees: number, units: ShopUnits = {}, decimals = 3): string {
  const whole = Number.isInteger(Number(degrees.toFixed(decimals)));
  if (units.angle !== 'degrees-minutes' || whole) return `${figure(degrees, units, decimals)}°`;
  return formatAngle(degrees, {
    mode: units.angle,
    minuteDigits: minuteDigitsOf(degrees),
    decimal: units.decimal ?? '.',
  });
}

/** A quarter of a degree is whole minutes; a part of 0.03° is not. */
const minuteDigitsOf = (degrees: number): number =>
  Math.abs(degrees * 60 - Math.round(degrees * 60)) < 1e-6 || Math.abs(degrees) >= 0.1 ? 0 : 1;

/** What a number in a unit of core is in this shop: `[100, 'mm']` → `3.937 in`; other units stand as they are. */
export function inUnit(
  x: number,
  unit: string,
  units: ShopUnits = {},
  rounding: 'near' | 'up' | 'down' = 'near',
): string {
  if (unit === 'degrees') return partAngle(x, units, 9);
  if (!/^mm\b/.test(unit) || units.length !== 'inch') return `${grouped(figure(x, units, 9))} ${unit}`.trim();
  const inches = new Decimal(x).div(MM_PER_INCH).toDecimalPlaces(3, ROUNDING[rounding]).toNumber();
  return `${figure(inches, units)} ${unitName(unit, units)}`;
}
const ROUNDING = { near: Decimal.ROUND_HALF_UP, up: Decimal.ROUND_CEIL, down: Decimal.ROUND_FLOOR } as const;

/** `mm` and `mm a turn` in this shop's words. */
export const unitName = (unit: string, units?: ShopUnits): string => unit.replace(/^mm\b/, lengthUnit(units));

/** 10000 as "10 000". */
const grouped = (text: string): string => (/\d{5}/.test(text) ? text.replace(/\B(?=(\d{3})+(?!\d))/g, ' ') : text);

/** A text that somebody wrote with its lengths as `{110 mm}`, in this shop's units, to a mm or a tenth of an inch. */
export const inShop = (text: string, units: ShopUnits = {}): string =>
  text.replace(/\{(\d+(?:\.\d+)?) mm\}/g, (_, mm: string) =>
    units.length === 'inch'
      ? `${figure(new Decimal(mm).div(MM_PER_INCH).toDecimalPlaces(1).toNumber(), units)} in`
      : `${figure(Number(mm), units)} mm`,
  );
