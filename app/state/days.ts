/** First load. Stored times (ISO 8601, UTC) as a person says them, in the phone's own time. */

const at = (iso: string, options: Intl.DateTimeFormatOptions): string => {
  const date = new Date(iso);
  return Number.isNaN(date.getTime()) ? '' : new Intl.DateTimeFormat('en-GB', options).format(date);
};

/** `12 Nov`, with the year once it is another one. */
export function shortDay(iso: string): string {
  const sameYear = new Date(iso).getFullYear() === new Date().getFullYear();
  return at(iso, { day: 'numeric', month: 'short', ...(sameYear ? {} : { year: 'numeric' }) });
}
/** `09:12` */
export const clock = (iso: string): string => at(iso, { hour: '2-digit', minute: '2-digit', hour12: false });
/** `12 November 2026, 09:12` */
export const fullTime = (iso: string): string =>
  at(iso, { day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit', hour12: false });
