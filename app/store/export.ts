/**
 * Everything as a file that grows piece by piece: no text holds all of it, and no slice stops the page for long. The order in
 * which stores are read, and why, is said in core/records/backup-lines.ts.
 */
import {
  chained,
  digestOf,
  digestOfCounts,
  FILE_ORDER,
  firstLine,
  lastLine,
  noCounts,
  PIECE,
  pieceLine,
  READ_ORDER,
  recordLine,
} from '../../core/records/backup-lines.ts';
import type { Connection } from './connection.ts';
import { sha256 } from './digest.ts';
import { inPieces } from './in-pieces.ts';
import { type Look, slicesOf } from './read-parts.ts';
import { type Everything, isOfThisPhone, type RecordOf, type StoreName } from './schema.ts';
import type { Change } from './writer.ts';

/** Lines with their digest. The browser may keep a blob on the disk. */
interface Piece {
  readonly blob: Blob;
  readonly digest: string;
}
type Slices = (
  store: StoreName,
) => AsyncIterable<readonly RecordOf<StoreName>[]> | Iterable<readonly RecordOf<StoreName>[]>;

/** @param slices the records of a store, some at a time. @param made when, ISO 8601 */
export async function exportFile(slices: Slices, made: string): Promise<Blob> {
  const counts = noCounts();
  const pieces = {} as Record<StoreName, readonly Piece[]>;
  for (const store of READ_ORDER) {
    const all: Piece[] = [];
    for await (const piece of piecesOf(store, slices(store), counts)) all.push(piece);
    pieces[store] = all;
  }
  const first = firstLine(made);
  const parts: BlobPart[] = [`${first}\n`];
  let sum = await chained('', await sha256(first), sha256);
  for (const { blob, digest } of FILE_ORDER.flatMap((store) => pieces[store])) {
    sum = await chained(sum, digest, sha256);
    parts.push(blob, `${pieceLine(sum)}\n`);
  }
  const end = await chained(sum, await digestOfCounts(counts, sha256), sha256);
  return new Blob([...parts, `${lastLine(counts, end)}\n`], { type: 'application/json' });
}

async function* piecesOf(store: StoreName, slices: ReturnType<Slices>, counts: Record<StoreName, number>) {
  let lines: string[] = [];
  let length = 0;
  for await (const slice of slices) {
    for (const record of slice) {
      if (store === 'preferences' && isOfThisPhone(record.id)) continue;
      counts[store] += 1;
      const line = recordLine(store, record);
      lines.push(line);
      length += line.length;
      if (lines.length < PIECE.records && length < PIECE.characters) continue;
      yield await pieceOf(lines);
      lines = [];
      length = 0;
    }
  }
  if (lines.length > 0) yield await pieceOf(lines);
}

async function pieceOf(lines: readonly string[]): Promise<Piece> {
  return { blob: new Blob([`${lines.join('\n')}\n`]), digest: await digestOf(lines, sha256) };
}

/** What the database holds, with changes that still wait to be written laid over it. */
export function databaseSlices(connection: Connection, look: Look, waiting: readonly Change[]): Slices {
  const changed = new Map(waiting.map((change) => [`${change.store} ${change.id}`, change]));
  return async function* (store) {
    for await (const slice of slicesOf(connection, store, look)) {
      yield slice.filter(({ id }) => !changed.has(`${store} ${id}`));
    }
    // Of records of this store: see `Entry`.
    const own = [...changed.values()].filter((change) => change.store === store);
    yield own.flatMap(({ record }) => (record ? [record as RecordOf<StoreName>] : []));
  };
}

/** The same of what the screens hold. */
export function memorySlices(all: Everything): Slices {
  return (store) => inPieces<RecordOf<StoreName>>(all[store], PIECE.records);
}
