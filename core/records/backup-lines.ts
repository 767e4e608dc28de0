/**
 * The form of a backup: lines, so that it is written and read piece by piece, however large it is. The first says what it
 * is; then a record a line; after each piece of records their checksum, chained to the one before; the last line has the
 * counts, so that a file which was cut off is noticed. Before version 2 it was one text: see envelope.ts.
 */
import { canonical } from './canonical.ts';
import type { Digest } from './envelope.ts';
import { VERSION } from './migrations.ts';
import { STORE_NAMES, type StoreName, type Stores } from './stored.ts';

export const FORMAT = 'cornerwright-backup';
/** Of the form; what the records are like has a version of its own. */
export const BACKUP_VERSION = 2;

export type Counts = Readonly<Record<StoreName, number>>;

/**
 * The order in which records are read from a database that is written to meanwhile: what names others comes before what it
 * names. Whatever is found then has been there, with all that it names, by the time that these are read; the other way round
 * a visit that is opened between two slices would be read without its car. A draft becomes a reading, so it comes first too.
 */
export const READ_ORDER = [
  'drafts',
  'moves',
  'readings',
  'visits',
  'cars',
  'preferences',
] as const satisfies StoreName[];
/** The order in a file: where a restore is cut off, what came in has what it names. */
export const FILE_ORDER: readonly StoreName[] = STORE_NAMES;

/** A piece is full at so many records, or so many characters. */
export const PIECE = { records: 400, characters: 400_000 } as const;

/** @param made when, ISO 8601 */
export const firstLine = (made: string): string =>
  JSON.stringify({ format: FORMAT, version: BACKUP_VERSION, records: VERSION, made });

export const recordLine = (store: StoreName, record: Stores[StoreName][number]): string =>
  JSON.stringify([store, record]);

/** After a piece. */
export const pieceLine = (checksum: string): string => JSON.stringify({ checksum });

export const lastLine = (counts: Counts, checksum: string): string => JSON.stringify({ counts, checksum });

/** The digest of the lines of a piece. */
export const digestOf = (lines: readonly string[], digest: Digest): Promise<string> => digest(lines.join('\n'));

/** The checksum after one more link: the digest of the first line, of a piece, of the counts. */
export const chained = (before: string, link: string, digest: Digest): Promise<string> => digest(`${before}\n${link}`);

export const digestOfCounts = (counts: Counts, digest: Digest): Promise<string> => digest(canonical(counts));

export const noCounts = (): Record<StoreName, number> =>
  Object.fromEntries(STORE_NAMES.map((name) => [name, 0])) as Record<StoreName, number>;
