/**
 * A backup from a file, piece by piece, of either form. It runs in a worker of its own (backup-worker.ts), as reading and
 * checking take long, and in the page where there is none.
 */

import { InputError } from '../../core/input-error.ts';
import { PIECE } from '../../core/records/backup-lines.ts';
import { DEEPEST_BACKUP, LONGEST_LINE, readBackupLines } from '../../core/records/backup-reader.ts';
import { type CheckedBackup, checkBackup } from '../../core/records/envelope.ts';
import { checkDepth, parseJson } from '../../core/records/json.ts';
import { linesOf } from '../../core/records/lines.ts';
import { sha256 } from './digest.ts';
import { inPieces } from './in-pieces.ts';
import { isOfThisPhone, STORES } from './schema.ts';

/** Characters: near what a browser takes in one text. Whatever a phone could write in one, it can read again. */
const LONGEST_ONE_TEXT = 500_000_000;
/** Of the first line of a backup of lines: ours has a tenth of it. */
const LONGEST_FIRST = 1000;

/** @throws InputError, and then nothing of it is to be used, what came before it neither */
export async function* readBackup(file: Blob): AsyncGenerator<CheckedBackup> {
  const pieces = (await isOfLines(file))
    ? readBackupLines(linesOf(textOf(file), 'backup', LONGEST_LINE), sha256)
    : readOneText(file);
  for await (const { made, records, aside } of pieces) {
    // What this phone keeps for itself is nobody else's to write.
    const preferences = records.preferences.filter(({ id }) => !isOfThisPhone(id));
    yield { made, records: { ...records, preferences }, aside };
  }
}

/** A backup of one text has its version in one as well, but no end of its first line behind it. */
async function isOfLines(file: Blob): Promise<boolean> {
  // Without the mark that some editors put before a text: to decode it takes it away.
  const start = await file.slice(0, LONGEST_FIRST).text();
  const end = start.indexOf('\n');
  try {
    const first: { readonly made?: unknown; readonly stores?: unknown } = JSON.parse(
      start.slice(0, end < 0 ? undefined : end),
    );
    return first.made !== undefined && first.stores === undefined;
  } catch {
    return false;
  }
}

async function* textOf(file: Blob): AsyncGenerator<string> {
  const reader = file.stream().pipeThrough(new TextDecoderStream()).getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel().catch(() => undefined);
  }
}

async function* readOneText(file: Blob): AsyncGenerator<CheckedBackup> {
  // No character takes more bytes than four.
  if (file.size > 4 * LONGEST_ONE_TEXT) {
    throw new InputError('backup', 'text', { is: 'text', least: 0, most: LONGEST_ONE_TEXT });
  }
  const data = parseJson(await file.text(), 'backup', LONGEST_ONE_TEXT);
  checkDepth(data, 'backup', DEEPEST_BACKUP);
  const { made, records, aside } = await checkBackup(data, sha256);
  const none = Object.fromEntries(STORES.map((store) => [store, []])) as unknown as CheckedBackup['records'];
  yield { made, records: none, aside };
  for (const store of STORES) {
    for (const piece of inPieces<unknown>(records[store], PIECE.records)) {
      yield { made, records: { ...none, [store]: piece }, aside: [] };
    }
  }
}
