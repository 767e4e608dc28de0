/** What a technician types for an angle, turned into degrees. No library here: this is on the first-load path. */
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';

export type AngleMode = 'degrees' | 'degrees-minutes';

export interface ParseAngleOptions {
  /** What a bare number means. Text with its own ° and ′ marks is read as marked in either mode. */
  readonly mode?: AngleMode;
  /** How an error names the field. */
  readonly field?: string;
  /** Largest angle either way, degrees. Default 90. */
  readonly limit?: number;
}

const LIMIT = 90;

const NUMBER = String.raw`(\d+(?:\.\d*)?|\.\d+)`;
const DECIMAL = new RegExp(`^${NUMBER}°?$`);
const MARKED_DECIMAL = new RegExp(`^${NUMBER}°$`);
const MINUTES = new RegExp(`^${NUMBER}'$`);
const MARKED = new RegExp(String.raw`^(\d+)\s*°\s*${NUMBER}\s*'?$`);
const SPACED = new RegExp(String.raw`^(\d+)(?:\s+${NUMBER}\s*'?)?$`);

/**
 * Degrees from what was typed: `4.35`, `4,35`, `−0.3`, `+1`, `1°30′`, `30′`; in mode `degrees-minutes` also `1 30`
 * and `1` (whole degrees). A bare decimal is refused there: 1.30 could be 1.3° or 1°30′.
 * @throws InputError for anything else, minutes of 60 or more, or beyond ±`limit`.
 */
export function parseAngle(
  text: string,
  { mode = 'degrees', field = 'angle', limit = LIMIT }: ParseAngleOptions = {},
): number {
  const refuse = (rule: Rule = { is: 'angle', mode, limit }) => new InputError(field, text, rule);
  if (typeof text !== 'string') throw refuse();
  const { negative, rest } = splitSign(text);
  const parts = mode === 'degrees' ? inDegrees(rest) : inMinutes(rest);
  if (!parts) throw refuse();
  if (parts.minutes >= 60) throw refuse({ is: 'minutes' });
  const size = parts.degrees + parts.minutes / 60;
  if (!(size <= limit)) throw refuse();
  return negative && size !== 0 ? -size : size;
}

/** The sign, and the rest with one kind of point, minute mark and space. */
export function splitSign(text: string): { negative: boolean; rest: string } {
  const plain = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(/,/g, '.')
    .replace(/[′’‘]/g, "'")
    .replace(/\u00a0/g, ' ');
  const negative = plain.startsWith('-');
  return { negative, rest: negative || plain.startsWith('+') ? plain.slice(1).trimStart() : plain };
}

interface Parts {
  readonly degrees: number;
  readonly minutes: number;
}

function inDegrees(text: string): Parts | undefined {
  const decimal = DECIMAL.exec(text);
  return decimal ? { degrees: Number(decimal[1]), minutes: 0 } : marked(text);
}

function inMinutes(text: string): Parts | undefined {
  const decimal = MARKED_DECIMAL.exec(text);
  if (decimal) return { degrees: Number(decimal[1]), minutes: 0 };
  const spaced = SPACED.exec(text);
  return spaced ? { degrees: Number(spaced[1]), minutes: Number(spaced[2] ?? 0) } : marked(text);
}

function marked(text: string): Parts | undefined {
  const both = MARKED.exec(text);
  if (both) return { degrees: Number(both[1]), minutes: Number(both[2]) };
  const minutes = MINUTES.exec(text);
  return minutes ? { degrees: 0, minutes: Number(minutes[1]) } : undefined;
}
