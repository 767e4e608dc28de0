/** A car or a visit deleted and brought back, and two phones' marks of that as one; see deletion.ts. */
import type { Deletion } from '../contract.ts';
import { canonical } from './canonical.ts';
import { type Deletable, inOrder, marksOf, type Work } from './deletion.ts';
import { byTime, laterThan } from './order.ts';

/** The marks of both, for the record that is made of both. */
export function joinDeletions(a: Deletable, b: Deletable): Deletable {
  const marks = new Map([...(a.deleted ?? []), ...(b.deleted ?? [])].map((mark) => [canonical(mark), mark]));
  return marks.size > 0 ? { deleted: [...marks.values()].sort(inOrder) } : {};
}

/** The record deleted here, with all that is known to hang on it. @param now ISO 8601 */
export const deletedNow = <T extends Deletable>(record: T, { records, latest }: Work, now: string): T =>
  withMark(record, { at: laterThan(latest, now), knew: records }, now);

/** The record brought back here. @param now ISO 8601 */
export const broughtBack = <T extends Deletable>(record: T, now: string): T => withMark(record, { at: now }, now);

/** It stands in the place of the one that was shown; it comes after that, though the clock is behind. */
function withMark<T extends Deletable>(record: T, mark: Deletion, now: string): T {
  const marks = marksOf(record);
  const last = marks.at(-1)?.at;
  const at = last !== undefined && byTime(mark.at, last) <= 0 ? laterThan(last, now) : mark.at;
  return { ...record, deleted: [...marks.slice(0, -1), { ...mark, at }] };
}
