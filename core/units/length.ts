/** Lengths, exact through decimal.js: 3/16 in is 4.7625 mm to the last digit. Loads the library: not for first load. */
import { Decimal } from 'decimal.js';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { signed } from './format.ts';
import { inFractions } from './fractions.ts';
import { splitSign } from './parse.ts';

export type LengthUnit = 'mm' | 'inch';

const MM_PER_INCH = 25.4;
const LIMIT = 10_000;
const ALLOWED: Rule = { is: 'length', limit: LIMIT };
const UNIT = /\s*(mm|inches|inch|in|"|″)\.?$/i;
const NUMBER = /^(?:\d+(?:\.\d*)?|\.\d+)$/;
const FRACTION = /^(?:(\d{1,4})\s+)?(\d{1,4})\s*[/⁄]\s*(\d{1,4})$/;

export interface ParseLengthOptions {
  /** What a bare number means. Default mm. */
  readonly unit?: LengthUnit;
  /** How an error names the field. */
  readonly field?: string;
}

/**
 * Millimetres from what was typed. A sign is taken (toe as a length has one); a fraction only in inches.
 * @throws InputError for anything else or beyond ±10 000 mm.
 */
export function parseLength(text: string, { unit = 'mm', field = 'length' }: ParseLengthOptions = {}): number {
  const refuse = (rule: Rule = ALLOWED) => new InputError(field, text, rule);
  if (typeof text !== 'string' || text.length > 60) throw refuse();
  const { negative, rest } = splitSign(text);
  const written = UNIT.exec(rest)?.[1]?.toLowerCase();
  const inches = written ? written !== 'mm' : unit === 'inch';
  const size = amount(rest.replace(UNIT, ''));
  if (!size) throw refuse();
  if (size.fraction && !inches) throw refuse({ is: 'fraction' });
  const mm = (inches ? size.value.times(MM_PER_INCH) : size.value).toNumber();
  if (!(mm <= LIMIT)) throw refuse();
  return negative && mm !== 0 ? -mm : mm;
}

function amount(text: string): { value: Decimal; fraction: boolean } | undefined {
  if (NUMBER.test(text)) return { value: new Decimal(text), fraction: false };
  const [, whole = '0', top = '0', bottom = '0'] = FRACTION.exec(text) ?? [];
  if (Number(bottom) === 0) return undefined;
  return { value: new Decimal(top).div(bottom).plus(whole), fraction: true };
}

export interface FormatLengthOptions {
  readonly unit?: LengthUnit;
  /** Decimals; default 2 in mm, 3 in inches. */
  readonly digits?: number;
  /** Inches to the nearest 1/16, 1/32, 1/64 or 1/128 in place of decimals. */
  readonly fraction?: 16 | 32 | 64 | 128;
  /** Also writes a + before what is above zero. */
  readonly sign?: boolean;
  /** Leaves the unit off, for a column that names it. */
  readonly bare?: boolean;
  readonly decimal?: '.' | ',';
}

/**
 * A length, mm, as text: `4.5` → `4.50 mm`, `0.177 in` or, to a fraction, `3/16 in`. What rounds to zero has no sign.
 * @throws InputError when `mm` is not a finite number.
 */
export function formatLength(mm: number, options: FormatLengthOptions = {}): string {
  if (!Number.isFinite(mm)) throw new InputError('length', mm, { is: 'finite', unit: 'mm' });
  const { unit = 'mm', digits = unit === 'mm' ? 2 : 3, fraction, sign = false, bare = false, decimal = '.' } = options;
  const size = unit === 'mm' ? new Decimal(mm).abs() : new Decimal(mm).abs().div(MM_PER_INCH);
  const text =
    fraction && unit === 'inch'
      ? inFractions(size.times(fraction).round().toNumber(), fraction)
      : size.toFixed(digits).replace('.', decimal);
  const mark = unit === 'mm' ? ' mm' : ' in';
  return signed(text, mm, sign) + (bare ? '' : mark);
}
