/** The order of times, held against the language's own calendar. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byTime, laterThan } from '../../../core/records/order.ts';

const times = fc.date({ min: new Date('0001-01-01'), max: new Date('9998-12-31'), noInvalidDate: true });
const offsets = fc.constantFrom('', 'Z', '+05:30', '-11:00');
/** A time with its moment in ms. */
const written = fc.tuple(times, offsets).map(([date, offset]) => {
  const text = date.toISOString().replace('Z', offset);
  return { text, ms: Date.parse(offset === '' ? `${text}Z` : text) };
});

describe('times', () => {
  it('are in the order of their moments, whatever their offset', () => {
    fc.assert(
      fc.property(written, written, (a, b) => {
        if (a.ms !== b.ms) expect(Math.sign(byTime(a.text, b.text))).toBe(Math.sign(a.ms - b.ms));
        expect(byTime(a.text, a.text)).toBe(0);
      }),
    );
  });

  it('of near days, months and leap years too', () => {
    const days = ['1900-02-28', '1900-03-01', '2000-02-28', '2000-02-29', '2000-03-01', '2023-12-31', '2024-01-01'];
    for (let i = 1; i < days.length; i++) {
      expect(byTime(days[i - 1], days[i])).toBe(-1);
      expect(byTime(`${days[i]}T00:30:00+01:00`, `${days[i - 1]}T23:45:00Z`)).toBe(
        Math.sign(Date.parse(`${days[i]}T00:30:00+01:00`) - Date.parse(`${days[i - 1]}T23:45:00Z`)),
      );
    }
    expect(byTime(undefined, days[0])).toBe(-1);
  });

  it('that are written after a record was seen come after it, even where the clock is behind', () => {
    fc.assert(
      fc.property(times, times, (seen, clock) => {
        const [before, now] = [seen.toISOString(), clock.toISOString()];
        const next = laterThan(before, now);
        expect(byTime(next, before)).toBe(1);
        if (clock > seen) expect(next).toBe(now);
        expect(byTime(laterThan(next, before), next)).toBe(1);
      }),
    );
    expect(laterThan(undefined, '2025-01-01')).toBe('2025-01-01');
  });

  it('that are later than what was made by hand are always times: where there is none after it, the clock’s', () => {
    const clock = '2024-01-01T08:00:00.000Z';
    for (const before of ['2024-01-02', '2024-01-02T08:00:00.999999999Z', 'someday']) {
      expect(laterThan(before, clock)).toBe(clock);
    }
    expect(laterThan('2024-01-02T08:00:00+02:00', clock)).toBe('2024-01-02T08:00:00.000000001+02:00');
  });
});
