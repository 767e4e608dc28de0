/** One order for times and texts, the same on every phone: what is merged must not hang on which came first. */

export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const TIME = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d)(?:\.(\d{1,9}))?)?(?:Z|([+-])(\d\d):(\d\d))?)?$/;

/** The seconds since 1970 of a time in ISO 8601 (UTC where it has no offset), and nine digits of the next. */
function moment(time: string): readonly [seconds: number, rest: string] {
  const parts = TIME.exec(time);
  if (!parts) return [Number.NEGATIVE_INFINITY, ''];
  const number = (at: number): number => Number(parts[at] ?? 0);
  const offset = (parts[8] === '-' ? -1 : 1) * (number(9) * 60 + number(10));
  const minutes = days(number(1), number(2), number(3)) * 1440 + number(4) * 60 + number(5) - offset;
  return [minutes * 60 + number(6), (parts[7] ?? '').padEnd(9, '0')];
}

/** The whole seconds since 1970 of a time in ISO 8601. */
export const secondsOf = (time: string): number => moment(time)[0];

/** Days since 1 January 1970 in the Gregorian calendar, whose years are counted from March, so that a leap day is last. */
function days(year: number, month: number, day: number): number {
  const years = month > 2 ? year : year - 1;
  const leaps = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  const months = Math.floor((153 * ((month + 9) % 12) + 2) / 5);
  return years * 365 + leaps + months + day - 719_469;
}

/** Times in ISO 8601, of any offset; those of one moment by their text. No time is before all. */
export function byTime(a = '', b = ''): number {
  const [[x, xRest], [y, yRest]] = [moment(a), moment(b)];
  return x < y ? -1 : x > y ? 1 : byText(xRest, yRest) || byText(a, b);
}

/** `now`, or a little after `before` where this phone's clock is behind it: who has seen a record writes after it. */
export function laterThan(before: string | undefined, now: string): string {
  if (before === undefined || byTime(now, before) > 0) return now;
  const next = String(Number(moment(before)[1]) + 1).padStart(9, '0');
  const [, whole = '', zone = ''] = /^(.*T\d\d:\d\d:\d\d)(?:\.\d+)?(.*)$/.exec(before) ?? [];
  // A day without a time, and the last billionth of a second, are only in what was made by hand.
  return whole && next.length === 9 ? `${whole}.${next}${zone}` : now;
}

/** By time, those of one time by id. */
export const oldestFirst = <T extends { readonly at: string; readonly id: string }>(records: readonly T[]): T[] =>
  [...records].sort((a, b) => byText(a.at, b.at) || byText(a.id, b.id));
