/** An angle for a field that is read back: with all the digits that it has. No library here. */
import { formatAngle } from './format.ts';
import { figure, type ShopUnits } from './shop.ts';

/** Degrees as near as a field has to say them again. */
const NEAR = 1e-7;
const MOST_DIGITS = 9;

/**
 * In the shop's way of writing, to the hundredth or the minute where that says it exactly, else with as many decimals
 * as it takes: `−0.5`, `−0.0375`, `−0°02.25′`. Degrees and minutes always have their marks.
 */
export function exactAngle(degrees: number, { angle = 'degrees', decimal = '.' }: ShopUnits = {}): string {
  if (angle === 'degrees') {
    const short = formatAngle(degrees, { decimal });
    const isAll = Math.abs(Number(degrees.toFixed(2)) - degrees) < NEAR;
    return isAll ? short : figure(degrees, { decimal }, MOST_DIGITS);
  }
  const minutes = Math.abs(degrees) * 60;
  let digits = 0;
  while (digits < MOST_DIGITS && Math.abs(Number(minutes.toFixed(digits)) - minutes) >= 60 * NEAR) digits += 1;
  return formatAngle(degrees, { mode: angle, minuteDigits: digits, decimal });
}
