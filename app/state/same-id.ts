/**
 * Ids made of what a reading or a move is, so that the same one booked twice, by two windows or a nervous
 * thumb, is one record.
 */
import { canonical } from '../../core/records/canonical.ts';
import { hash } from '../../core/records/made-id.ts';
import type { MoveRecord, ReadingRecord } from '../../core/records/stored.ts';
import { isWithdrawn } from './visits.ts';

/** A file's id may be as long as a stored one may be: what is made of it has to be shorter. */
const LONGEST = 300;

function idOf(parent: string, content: unknown): string {
  const text = canonical(content);
  const start = parent.length > LONGEST ? `${parent.slice(0, LONGEST)}~${hash(parent)}` : parent;
  return `${start}~${hash(text)}${hash(`~${text}`)}`;
}

/** The id of a reading: of this visit, after so many others, with these digits. @param taken all readings that there are */
export function readingId(
  taken: readonly ReadingRecord[],
  { visitId, typed, replaces }: Pick<ReadingRecord, 'visitId' | 'typed' | 'replaces'>,
): string {
  const before = taken.filter((one) => one.visitId === visitId).length;
  return idOf(visitId, { before, typed, replaces });
}

type Unnamed = Omit<MoveRecord, 'id' | 'at'>;

/**
 * The id of a move: on this reading, of this adjuster, from here to there, for the how many-th time. What was the last
 * word on the adjuster is not said twice; what was taken back, or moved on from, may be.
 * @param all moves that there are
 */
export function moveId(all: readonly MoveRecord[], move: Unnamed): string {
  const ofReading = all.filter(({ readingId }) => readingId === move.readingId);
  const same = (one: Unnamed): boolean => contentOf(one) === contentOf(move);
  // A mark is taken back once.
  if (move.replaces) return idOf(move.readingId, contentOf(move));
  const replaced = new Set(ofReading.map(({ replaces }) => replaces));
  const last = ofReading
    .filter((one) => one.corner === move.corner && one.adjuster === move.adjuster)
    .filter((one) => !isWithdrawn(one) && !replaced.has(one.id))
    .reduce<MoveRecord | undefined>((newest, one) => (newest && newest.at > one.at ? newest : one), undefined);
  if (last && same(last)) return last.id;
  return idOf(move.readingId, [contentOf(move), ofReading.filter(same).length]);
}

const contentOf = ({ corner, adjuster, from, to, outcome, setBy, replaces }: Unnamed): string =>
  canonical({ corner, adjuster, from, to, outcome, ...(setBy && { setBy }), replaces });
