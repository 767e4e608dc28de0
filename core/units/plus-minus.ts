/** A window as a maker prints it: what is wanted, and how far it may be off. Exact through decimal.js. */
import { Decimal } from 'decimal.js';
import { InputError } from '../input-error.ts';

/** The sign, however it is typed. */
export const PLUS_MINUS = /\s*(?:±|\+\s*\/\s*[-−–])\s*/;

/** A window about its aim, in the unit in which it was read. */
export interface PlusMinus {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
}

/**
 * `−0.5 ± 0.75` or `-0.5 +/- 0.75`: what both parts mean is up to `read`, so that degrees and minutes, commas and
 * fractions of an inch are as good. Nothing where there is no such sign in it.
 * @throws InputError of `read`, or where what it may be off by is not above zero
 */
export function parsePlusMinus(text: string, read: (part: string) => number): PlusMinus | undefined {
  const [before, after, ...more] = text.split(PLUS_MINUS);
  if (before === undefined || after === undefined) return undefined;
  const [aim, off] = [new Decimal(read(before)), new Decimal(more.length > 0 ? Number.NaN : read(after))];
  if (!off.gt(0)) throw new InputError('window', text, { is: 'plus-minus' });
  return { low: aim.minus(off).toNumber(), aim: aim.toNumber(), high: aim.plus(off).toNumber() };
}
