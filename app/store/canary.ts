/**
 * First load. Whether the database is still the one that was written to. A record of its own is read with each write and
 * counts it: gone, or of another database, or with fewer writes than are known of, means that the browser has cleared
 * or lost what was said to be saved. The same count outside the database tells it at the next start.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import { newId } from './clock.ts';
import { StoreError } from './failure.ts';
import type { Loss, Mark, Outside } from './outside.ts';
import { CANARY, STORES, type Transaction } from './schema.ts';

/** The records are not where they were written. */
export class ClearedError extends StoreError {
  constructor() {
    super('The browser has cleared the records of this phone.');
  }
}

export interface Canary {
  /** With each load, of all or of a part. The first one learns; later ones compare. @throws ClearedError */
  look(transaction: Transaction<'readonly'>): Promise<void>;
  /** With each write: compares, and writes the count with it. @throws ClearedError before anything is asked for */
  count(transaction: Transaction<'readwrite'>): Promise<Counted>;
  /** With a write that cannot wait for an answer: what is found, to be compared once it is known. */
  find(transaction: Transaction<'readonly'> | Transaction<'readwrite'>): Promise<Found>;
  /** Such a write has reached the disk, where this was found. @throws ClearedError */
  uncounted(found: Found): void;
  /** The last count that is known of. */
  last(): Mark;
  /** What was kept outside with the last write, as it was before `found` was read: says what is missing of it. */
  heard(before: Mark, found: Found): void;
  /** A write of this count has reached the disk. Ends when that is kept outside. */
  counted(mark: Mark): Promise<void>;
  /** What was lost and nobody has seen yet. */
  readonly loss: ReadonlySignal<Loss | undefined>;
  report(loss: Loss | undefined): void;
}
/** The next count, and what writes it: the last request of its transaction, so that the records' own errors come first. */
export interface Counted {
  readonly mark: Mark;
  put(): Promise<unknown>;
}

/** What a transaction saw of the database before it wrote. */
export interface Found {
  readonly mark: Mark | undefined;
  readonly isEmpty: boolean;
}

export function createCanary(outside: Outside): Canary {
  const loss = signal(outside.loss.read());
  let known: Mark | undefined;
  let looked = false;
  /** Until the first write that is counted, a database is known by having records. */
  let hasRecords = false;
  /** Seen to be cleared: by what is written since it may look whole again, and is not until all is written back. */
  let isCleared = false;

  /** Everything is asked for before anything is awaited: what is asked for after it comes after it. */
  async function find(transaction: Some): Promise<Found> {
    const asked = [transaction.objectStore('preferences').get(CANARY), known ? false : isEmpty(transaction)] as const;
    const [record, empty] = await Promise.all(asked);
    return { mark: record?.value as Mark | undefined, isEmpty: empty };
  }
  function compare({ mark, isEmpty }: Found): void {
    const isOther = known && (mark?.database !== known.database || mark.writes < known.writes);
    isCleared ||= Boolean(isOther) || (!known && !mark && hasRecords && isEmpty);
    if (isCleared) throw new ClearedError();
  }
  function report(what: Loss | undefined): void {
    loss.value = what;
    outside.loss.keep(what);
  }
  function learn(found: Mark | undefined): void {
    const before = outside.mark.read();
    hold(before, found);
    // Said once: from here on the count outside is that of what is here.
    if (before) outside.mark.keep(found);
  }
  function hold(before: Mark | undefined, found: Mark | undefined): void {
    const backup = outside.backup.read();
    const more = backup ? { backup } : {};
    if (before && found?.database !== before.database) report({ kind: 'gone', ...more });
    else if (before && found && found.writes < before.writes) {
      report({ kind: 'behind', writes: before.writes - found.writes, ...more });
    }
  }

  return {
    async look(transaction) {
      const found = await find(transaction);
      if (looked) compare(found);
      else {
        learn(found.mark);
        hasRecords = !found.isEmpty;
        looked = true;
      }
      known = found.mark ?? known;
    },
    async count(transaction) {
      const found = await find(transaction);
      compare(found);
      const before = found.mark ?? { database: newId(), writes: 0 };
      const mark = { ...before, writes: before.writes + 1 };
      return { mark, put: () => transaction.objectStore('preferences').put({ id: CANARY, value: mark }) };
    },
    find,
    uncounted(found) {
      compare(found);
      hasRecords = true;
    },
    heard(before, { mark }) {
      hold(before, mark);
      void outside.markFile.keep(mark);
    },
    last: () => known ?? { database: newId(), writes: 0 },
    counted(mark) {
      isCleared = false;
      known = mark;
      outside.mark.keep(mark);
      return outside.markFile.keep(mark);
    },
    loss,
    report,
  };
}

type Some = Transaction<'readonly'> | Transaction<'readwrite'>;

async function isEmpty(transaction: Some): Promise<boolean> {
  // One key each: to count all of a large store takes long.
  const keys = await Promise.all(STORES.map((store) => transaction.objectStore(store).getAllKeys(undefined, 1)));
  return keys.flat().length === 0;
}
