/** A backup as lines, made of all its records at once: what the app does in slices. */
import {
  chained,
  digestOf,
  digestOfCounts,
  FILE_ORDER,
  firstLine,
  lastLine,
  noCounts,
  pieceLine,
  recordLine,
} from '../../core/records/backup-lines.ts';
import type { Stores } from '../../core/records/stored.ts';

/** In Node and in a page alike. */
export async function sha256(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** @param size records of a piece */
export async function backupLines(stores: Stores, made: string, size: number): Promise<string[]> {
  const counts = noCounts();
  const records = FILE_ORDER.flatMap((store) => {
    counts[store] = stores[store].length;
    return stores[store].map((record) => recordLine(store, record));
  });
  const first = firstLine(made);
  const lines = [first];
  let sum = await chained('', await sha256(first), sha256);
  for (let from = 0; from < records.length; from += size) {
    const body = records.slice(from, from + size);
    sum = await chained(sum, await digestOf(body, sha256), sha256);
    lines.push(...body, pieceLine(sum));
  }
  lines.push(lastLine(counts, await chained(sum, await digestOfCounts(counts, sha256), sha256)));
  return lines;
}

/** A text as it may come from a file: in pieces of some characters. */
export async function* inChunks(text: string, size: number): AsyncGenerator<string> {
  for (let from = 0; from < text.length; from += size) yield text.slice(from, from + size);
}

/** What a backup of these lines holds, its pieces joined. */
export async function whole(pieces: AsyncIterable<{ records: Stores; aside: readonly unknown[]; made: string }>) {
  const records = Object.fromEntries(FILE_ORDER.map((store) => [store, [] as unknown[]]));
  const aside: unknown[] = [];
  let made = '';
  for await (const piece of pieces) {
    for (const store of FILE_ORDER) records[store]?.push(...piece.records[store]);
    aside.push(...piece.aside);
    made = piece.made;
  }
  return { records: records as unknown as Stores, aside, made };
}
