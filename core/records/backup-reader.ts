/** A backup from its lines, piece by piece: nothing of a piece is handed over before its checksum was met. */
import * as v from 'valibot';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open, shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import { InputError } from '../input-error.ts';
import { BACKUP_VERSION, type Counts, chained, digestOf, digestOfCounts, FORMAT, noCounts } from './backup-lines.ts';
import { DEEPEST } from './car-file.ts';
import type { CheckedBackup, Digest } from './envelope.ts';
import { parseJson } from './json.ts';
import { checkVersion, migrate } from './migrations.ts';
import { STORE_NAMES, type StoreName } from './stored.ts';
import { readStores, type SetAside } from './stored-schema.ts';

/** A car lies a few levels deeper in it than in its own file; a change that is kept for a record, deeper still. */
export const DEEPEST_BACKUP = DEEPEST + 8;
/** Characters of one record, as of a car file; and the values that one may hold. */
export const LONGEST_LINE = 50_000_000;
const MOST_VALUES = 2_000_000;
/** Of a piece: many times what ours have. */
const MOST_LINES = 10_000;
const LONGEST_PIECE = 60_000_000;

const checksum = v.string(ruleText({ is: 'a-checksum' }));
const FIRST = open(
  {
    format: v.literal(FORMAT, ruleText({ is: 'exactly', value: FORMAT })),
    version: v.unknown(),
    records: v.unknown(),
    made: v.string(ruleText({ is: 'time' })),
  },
  shape('format version records made', { as: 'backup' }),
);
const AFTER = open({
  checksum,
  counts: v.optional(byName(v.number(ruleText({ is: 'a-count' })), { is: 'counts' })),
});

/**
 * The records of a backup, checked as those of an envelope are: one that is not as it should be is set aside. The last piece
 * may be empty.
 * @throws InputError at the first thing that makes it no whole backup; what was handed over before it may not be used
 */
export async function* readBackupLines(lines: AsyncIterable<string>, digest: Digest): AsyncGenerator<CheckedBackup> {
  const reading = lines[Symbol.asyncIterator]();
  try {
    yield* piecesOf(reading, digest);
  } finally {
    await reading.return?.();
  }
}

async function* piecesOf(reading: AsyncIterator<string>, digest: Digest): AsyncGenerator<CheckedBackup> {
  const first = await reading.next();
  const text = first.done ? '' : first.value;
  const { version, records, made } = check(FIRST, parsed(text), 'backup');
  checkVersion(version, BACKUP_VERSION);
  const from = checkVersion(records);
  const counts = noCounts();
  let sum = await chained('', await digest(text), digest);
  for (;;) {
    const { body, after } = await nextPiece(reading);
    if (body.length > 0) sum = await chained(sum, await digestOf(body, digest), digest);
    const end = check(AFTER, parsed(after), 'backup');
    if (end.counts) sum = await chained(sum, await digestOfCounts(end.counts as Counts, digest), digest);
    // A piece ends with its own line, and the last one comes after it.
    if ((body.length === 0) !== (end.counts !== undefined)) throw noBackup(after);
    if (end.checksum !== sum) throw new InputError('checksum', end.checksum, { is: 'checksum', own: sum });
    const piece = { made, ...recordsOf(body, from, counts) };
    if (end.counts) await checkEnd(reading, end.counts as Counts, counts);
    yield piece;
    if (end.counts) return;
  }
}

async function checkEnd(reading: AsyncIterator<string>, told: Counts, counts: Counts): Promise<void> {
  for (const name of STORE_NAMES) {
    const there = counts[name];
    if (told[name] !== there) throw new InputError(`counts.${name}`, told[name], { is: 'count', there });
  }
  // Two files in one would otherwise be taken for the first of them.
  const { done, value } = await reading.next();
  if (!done && value !== '') throw noBackup(value);
}

const noBackup = (line: string): InputError =>
  new InputError('backup', line.slice(0, 40), { is: 'json', reason: 'whole, line by line' });

const parsed = (line: string): unknown =>
  parseJson(line, 'backup', LONGEST_LINE, { values: MOST_VALUES, deepest: DEEPEST_BACKUP });

/** Lines of records, and the one after them. @throws InputError where the file ends before */
async function nextPiece(reading: AsyncIterator<string>): Promise<{ body: readonly string[]; after: string }> {
  const body: string[] = [];
  let length = 0;
  for (;;) {
    const next = await reading.next();
    if (next.done || next.value === '') throw noBackup('');
    if (!next.value.startsWith('[')) return { body, after: next.value };
    body.push(next.value);
    length += next.value.length;
    if (body.length > MOST_LINES) throw new InputError('backup', body.length, { is: 'values', most: MOST_LINES });
    if (length > LONGEST_PIECE) throw new InputError('backup', 'text', { is: 'text', least: 0, most: LONGEST_PIECE });
  }
}

/** @param counts how many there were of each store before; those of the piece are added */
function recordsOf(body: readonly string[], version: number, counts: Record<StoreName, number>) {
  const lists = Object.fromEntries(STORE_NAMES.map((name) => [name, [] as unknown[]]));
  const before = { ...counts };
  const unread: SetAside[] = [];
  for (const line of body) {
    const store = storeOf(line);
    try {
      lists[store]?.push((parsed(line) as readonly unknown[])[1]);
      counts[store] += 1;
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      unread.push({ store, error });
      counts[store] += 1;
    }
  }
  // A step of a migration sees a piece, not all: it makes of each record what it becomes, by itself.
  const { version: _, ...migrated } = migrate('stores', { ...lists, version });
  const { stores, aside } = readStores(migrated, 'stores', before);
  return { records: stores, aside: [...unread, ...aside] };
}

/** @throws InputError for a store that there is not */
function storeOf(line: string): StoreName {
  const name = /^\["(\w{1,40})",/.exec(line)?.[1];
  const known = STORE_NAMES.find((one) => one === name);
  if (!known) throw new InputError('store', name, { is: 'one-of', of: STORE_NAMES });
  return known;
}
