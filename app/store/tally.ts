/** What a backup holds and what restoring it does, added up piece by piece. */
import { noCounts } from '../../core/records/backup-lines.ts';
import type { CheckedBackup } from '../../core/records/envelope.ts';
import type { Both, Merge, MergeCounts } from './merge.ts';
import { STORES, type StoreName } from './schema.ts';

/** What a backup holds and what restoring it would do. */
export interface Preview {
  /** When the backup was made, ISO 8601. */
  readonly made: string;
  readonly records: Readonly<Record<StoreName, number>>;
  readonly changes: MergeCounts;
  /** Records that two phones told differently; both are kept. */
  readonly both: readonly Both[];
  /** Records of it that are not as they should be, and why; they stay out. */
  readonly aside: CheckedBackup['aside'];
}

export interface Tally {
  add(piece: CheckedBackup, merged: Merge): void;
  /** Records that it went through, those set aside among them. */
  through(): number;
  preview(): Preview;
}

export function createTally(): Tally {
  const records = noCounts();
  const changes = { added: 0, updated: 0, same: 0, kept: 0 };
  const both = new Map<string, Both>();
  const aside: CheckedBackup['aside'][number][] = [];
  let made = '';
  return {
    add(piece, merged) {
      made = piece.made;
      for (const store of STORES) records[store] += piece.records[store].length;
      for (const [verdict, count] of Object.entries(merged.counts)) changes[verdict as keyof MergeCounts] += count;
      for (const one of merged.both) both.set(`${one.store} ${one.id}`, one);
      aside.push(...piece.aside);
    },
    through: () => STORES.reduce((sum, store) => sum + records[store], aside.length),
    preview: () => ({ made, records, changes, both: [...both.values()], aside }),
  };
}
