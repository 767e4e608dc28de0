/**
 * First load. Whether the database is still the one that was written to. A record of its own is read with each write and
 * counts it: gone, or of another database, or with fewer writes than are known of, means that the browser has cleared
 * or lost what was said to be saved. The same count outside the database tells it at the next start.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import { newId } from './clock.ts';
import { StoreError } from './failure.ts';
import type { Loss, Mark, Outside } from './outside.ts';
import { CANARY, type Everything, STORES, type Transaction } from './schema.ts';

/** The records are not where they were written. */
export class ClearedError extends StoreError {
  constructor() {
    super('The browser has cleared the records of this phone.');
  }
}

export interface Canary {
  /** With each load. The first one learns, and what it `holds`; later ones compare. @throws ClearedError */
  look(transaction: Transaction<'readonly'>, holds?: Everything): Promise<void>;
  /** With each write: compares, and writes the count with it. @throws ClearedError before anything is asked for */
  count(transaction: Transaction<'readwrite'>): Promise<Counted>;
  /** With a write that cannot wait for an answer: what is found, to be compared once it is known. */
  find(transaction: Transaction<'readwrite'>): Promise<Mark | undefined>;
  /** @throws ClearedError */
  compare(found: Mark | undefined): void;
  /** The last count that is known of. */
  last(): Mark;
  /** A write of this count has reached the disk. */
  counted(mark: Mark): void;
  /** What was lost and nobody has seen yet. */
  readonly loss: ReadonlySignal<Loss | undefined>;
  report(loss: Loss | undefined): void;
}
/** The next count, and what writes it: the last request of its transaction, so that the records' own errors come first. */
export interface Counted {
  readonly mark: Mark;
  put(): Promise<unknown>;
}

export function createCanary(outside: Outside): Canary {
  const loss = signal(outside.loss.read());
  let known: Mark | undefined;
  let looked = false;
  /** A database of before the count: it is known by its records until the first write. */
  let hadRecords = false;

  function compare(found: Mark | undefined): void {
    if (known && (found?.database !== known.database || found.writes < known.writes)) throw new ClearedError();
  }
  async function compareIn(transaction: Some, found: Mark | undefined): Promise<void> {
    compare(found);
    if (!known && !found && hadRecords && (await isEmpty(transaction))) throw new ClearedError();
  }
  function report(what: Loss | undefined): void {
    loss.value = what;
    outside.loss.keep(what);
  }
  function learn(found: Mark | undefined): void {
    const before = outside.mark.read();
    const backup = outside.backup.read();
    const more = backup ? { backup } : {};
    if (before && found?.database !== before.database) report({ kind: 'gone', ...more });
    else if (before && found && found.writes < before.writes) {
      report({ kind: 'behind', writes: before.writes - found.writes, ...more });
    }
    // Said once: from here on the count outside is that of what is here.
    if (before) outside.mark.keep(found);
  }

  return {
    async look(transaction, holds) {
      const found = await markIn(transaction);
      if (looked) await compareIn(transaction, found);
      else {
        learn(found);
        hadRecords = holds !== undefined && STORES.some((store) => holds[store].length > 0);
        looked = true;
      }
      known = found ?? known;
    },
    async count(transaction) {
      const found = await markIn(transaction);
      await compareIn(transaction, found);
      const mark = { database: found?.database ?? newId(), writes: (found?.writes ?? 0) + 1 };
      return { mark, put: () => transaction.objectStore('preferences').put({ id: CANARY, value: mark }) };
    },
    find: markIn,
    compare,
    last: () => known ?? { database: newId(), writes: 0 },
    counted(mark) {
      known = mark;
      outside.mark.keep(mark);
    },
    loss,
    report,
  };
}

type Some = Transaction<'readonly'> | Transaction<'readwrite'>;

async function markIn(transaction: Some): Promise<Mark | undefined> {
  return (await transaction.objectStore('preferences').get(CANARY))?.value as Mark | undefined;
}

async function isEmpty(transaction: Some): Promise<boolean> {
  const counts = await Promise.all(STORES.map((store) => transaction.objectStore(store).count()));
  return counts.every((count) => count === 0);
}
