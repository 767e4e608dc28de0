/** Angles as text for a person. No library here: this is on the first-load path. */
import { InputError } from '../input-error.ts';
import type { AngleMode } from './parse.ts';

export interface FormatAngleOptions {
  readonly mode?: AngleMode;
  /** Decimals in mode `degrees`. Default 2. */
  readonly digits?: number;
  /** Decimals of the minutes in mode `degrees-minutes`. Default 0. */
  readonly minuteDigits?: number;
  /** Also writes a + before what is above zero. */
  readonly sign?: boolean;
  /** Writes the ° in mode `degrees`; degrees and minutes always have their marks. */
  readonly mark?: boolean;
  readonly decimal?: '.' | ',';
}

/**
 * An angle, degrees, as text: `-0.35` → `−0.35` (true minus sign), or `−0°21′`. What rounds to zero has no sign; 59.6′ carries to the next degree.
 * @throws InputError when `angle` is not a finite number, so that no NaN reaches a screen.
 */
export function formatAngle(angle: number, options: FormatAngleOptions = {}): string {
  if (!Number.isFinite(angle)) throw new InputError('angle', angle, { is: 'finite', unit: 'degrees' });
  const { mode = 'degrees', digits = 2, minuteDigits = 0, sign = false, mark = false, decimal = '.' } = options;
  const size = Math.abs(angle);
  const text = mode === 'degrees' ? size.toFixed(digits) + (mark ? '°' : '') : minutes(size, minuteDigits);
  return signed(text, angle, sign).replace('.', decimal);
}

/** The text of a size with the sign of `value`, none where every digit is 0. */
export function signed(size: string, value: number, plus: boolean): string {
  if (!/[1-9]/.test(size)) return size;
  if (value < 0) return `−${size}`;
  return plus ? `+${size}` : size;
}

function minutes(size: number, digits: number): string {
  const scale = 10 ** digits;
  const total = Math.round(size * 60 * scale);
  const whole = Math.floor(total / (60 * scale));
  const rest = (total - whole * 60 * scale) / scale;
  return `${whole}°${rest.toFixed(digits).padStart(digits ? digits + 3 : 2, '0')}′`;
}
