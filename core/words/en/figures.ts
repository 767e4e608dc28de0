/** Figures as a hand reads them: lengths in the shop's own unit, parts as parts. */
import { inFractions, inQuarters } from '../../units/fractions.ts';
import { plain } from '../../units/plain.ts';
import type { Units } from '../words.ts';

const MM_PER_INCH = 25.4;
/** Parts of an inch that a rule and a shim have. */
const PARTS = 64;

/** With the sign that a scale with a middle has. */
export const signed = (x: number, decimals?: number): string => `${x > 0 ? '+' : ''}${plain(x, decimals)}`;
export const plural = (count: string, one: string): string => `${count} ${one}${/^(1|[¼½¾])$/.test(count) ? '' : 's'}`;

/** A length without its unit: four decimals of a mm, so that a sixteenth of an inch is exact; inches as a rule has them. */
export function bareLength(mm: number, { length = 'mm' }: Units = {}): string {
  if (length === 'mm') return plain(mm, 4);
  const parts = (mm / MM_PER_INCH) * PARTS;
  const sign = mm < 0 ? '−' : '';
  const whole = Math.round(Math.abs(parts));
  return Math.abs(Math.abs(parts) - whole) < 1e-6 ? sign + inFractions(whole, PARTS) : plain(mm / MM_PER_INCH, 3);
}
export const unitOf = ({ length = 'mm' }: Units = {}): string => (length === 'mm' ? 'mm' : 'in');
/** `4.5 mm`, `3/32 in` */
export const lengthText = (mm: number, units?: Units): string => `${bareLength(mm, units)} ${unitOf(units)}`;

/** So many, halves and quarters as a hand counts them: `2½`; what is neither is near one, and said to be about. */
export function counted(count: number): string {
  const text = inQuarters(count);
  return Math.abs(count * 4 - Math.round(count * 4)) < 0.04 ? text : `about ${text}`;
}
