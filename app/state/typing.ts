/** First load. How one key changes the text of a field, and when the field is full so that the next one is up. */
import { type Field, isToe } from './fields.ts';
import type { Units } from './preferences.ts';

const LONGEST = 16;

/** The text after a key: a digit, `.`, `±`, `⌫`, or any other character of a real keyboard, kept as typed. */
export function typed(text: string, key: string, units: Units, angle: Field['angle']): string {
  if (key === '±') return text.startsWith('−') ? text.slice(1) : `−${text}`;
  if (key === '⌫') return text.slice(0, -1);
  const minutes = units.angle === 'degrees-minutes' && !isLength(units, angle);
  const character = key === '.' ? (minutes ? '°' : units.decimal) : key;
  return text.length >= LONGEST ? text : text + character;
}

/** Whether the text has all the digits that a rack shows: two decimals, two digits of minutes, tenths of a mm. */
export function isFull(text: string, units: Units, angle: Field['angle']): boolean {
  if (angle === 'lateral') return /^−?\d+[.,]\d$/.test(text);
  if (isLength(units, angle)) return (units.toe === 'mm' ? /^−?\d+[.,]\d$/ : /^−?\d*[.,]\d{2}$/).test(text);
  return /^−?\d*[.,]\d{2}$/.test(text) || /^−?\d*°\d{2}$/.test(text);
}

const isLength = (units: Units, angle: Field['angle']): boolean =>
  angle === 'lateral' || (isToe(angle) && units.toe !== 'angle');
