/** First load. Stored times (ISO 8601, UTC) as a person says them, in the phone's own time. */

// One that is new takes as long as all else of a touch.
const formats = new Map<string, Intl.DateTimeFormat>();

const at = (iso: string, options: Intl.DateTimeFormatOptions): string => {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return '';
  const key = JSON.stringify(options);
  const format = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', options);
  formats.set(key, format);
  return format.format(date);
};

/** `12 Nov`, with the year once it is another one. */
export function shortDay(iso: string): string {
  const sameYear = new Date(iso).getFullYear() === new Date().getFullYear();
  return at(iso, { day: 'numeric', month: 'short', ...(sameYear ? {} : { year: 'numeric' }) });
}
/** `09:12` */
export function clock(iso: string): string {
  const date = new Date(iso);
  const two = (n: number) => String(n).padStart(2, '0');
  return Number.isNaN(date.getTime()) ? '' : `${two(date.getHours())}:${two(date.getMinutes())}`;
}
/** `12 November 2026, 09:12` */
export const fullTime = (iso: string): string =>
  at(iso, { day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit', hour12: false });
/** `12 November 2026` */
export const longDay = (iso: string): string => at(iso, { day: 'numeric', month: 'long', year: 'numeric' });
