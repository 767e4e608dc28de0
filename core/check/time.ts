/** Times as text, without a clock to ask: whether a day and an hour of that name exist. */

const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,9})?)?(?:Z|[+-](\d{2}):(\d{2}))?)?$/;

/** ISO 8601: a day, or a day and a time, in UTC, at an offset or where it was written. */
export function isTime(text: string): boolean {
  const [, ...parts] = ISO.exec(text) ?? [];
  const [year, month, day, hour = 0, minute = 0, second = 0, ahead = 0, aheadMinutes = 0] = parts.map((part) =>
    part === undefined ? undefined : Number(part),
  );
  if (year === undefined || month === undefined || day === undefined) return false;
  const isDay = day >= 1 && day <= daysIn(month, year);
  return isDay && hour < 24 && minute < 60 && second < 60 && ahead < 24 && aheadMinutes < 60;
}

/** None in a month that there is not. */
function daysIn(month: number, year: number): number {
  if (month < 1 || month > 12) return 0;
  if (month !== 2) return [4, 6, 9, 11].includes(month) ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}
