/**
 * The connection to the database and the one way to use it: `withStore`. Phones close connections of apps in the
 * background without a word, so work that fails on a dead connection is done once more on a fresh one: `work` may
 * run twice and must be safe to repeat (records are written by id, so it is).
 */
import { openDB } from 'idb';
import { explain, mayBeDeadConnection, StoreError } from './failure.ts';
import { type Database, SCHEMA_VERSION, type Schema, type StoreName, type Transaction, upgrade } from './schema.ts';

type Mode = 'readonly' | 'readwrite';

export interface Connection {
  /**
   * Runs `work` in one transaction and resolves when it has reached the disk.
   * @throws StoreError in plain words; nothing of the transaction is kept then.
   */
  withStore<M extends Mode, T>(
    names: readonly StoreName[],
    mode: M,
    work: (transaction: Transaction<M>) => Promise<T>,
  ): Promise<T>;
  close(): void;
}

export interface ConnectionEvents {
  /** Another tab holds an older schema open; opening waits until it lets go. */
  blocked(message: string): void;
  /** A newer schema waits for this connection: last chance to write. */
  blocking(): void;
  /** The browser closed the connection, so that the records may be gone; or the database is being deleted, and they are. */
  cut(gone: boolean): void;
}

/** A transaction that answers nothing for this long counts as dead, ms. */
const PATIENCE = 30_000;

export function connect(name: string, events: ConnectionEvents): Connection {
  let opening: Promise<Database> | undefined;
  let current: Database | undefined;
  let retired: StoreError | undefined;

  /** The open promise is kept before anything is awaited, so that two callers never open twice. */
  function open(): Promise<Database> {
    if (opening) return opening;
    const mine = openDB<Schema>(name, SCHEMA_VERSION, {
      upgrade: (database, from, _to, transaction) =>
        upgrade(database, from, transaction as Transaction<'versionchange'>),
      blocked: () => events.blocked('Another tab still runs an older Cornerwright. Close it to go on.'),
      blocking: (_current, wanted) => {
        // A transaction that has begun by now still completes: closing waits for it.
        events.blocking();
        drop();
        // No version wanted: the database is being deleted, and a fresh one may be opened after it.
        if (wanted === null) events.cut(true);
        else retired = new StoreError('A newer Cornerwright is open in another tab. Close this one.');
      },
      terminated: () => {
        if (opening !== mine) return;
        drop();
        events.cut(false);
      },
    });
    opening = mine;
    mine.then(
      (database) => {
        if (opening === mine) current = database;
        else database.close();
      },
      () => {
        if (opening === mine) opening = undefined;
      },
    );
    return mine;
  }

  function drop(): void {
    current?.close();
    current = undefined;
    opening = undefined;
  }

  async function once<M extends Mode, T>(
    names: readonly StoreName[],
    mode: M,
    work: (transaction: Transaction<M>) => Promise<T>,
  ): Promise<T> {
    if (retired) throw retired;
    // Already open: no await, so that the work of a page that is being hidden begins before the handler ends.
    const database = current ?? (await open());
    const transaction = database.transaction([...names], mode, { durability: 'strict' });
    // Awaited below; an abort before that must not count as unhandled.
    transaction.done.catch(() => undefined);
    try {
      const result = await within(PATIENCE, work(transaction));
      await within(PATIENCE, transaction.done);
      return result;
    } catch (error) {
      // The transaction's own error is the cause (no room left); the request only says that it was aborted.
      const cause = transaction.error ?? error;
      try {
        transaction.abort();
      } catch {
        // It has ended already.
      }
      throw cause;
    }
  }

  return {
    async withStore(names, mode, work) {
      try {
        return await once(names, mode, work);
      } catch (error) {
        if (!mayBeDeadConnection(error)) throw explain(error);
        drop();
        return await once(names, mode, work).catch((again) => {
          throw explain(again);
        });
      }
    },
    close: drop,
  };
}

function within<T>(milliseconds: number, work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new DOMException('no answer from the database', 'TimeoutError')),
      milliseconds,
    );
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
