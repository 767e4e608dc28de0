/**
 * A restore or an undo writes piece by piece, each in a transaction of its own: browsers have torn their log in the middle of
 * a huge one. What each record was is kept beside the database before it is written, and what was written is read back.
 */
import { canonical } from '../../core/records/canonical.ts';
import type { Canary } from './canary.ts';
import type { Connection } from './connection.ts';
import { StoreError } from './failure.ts';
import type { Mark } from './outside.ts';
import { readMany } from './read-many.ts';
import { CANARY, STORES, type Transaction } from './schema.ts';
import { markOf, type PieceChange, type Step, stepOf } from './undo.ts';

/** What a piece changes, as the records are now: only what differs. */
export type Plan = (transaction: Transaction<'readonly'> | Transaction<'readwrite'>) => Promise<readonly PieceChange[]>;

/** @param keep keeps the steps beside the database: nothing is written before that is done */
export async function writePiece(
  connection: Connection,
  canary: Canary,
  plan: Plan,
  keep: (steps: readonly Step[]) => Promise<void>,
): Promise<void> {
  for (;;) {
    const changes = await connection.withStore(STORES, 'readonly', plan);
    if (changes.length === 0) return;
    const steps = changes.map(stepOf);
    await keep(steps);
    const mark = await connection.withStore(STORES, 'readwrite', async (transaction) => {
      const counted = await canary.count(transaction);
      const now = await plan(transaction);
      // Somebody wrote meanwhile: what is kept must be what is written over.
      if (overOf(now) !== overOf(changes)) return undefined;
      await Promise.all(now.map((change) => put(transaction, change)));
      await counted.put();
      return counted.mark;
    });
    if (!mark) continue;
    await canary.counted(mark);
    await connection.withStore(STORES, 'readonly', (transaction) => readBack(transaction, steps, mark));
    return;
  }
}

async function put(transaction: Transaction<'readwrite'>, { store, id, record }: PieceChange): Promise<unknown> {
  // The store's name decides the type of its records: see `Entry`.
  return record ? transaction.objectStore(store).put(record as never) : transaction.objectStore(store).delete(id);
}

/** What is written over. */
const overOf = (changes: readonly PieceChange[]): string =>
  changes.map(({ store, id, before }) => `${store} ${id} ${before ? canonical(before) : ''}`).join('\n');

/** @throws StoreError where a record is not as it was written, and nobody has written since */
async function readBack(transaction: Transaction<'readonly'>, steps: readonly Step[], mark: Mark): Promise<void> {
  const stores = STORES.map((store) => [store, steps.filter((one) => one.store === store)] as const);
  const [now, ...found] = await Promise.all([
    transaction.objectStore('preferences').get(CANARY),
    ...stores.map(([store, own]) =>
      readMany(
        transaction,
        store,
        own.map(({ id }) => id),
      ),
    ),
  ]);
  if (canonical(now?.value) !== canonical(mark)) return;
  for (const [n, [store, own]] of stores.entries()) {
    for (const { id, after } of own) {
      const record = found[n]?.get(id);
      if ((record && markOf(record)) === after) continue;
      throw new StoreError(`The restored record ${store} ${id} did not hold.`);
    }
  }
}
