/**
 * A car or a visit that was deleted: marks with a time beside the record, of which the latest holds, joined by union as all
 * marks are (deletion-marks.ts). Nothing goes: whatever is deleted can be brought back. A mark knows how much hung on what
 * it deleted; where there is more, another phone worked on it without knowing, and the deletion does not hold.
 */
import type { Deletion } from '../contract.ts';
import { byTime } from './order.ts';

export interface Deletable {
  /** The oldest first. */
  readonly deleted?: readonly Deletion[];
}

/** In their order, whoever wrote them down. */
export const marksOf = ({ deleted = [] }: Deletable): readonly Deletion[] => [...deleted].sort(inOrder);

export const inOrder = (a: Deletion, b: Deletion): number => byTime(a.at, b.at) || (a.knew ?? -1) - (b.knew ?? -1);

/** The deletion that was made last, unless what it deleted was brought back since. */
export function deletionOf(record: Deletable): Deletion | undefined {
  if (!record.deleted) return undefined;
  const last = marksOf(record).at(-1);
  return last?.knew === undefined ? undefined : last;
}

/** What is there now of what a deletion may have known. */
export interface Work {
  /** How many records hang on it; they only ever become more. */
  readonly records: number;
  /** When something was last marked, edited or typed, ISO 8601. */
  readonly latest?: string | undefined;
}

/**
 * Whether it is deleted: not where more hangs on it than anybody knew who deleted it since it was last brought back, nor
 * where it was worked on after.
 */
export function isDeleted(record: Deletable, { records, latest }: Work): boolean {
  const last = deletionOf(record);
  if (!last) return false;
  const marks = marksOf(record);
  const since = marks.slice(marks.findLastIndex(({ knew }) => knew === undefined) + 1);
  const knew = Math.max(...since.map((mark) => mark.knew ?? 0));
  return records <= knew && byTime(latest, last.at) <= 0;
}

/** The latest of times, of which some are not known. */
export const latestOf = (times: readonly (string | undefined)[]): string | undefined =>
  times.reduce((latest, time) => (byTime(latest, time) < 0 ? time : latest), undefined);

interface Marked {
  readonly closed?: string;
  readonly marks?: Readonly<Record<string, readonly { readonly at?: string }[]>>;
}

/** When a visit was last closed, opened again or ticked, as far as that is known; see visit-facts.ts. */
export const lastMarked = ({ closed, marks = {} }: Marked): string | undefined =>
  latestOf([closed, ...Object.values(marks).flatMap((list) => list.map(({ at }) => at))]);
