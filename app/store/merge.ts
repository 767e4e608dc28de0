/** A backup's records laid into those that are here: see core/records/union.ts, which says what becomes of each. */
import { unite, type Verdict } from '../../core/records/union.ts';
import { type Entry, type Everything, STORES, type StoreName } from './schema.ts';

export interface Merge {
  /** Only what is to be written. */
  readonly entries: readonly Entry[];
  readonly counts: MergeCounts;
  /** Records that two phones told differently; both are kept. */
  readonly both: readonly Both[];
}
/** Records that came in: not here before, told more of one here, the same on both sides, here already and more. */
export type MergeCounts = Readonly<Record<Verdict, number>>;
export interface Both {
  readonly store: StoreName;
  readonly id: string;
}

/** Joining the same records twice changes nothing, and neither does the order in which backups come. */
export function merge(present: Everything, incoming: Everything): Merge {
  const parts = STORES.map((store) => ({ store, ...unite(store, present[store], incoming[store]) }));
  const verdicts = parts.flatMap((part) => part.verdicts);
  const count = (verdict: Verdict): number => verdicts.filter((one) => one === verdict).length;
  return {
    // Each list's records are of its store.
    entries: parts.flatMap(({ store, changed }) => changed.map((record) => [store, record] as unknown as Entry)),
    counts: { added: count('added'), updated: count('updated'), same: count('same'), kept: count('kept') },
    both: parts.flatMap(({ store, twofold }) => twofold.map((id) => ({ store, id }))),
  };
}
