/** A shim's size as it is stamped: the shop's unit, inches as fractions where they are some. */
import { formatLength } from '../../core/units/length.ts';
import { millionths } from '../../core/units/shim-drawer.ts';
import { units } from './preferences.ts';

export const sameSize = (a: number, b: number): boolean => millionths(a) === millionths(b);

/** `1.5 mm`, `1/16 in`, `0.0591 in`: as many digits as the size has. */
export function sizeText(mm: number): string {
  const { length, decimal } = units.value;
  const sixtyFourths = (mm / 25.4) * 64;
  if (length === 'inch' && sameSize(sixtyFourths, Math.round(sixtyFourths))) {
    return formatLength(mm, { unit: length, fraction: 64 });
  }
  const [figure, unit] = formatLength(mm, { unit: length, digits: 4 }).split(' ');
  return `${String(Number(figure)).replace('.', decimal)} ${unit}`;
}
