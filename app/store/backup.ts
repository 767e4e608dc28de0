/**
 * A backup out and a backup in. In: the whole file is checked before anything is touched, what it changes is kept for
 * an undo in the transaction that writes it, and what is on the disk is read back.
 */

import { canonical } from '../../core/records/canonical.ts';
import { checkDepth, DEEPEST, parseJson } from '../../core/records/car-file.ts';
import { type CheckedBackup, checkBackup, makeBackup } from '../../core/records/envelope.ts';
import type { Canary } from './canary.ts';
import type { Connection } from './connection.ts';
import { StoreError } from './failure.ts';
import { type Both, type MergeCounts, merge } from './merge.ts';
import { readAll } from './read-all.ts';
import { type Entry, type Everything, isInternal, STORES, type StoreName, type Transaction, UNDO } from './schema.ts';
import { type Kept, keptFor, keptForUndo, type UndoPreview, undoOf } from './undo.ts';

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
export type RestoreReport = Preview;

export interface Backup {
  inspect(text: string): Promise<Preview>;
  restore(text: string): Promise<RestoreReport>;
  inspectUndo(): Promise<UndoPreview | undefined>;
  undo(): Promise<boolean>;
  canUndo(): Promise<boolean>;
}

/** Characters: near what a browser takes in one text. Whatever a phone could write in one, it can read again. */
const LONGEST_BACKUP = 500_000_000;
/** A car lies a few levels deeper in it than in its own file; a change that is kept for a record, deeper still. */
const DEEPEST_BACKUP = DEEPEST + 8;

interface BackupParts {
  readonly connection: Connection;
  readonly canary: Canary;
  /** Writes what still waits: a restore builds on it. */
  readonly settle: () => Promise<void>;
  readonly now: () => string;
}

/** The backup as text. @param made when, ISO 8601 */
export async function exportText(everything: Everything, made: string): Promise<string> {
  return `${JSON.stringify(await makeBackup(everything, made, sha256))}\n`;
}

export function createBackup({ connection, canary, settle, now }: BackupParts): Backup {
  async function preview(text: string) {
    const data = parseJson(text, 'backup', LONGEST_BACKUP);
    checkDepth(data, 'backup', DEEPEST_BACKUP);
    const { made, records, aside } = await checkBackup(data, sha256);
    // What this app keeps for itself is nobody else's to write.
    const preferences = records.preferences.filter(({ id }) => !isInternal(id));
    const incoming: Everything = { ...records, preferences };
    return { incoming, made, aside };
  }

  return {
    async inspect(text) {
      const { incoming, made, aside } = await preview(text);
      await settle();
      const present = await connection.withStore(STORES, 'readonly', readAll);
      const { counts, both } = merge(present, incoming);
      return { made, records: count(incoming), changes: counts, both, aside };
    },

    async restore(text) {
      const { incoming, made, aside } = await preview(text);
      await settle();
      const merged = await connection.withStore(STORES, 'readwrite', async (transaction) => {
        const counted = await canary.count(transaction);
        const present = await readAll(transaction);
        const result = merge(present, incoming);
        // With nothing to add, the way back to before the last restore stays open.
        if (result.entries.length === 0) return result;
        await keepForUndo(transaction, keptFor(present, result.entries, now()));
        await putAll(transaction, result.entries);
        await counted.put();
        return { ...result, mark: counted.mark };
      });
      if ('mark' in merged) canary.counted(merged.mark);
      await readBack(merged.entries);
      return { made, records: count(incoming), changes: merged.counts, both: merged.both, aside };
    },

    async inspectUndo() {
      await settle();
      return connection.withStore(STORES, 'readonly', async (transaction) => {
        const kept = await keptIn(transaction);
        return kept && undoOf(kept, await readAll(transaction));
      });
    },

    async undo() {
      await settle();
      const mark = await connection.withStore(STORES, 'readwrite', async (transaction) => {
        const counted = await canary.count(transaction);
        const kept = await keptIn(transaction);
        if (!kept) return undefined;
        const present = await readAll(transaction);
        const change = undoOf(kept, present);
        await Promise.all(change.goes.map(([store, { id }]) => transaction.objectStore(store).delete(id)));
        await putAll(transaction, change.returns);
        await keepForUndo(transaction, keptForUndo(present, change, now()));
        await counted.put();
        return counted.mark;
      });
      if (mark) canary.counted(mark);
      return mark !== undefined;
    },

    canUndo: () =>
      connection.withStore(['preferences'], 'readonly', async (transaction) =>
        Boolean(await transaction.objectStore('preferences').getKey(UNDO)),
      ),
  };

  async function readBack(entries: readonly Entry[]): Promise<void> {
    const present = entriesOf(await connection.withStore(STORES, 'readonly', readAll));
    const found = new Map(present.map(([store, record]) => [`${store} ${record.id}`, record]));
    for (const [store, record] of entries) {
      const name = `${store} ${record.id}`;
      if (canonical(found.get(name)) !== canonical(record)) {
        throw new StoreError(`The restored record ${name} did not hold.`);
      }
    }
  }
}

function entriesOf(everything: Everything): Entry[] {
  // Each record is paired with the name of the list that it comes from.
  return STORES.flatMap((store) => everything[store].map((record) => [store, record] as Entry));
}

async function putAll(transaction: Transaction<'readwrite'>, entries: readonly Entry[]): Promise<void> {
  await Promise.all(entries.map(async ([store, record]) => transaction.objectStore(store).put(record as never)));
}

function keepForUndo(transaction: Transaction<'readwrite'>, kept: Kept): Promise<unknown> {
  return transaction.objectStore('preferences').put({ id: UNDO, value: kept });
}

async function keptIn(transaction: Transaction<'readonly'> | Transaction<'readwrite'>): Promise<Kept | undefined> {
  return (await transaction.objectStore('preferences').get(UNDO))?.value as Kept | undefined;
}

function count(everything: Everything): Readonly<Record<StoreName, number>> {
  return Object.fromEntries(STORES.map((store) => [store, everything[store].length])) as Record<StoreName, number>;
}

/** SHA-256, lower-case hexadecimal. */
async function sha256(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
