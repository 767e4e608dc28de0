/** What goes wrong in files, and the dice that say which and where. */
import { seeded } from '../../../app/practice/seed.ts';

export interface Dice {
  /** In [0, 1). */
  next(): number;
  chance(of: number): boolean;
  one<T>(all: readonly T[]): T;
}

/** The same for the same words. */
export function diceOf(words: string): Dice {
  const next = seeded(words);
  return { next, chance: (of) => next() < of, one: (all) => all[Math.floor(next() * all.length)] as never };
}

export const BAD_TEXTS = [
  ...['', ' ', 'NaN', 'Infinity', '-Infinity', 'undefined', 'null', '1e999', '0', '12,5', '-', '0x10', 'true'],
  ...['\u0000', '\u0007\u001b[31mred\u001b[0m', 'a\nb\r\tc', '\u202egnihtyna\u202c', '\u2066\u2067x', '\u200b'],
  ...[
    '\ud800',
    '\udfff\ud800',
    '\ufeff',
    'é\u0301\u0301\u0301',
    '👩‍🔧',
    '<b>&amp;"\'</b>',
    '../../x',
    '%00',
    '[object Object]',
  ],
] as const;

/** Names that every object of this language has, and some that are in our own files. */
export const BAD_NAMES = [
  ...['__proto__', 'constructor', 'hasOwnProperty', 'toString', 'valueOf', 'prototype', 'isPrototypeOf', 'length'],
  ...['then', '', ' ', '0', '-1', '1e3', 'id', 'LF', 'front', 'RF', 'a.b', 'a[0]', '@step', 'nowhere', 'entries'],
] as const;

export const BAD_NUMBERS = [
  ...[0, 1, -1, 2, 0.5, 1e-9, 5e-324, 1e-300, 1e308, -1e308, 1e21, 2 ** 53, 2 ** 32, -(2 ** 31), 89.999, 90, 90.001],
  ...[45, 1 / 3, 0.000001, 400, 401, 10_000, 10_001],
] as const;

export const BAD_DATES = [
  ...['2026-13-45', '2026-02-30T25:61:00Z', '0000-00-00', '9999-12-31T23:59:59Z', '2026-02-29', 'yesterday', '1e9'],
  ...['2026-01-01T00:00:00+99:99', '-000001-01-01T00:00:00Z', '2026-01-01T24:00:00Z', '2026-00-00T00:00:00.000Z'],
] as const;
