import { expect, it, test } from 'vitest';
import { isTime } from '../../../core/check/time.ts';

const DAY = 86_400_000;

it('every day of the years around a leap year that is none and one that is, and no day after the last of a month', () => {
  const wrong: string[] = [];
  for (const from of [1899, 1999]) {
    for (let at = Date.UTC(from, 0, 1); at < Date.UTC(from + 6, 0, 1); at += DAY) {
      const day = new Date(at).toISOString();
      if (!isTime(day) || !isTime(day.slice(0, 10))) wrong.push(day);
      const isLast = new Date(at + DAY).getUTCMonth() !== new Date(at).getUTCMonth();
      const past = `${day.slice(0, 8)}${String(Number(day.slice(8, 10)) + 1).padStart(2, '0')}`;
      if (isLast && isTime(past)) wrong.push(past);
    }
  }
  expect(wrong).toEqual([]);
});

test.each([
  ...[
    '2026-02-28T23:59:59.999Z',
    '2026-02-28T00:00',
    '2026-02-28T00:00:00+02:00',
    '2026-02-28T00:00:00.123456789-11:30',
  ],
])('%s is a time', (text) => expect(isTime(text)).toBe(true));

test.each([
  ...['', 'today', '2026', '2026-13-01', '2026-00-10', '2026-01-00', '2026-02-29', '1900-02-29', '2026-13-45'],
  ...['2026-01-01T24:00:00Z', '2026-01-01T23:60', '2026-01-01T23:59:60Z', '2026-01-01T00:00:00+24:00', ' 2026-01-01'],
  ...['-000001-01-01T00:00:00Z', '2026-01-01T00:00:00+99:99', '2026-1-1', '２０２６-01-01', '2026-01-01T00:00:00.Z'],
])('%j is none', (text) => expect(isTime(text)).toBe(false));
