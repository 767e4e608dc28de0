/**
 * Union of two sets of records by id. What is absent on one side deletes nothing; where both sides hold an id with
 * different content, the one that was changed later stays. Readings and moves never change, so there the one that
 * is here already stays. Merging the same records twice changes nothing.
 */
import { canonical } from '../../core/records/canonical.ts';
import { type Entry, type Everything, STORES, type StoreName } from './schema.ts';

export interface Merge {
  /** Only what is to be written. */
  readonly entries: readonly Entry[];
  readonly counts: MergeCounts;
}
export interface MergeCounts {
  /** Not here before. */
  readonly added: number;
  /** Here in an older form. */
  readonly updated: number;
  /** The same on both sides. */
  readonly same: number;
  /** Different, and the one that is here stays. */
  readonly kept: number;
}

type Stored = Entry[1];

export function merge(present: Everything, incoming: Everything): Merge {
  const entries: Entry[] = [];
  const counts = { added: 0, updated: 0, same: 0, kept: 0 };
  for (const store of STORES) {
    const here = new Map<string, Stored>(present[store].map((record) => [record.id, record]));
    for (const record of incoming[store]) {
      const verdict = compare(store, here.get(record.id), record);
      counts[verdict] += 1;
      // The pair comes from one list, so the record is of this store.
      if (verdict === 'added' || verdict === 'updated') entries.push([store, record] as Entry);
    }
  }
  return { entries, counts };
}

function compare(store: StoreName, here: Stored | undefined, incoming: Stored): keyof MergeCounts {
  if (!here) return 'added';
  if (canonical(here) === canonical(incoming)) return 'same';
  const [ours, theirs] = [age(store, here), age(store, incoming)];
  return theirs > ours ? 'updated' : 'kept';
}

/** ISO 8601 in UTC sorts as text. A visit has no time of change: closed counts as later than open. */
function age(store: StoreName, record: Stored): string {
  if ((store === 'cars' || store === 'drafts') && 'changed' in record) return record.changed;
  if (store === 'visits' && 'opened' in record) return record.closed ?? '';
  return '';
}
