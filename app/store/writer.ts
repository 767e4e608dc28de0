/**
 * The one writer: changes are written in the order in which they came, and stay in the queue until they are on the
 * disk. What cannot be written is kept and tried again; `saveState` says how it stands and is always true.
 */
import { type ReadonlySignal, signal } from '@preact/signals';
import { InputError } from '../../core/input-error.ts';
import { type Canary, ClearedError, type Counted } from './canary.ts';
import type { Connection } from './connection.ts';
import { explain } from './failure.ts';
import { withRecords } from './lists.ts';
import { type Entry, type Everything, STORES, type StoreName, type Transaction } from './schema.ts';

export type SaveState = 'saved' | 'saving' | 'not-saved';

/** A record to keep, or an id to forget. */
export type Change =
  | { readonly store: StoreName; readonly id: string; readonly record: { readonly id: string } }
  | { readonly store: StoreName; readonly id: string; readonly record?: undefined };

/** Changes that belong together: all of them or none. */
interface Group {
  readonly changes: readonly Change[];
  readonly done: () => void;
}

export interface Writer {
  readonly state: ReadonlySignal<SaveState>;
  /** Why the state is `not-saved`, in plain words; else empty. */
  readonly message: ReadonlySignal<string>;
  /** Resolves when the changes are on the disk. @throws InputError at once for a record without an id. */
  write(changes: readonly Change[]): Promise<void>;
  /** Begins to write everything that waits, now, and resolves when it is on the disk. @throws StoreError */
  flush(): Promise<void>;
  /** Tries again what could not be written. */
  retry(): void;
  /** `loaded` with the changes that still wait laid over it. */
  overlay(loaded: Everything): Everything;
  /** The changes that still wait, in their order. */
  waiting(): readonly Change[];
  say(message: string): void;
  /** The records may not be where they were written, or for certain: looks, before anything else is written. */
  doubt(certain?: ClearedError): void;
  stop(): void;
}

interface WriterParts {
  readonly connection: Connection;
  readonly canary: Canary;
  /**
   * Looks whether the database is still the one that was written to, and writes back what it has lost. With `seen` it
   * was seen to be cleared: by now it may look whole again, as something was written since.
   */
  readonly mend: (seen: ClearedError | undefined) => Promise<void>;
  /** Ends when the records have been loaded for the first time: nothing is written before. */
  readonly ready: () => Promise<unknown>;
  /** Told of what has reached the disk. */
  readonly written: (changes: readonly Change[]) => void;
}

/** First pause before a new try, ms; it doubles up to the second. */
const PAUSES = { first: 1_000, longest: 30_000 };

export function createWriter({ connection, canary, mend, ready, written }: WriterParts): Writer {
  const state = signal<SaveState>('saved');
  const message = signal('');
  let queue: readonly Group[] = [];
  let draining = false;
  let pause = PAUSES.first;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let loaded = false;
  /** How often it was doubted, since all was well, that the database is still the one that was written to. */
  let doubts = 0;
  let seen: ClearedError | undefined;

  /** Writes the whole queue in one transaction. A second run of the work takes the queue as it is by then. */
  async function writeQueue(): Promise<void> {
    const { batch, mark } = await connection.withStore(STORES, 'readwrite', async (transaction) => {
      const counted = await canary.count(transaction);
      const all = queue;
      await apply(transaction, changesOf(all), counted);
      return { batch: all, mark: counted.mark };
    });
    await canary.counted(mark);
    landed(batch);
  }

  /** The same for a page that is being left: everything is asked for at once, and compared after. */
  async function writeAtOnce(): Promise<void> {
    const { batch, found } = await connection.withStore(STORES, 'readwrite', async (transaction) => {
      const looking = canary.find(transaction);
      const all = queue;
      const [found] = await Promise.all([looking, apply(transaction, changesOf(all))]);
      return { batch: all, found };
    });
    canary.uncounted(found);
    landed(batch);
  }

  function landed(batch: readonly Group[]): void {
    const mine = batch.filter((group) => queue.includes(group));
    queue = queue.filter((group) => !batch.includes(group));
    if (queue.length === 0 && doubts === 0) settle();
    for (const group of mine) group.done();
    if (mine.length > 0) written(changesOf(mine));
  }

  function settle(): void {
    state.value = 'saved';
    message.value = '';
    pause = PAUSES.first;
  }

  function fail(error: unknown): void {
    state.value = 'not-saved';
    message.value = explain(error).message;
    clearTimeout(timer);
    timer = setTimeout(drain, pause);
    pause = Math.min(pause * 2, PAUSES.longest);
  }

  /** Says at once what is so; the next turn of `drain` mends it. */
  function suspect(error: ClearedError): void {
    doubts += 1;
    seen = error;
    state.value = 'not-saved';
    message.value = error.message;
  }

  async function settleDoubt(): Promise<void> {
    const before = doubts;
    await mend(seen);
    // Doubted once more while that was mended: mended once more.
    if (doubts !== before) return;
    doubts = 0;
    seen = undefined;
    if (queue.length === 0) settle();
  }

  async function drain(): Promise<void> {
    if (draining) return;
    draining = true;
    try {
      await ready();
      loaded = true;
      while (doubts > 0 || queue.length > 0) {
        if (doubts > 0) await settleDoubt();
        else {
          await alone(writeQueue).catch((error: unknown) => {
            if (!(error instanceof ClearedError)) throw error;
            suspect(error);
          });
        }
      }
    } catch (error) {
      fail(error);
    } finally {
      draining = false;
    }
  }

  return {
    state,
    message,
    write(changes) {
      const copies = changes.map(copyOf);
      if (copies.length === 0) return Promise.resolve();
      const saved = new Promise<void>((resolve) => {
        queue = [...queue, { changes: copies, done: resolve }];
      });
      if (state.value === 'saved') state.value = 'saving';
      void drain();
      return saved;
    },
    async flush() {
      if (queue.length === 0) return;
      if (!loaded) {
        await ready();
        loaded = true;
      }
      try {
        await writeAtOnce();
      } catch (error) {
        if (error instanceof ClearedError) suspect(error);
        fail(error);
        if (doubts > 0) void drain();
        throw error;
      }
    },
    retry: () => void drain(),
    overlay(everything) {
      return queue.flatMap((group) => group.changes).reduce(lay, everything);
    },
    waiting: () => queue.flatMap((group) => group.changes),
    say(text) {
      message.value = text;
    },
    doubt(certain) {
      doubts += 1;
      if (certain) suspect(certain);
      void drain();
    },
    stop: () => clearTimeout(timer),
  };
}

/**
 * Puts and deletes, then commits at once: what was asked for lands even if the page goes away now. One that cannot even
 * be asked for ends it before it is committed, so that `withStore` takes all of it back.
 */
async function apply(
  transaction: Transaction<'readwrite'>,
  changes: readonly Change[],
  counted?: Counted,
): Promise<void> {
  const requests: Promise<unknown>[] = [];
  const landed = () => Promise.all(requests);
  try {
    for (const { store, id, record } of changes) {
      const target = transaction.objectStore(store);
      // The store's name decides the type of its records: see `Entry`.
      requests.push(record ? target.put(record as Entry[1] as never) : target.delete(id));
    }
    if (counted) requests.push(counted.put());
    transaction.commit();
  } catch (error) {
    // The cause is reported; the requests then fail for the same reason.
    landed().catch(() => undefined);
    throw error;
  }
  await landed();
}

const changesOf = (groups: readonly Group[]): readonly Change[] => groups.flatMap((group) => group.changes);

/** A copy that later edits of the caller's object cannot reach; refuses what the database would choke on. */
function copyOf(change: Change): Change {
  if (!STORES.includes(change.store)) throw new InputError('store', change.store, { is: 'choice', of: STORES });
  if (typeof change.id !== 'string' || change.id === '') {
    throw new InputError(`${change.store}.id`, change.id, { is: 'some-text' });
  }
  return structuredClone(change);
}

/** A change laid over what was loaded. */
export function lay(everything: Everything, { store, id, record }: Change): Everything {
  const list = everything[store] as readonly { readonly id: string }[];
  return { ...everything, [store]: record ? withRecords(list, [record]) : list.filter((one) => one.id !== id) };
}

/** One tab writes at a time, where the browser can tell tabs apart; the database orders them anyway. */
function alone(work: () => Promise<void>): Promise<void> {
  const locks = globalThis.navigator?.locks;
  return locks ? locks.request('cornerwright-writer', work) : work();
}
