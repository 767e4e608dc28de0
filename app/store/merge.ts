/** A backup's records laid into those that are here: see core/records/union.ts, which says what becomes of each. */
import { type Union, unite, uniteFound, type Verdict } from '../../core/records/union.ts';
import { readMany } from './read-many.ts';
import { type Entry, type Everything, type RecordOf, STORES, type StoreName, type Transaction } from './schema.ts';
import type { PieceChange } from './undo.ts';

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
  return mergeOf(STORES.map((store) => ({ store, ...unite(store, present[store], incoming[store]) })));
}

/** The same of a piece, for which only those records are read that it is about. */
export async function mergePiece(
  transaction: Transaction<'readonly'> | Transaction<'readwrite'>,
  piece: Everything,
): Promise<Merge & { readonly changes: readonly PieceChange[] }> {
  const parts: Part[] = [];
  const changes: PieceChange[] = [];
  for (const store of STORES) {
    const incoming: readonly RecordOf<StoreName>[] = piece[store];
    const found = new Map<string, RecordOf<StoreName> | undefined>();
    let wanted: ReadonlySet<string> = new Set(incoming.map(({ id }) => id));
    let union: Union<RecordOf<StoreName>> | undefined;
    // Where two contents meet under one id, one of them goes under an id that is made of it: this is then read as well.
    while (wanted.size > 0) {
      const read = await readMany(transaction, store, [...wanted]);
      for (const id of wanted) found.set(id, read.get(id));
      const more = new Set<string>();
      const find = (id: string) => {
        if (!found.has(id)) more.add(id);
        return found.get(id);
      };
      union = uniteFound(store, find, incoming as never);
      wanted = more;
    }
    for (const record of union?.changed ?? []) {
      changes.push({ store, id: record.id, before: found.get(record.id), record });
    }
    if (union) parts.push({ store, ...union });
  }
  return { ...mergeOf(parts), changes };
}

interface Part extends Union<RecordOf<StoreName>> {
  readonly store: StoreName;
}

function mergeOf(parts: readonly Part[]): Merge {
  const verdicts = parts.flatMap((part) => part.verdicts);
  const count = (verdict: Verdict): number => verdicts.filter((one) => one === verdict).length;
  return {
    // Each list's records are of its store.
    entries: parts.flatMap(({ store, changed }) => changed.map((record) => [store, record] as unknown as Entry)),
    counts: { added: count('added'), updated: count('updated'), same: count('same'), kept: count('kept') },
    both: parts.flatMap(({ store, twofold }) => twofold.map((id) => ({ store, id }))),
  };
}
