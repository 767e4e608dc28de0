/** Invented records for the store's tests, and a database of its own for each test. */

import type { Everything } from '../../app/store/schema.ts';
import { readBackupLines } from '../../core/records/backup-reader.ts';
import { makeBackup } from '../../core/records/envelope.ts';
import { linesOf } from '../../core/records/lines.ts';
import type { CarRecord, DraftRecord, ReadingRecord } from '../../core/records/stored.ts';
import frozen from '../../fixtures/databases/v1.json' with { type: 'json' };
import { inChunks, sha256, whole } from '../tools/backup-text.ts';

let lastName = 0;
export const freshName = (): string => `test-${process.pid}-${++lastName}`;

/** The records of the frozen database, one list a store. */
export const frozenRecords = Object.fromEntries(
  frozen.stores.map(({ name, records }) => [name, records]),
) as unknown as Everything;

export const car = frozenRecords.cars[0] as CarRecord;
export const reading = frozenRecords.readings[0] as ReadingRecord;

export const draft = (id: string, text: string): DraftRecord => ({
  id,
  texts: { 'LF.camber': text },
  changed: '2025-01-01T00:00:00.000Z',
});

/** What a backup holds, by store, each list in its order. */
export async function storesOf(file: Blob): Promise<Everything> {
  const { records } = await whole(readBackupLines(linesOf(inChunks(await file.text(), 10_000), 'backup', 1e7), sha256));
  return records;
}

/** A backup of the form that was one text. */
export const oneText = async (all: Everything): Promise<string> =>
  JSON.stringify(await makeBackup(all, '2025-06-11T17:30:00.000Z', sha256));

/** The same lists, each in the order of its ids. */
export function inOrder(everything: Everything): Everything {
  const sorted = Object.entries(everything).map(([name, list]: [string, readonly { readonly id: string }[]]) => [
    name,
    [...list].sort((a, b) => (a.id < b.id ? -1 : 1)),
  ]);
  return Object.fromEntries(sorted);
}
