/**
 * First load. The records in memory written back into a database that was cleared under them. What is there again by now,
 * from another tab, stays as it is there.
 */
import type { Connection } from './connection.ts';
import { inPieces } from './in-pieces.ts';
import type { Mark } from './outside.ts';
import { CANARY, type Entry, type Everything, STORES, type Transaction } from './schema.ts';

/** Records in one transaction: browsers have torn their log in the middle of a huge one. */
const PIECE = 500;

/**
 * @param mark of the database that was; it comes last, so that what is cut off half way is found again
 * @returns how many were written
 */
export async function putBack(connection: Connection, all: Everything, mark: () => Mark): Promise<[number, Mark]> {
  const entries = STORES.flatMap((store) => all[store].map((record) => [store, record] as Entry));
  let written = 0;
  for (const piece of inPieces(entries, PIECE)) {
    written += await connection.withStore(STORES, 'readwrite', (transaction) => putAbsent(transaction, piece));
  }
  const now = await connection.withStore(['preferences'], 'readwrite', async (transaction) => {
    const found = (await transaction.objectStore('preferences').get(CANARY))?.value as Mark | undefined;
    const { database, writes } = mark();
    const next = found ? { ...found, writes: found.writes + 1 } : { database, writes: writes + 1 };
    await transaction.objectStore('preferences').put({ id: CANARY, value: next });
    return next;
  });
  return [written, now];
}

async function putAbsent(transaction: Transaction<'readwrite'>, piece: readonly Entry[]): Promise<number> {
  const absent = await Promise.all(
    piece.map(async ([store, { id }]) => (await transaction.objectStore(store).getKey(id)) === undefined),
  );
  const due = piece.filter((_, at) => absent[at]);
  await Promise.all(due.map(([store, record]) => transaction.objectStore(store).put(record as never)));
  return due.length;
}
