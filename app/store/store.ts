/** First load. The records of this device: load them once, then put; see `Store`. */
import type { ReadonlySignal } from '@preact/signals';
import { type Backups, createBackups } from './backup-door.ts';
import { ClearedError, createCanary } from './canary.ts';
import { newId, now } from './clock.ts';
import { connect } from './connection.ts';
import { freshLog } from './fresh-log.ts';
import { type Loss, type Outside, outsideOf } from './outside.ts';
import { askToPersist, persisted } from './persistence.ts';
import { putBack } from './put-back.ts';
import { readAll } from './read-all.ts';
import { readInSlices, readSome, type Wanted } from './read-parts.ts';
import { DATABASE, type Entry, type Everything, type RecordOf, STORES, type StoreName } from './schema.ts';
import { joinTabs } from './tabs.ts';
import { type Change, createWriter, lay, type SaveState } from './writer.ts';

export interface Store extends Backups {
  /** All records, with what still waits to be written laid over them. @throws StoreError */
  load(): Promise<Everything>;
  /** Some cars whole, with every draft and preference, for the screen that cannot wait for all. @throws StoreError */
  loadSome(wanted: Wanted): Promise<Everything>;
  /**
   * All records, read without a long stop and handed over with all in them that was put or removed here since; `take`
   * keeps them before it returns, so that nothing comes in between. @throws StoreError
   */
  loadAll(take: (all: Everything) => void): Promise<void>;
  /** Resolves when the record is on the disk; until then it is kept and tried again. @throws InputError without an id */
  put<S extends StoreName>(name: S, record: RecordOf<S>): Promise<void>;
  /** The same for several records, all or none. */
  putAll(entries: readonly Entry[]): Promise<void>;
  /** Only drafts are ever thrown away: what they held is in a record by then. */
  remove(name: 'drafts', id: string): Promise<void>;
  /** `saved` only when everything that was handed over is on the disk. */
  readonly saveState: ReadonlySignal<SaveState>;
  /** Why it is `not-saved`, in plain words; else empty. */
  readonly saveMessage: ReadonlySignal<string>;
  /** Begins to write all that waits, now: before an update, or when the page hides. @throws StoreError */
  flush(): Promise<void>;
  /** Tries again what could not be written. */
  retry(): void;
  /** Where the records are that the screens hold: written back if the browser clears the database under them. */
  remember(inMemory: () => Everything): void;
  /** What the browser has lost of what was said to be saved, until it is seen. */
  readonly loss: ReadonlySignal<Loss | undefined>;
  lossSeen(): void;
  /** Called when the records changed behind the screens (another tab, a restore): load again. Returns its end. */
  onOutsideChange(listener: () => void): () => void;
  persisted(): Promise<boolean>;
  newId(): string;
  now(): string;
  /** Ends timers, listeners and the connection. */
  close(): void;
}

/** @param name of the database: tests use their own. */
export function createStore(name: string = DATABASE): Store {
  const listeners = new Set<() => void>();
  const tell = (): void => {
    for (const listener of listeners) listener();
  };
  let firstLoad: Promise<unknown> | undefined;
  let starting: Promise<void> | undefined;
  let asked = false;
  let memory: (() => Everything) | undefined;
  const outside = outsideOf(name);
  const canary = createCanary(outside);

  const connection = connect(name, {
    blocked: (message) => writer.say(message),
    blocking: () => void writer.flush().catch(() => undefined),
    // On its own turn: what is asked of the store at this moment goes first.
    cut: (gone) => void Promise.resolve().then(() => firstLoad && writer.doubt(gone ? new ClearedError() : undefined)),
  });
  const tabs = joinTabs(name, tell);
  const writer = createWriter({
    connection,
    canary,
    mend,
    ready,
    written: (changes) => {
      tabs.announce();
      noteBackup(outside, changes);
      if (!asked && changes.some(isRealData)) {
        asked = true;
        void askToPersist();
      }
    },
  });

  /** Nothing is written before: what is here is known, held against what was, and the log is a new one. */
  async function ready(): Promise<void> {
    await (firstLoad ?? load());
    starting ??= start().catch((error: unknown) => {
      starting = undefined;
      throw error;
    });
    await starting;
  }
  async function start(): Promise<void> {
    const [before] = await Promise.all([outside.markFile.read(), freshLog(name)]);
    if (before) canary.heard(before, await connection.withStore(STORES, 'readonly', canary.find));
  }
  /** The first of them that succeeds counts as the first load. */
  function isFirst(reading: Promise<unknown>): void {
    if (firstLoad) return;
    firstLoad = reading;
    // Where it fails, the next write says so.
    void reading.then(ready).catch(() => undefined);
  }

  async function load(): Promise<Everything> {
    const reading = connection.withStore(STORES, 'readonly', async (transaction) => {
      const all = await readAll(transaction);
      await canary.look(transaction);
      return all;
    });
    isFirst(reading);
    try {
      const all = await reading;
      if (writer.state.value !== 'not-saved') writer.say('');
      return writer.overlay(all);
    } catch (error) {
      return notLoaded(reading, error);
    }
  }

  function notLoaded(reading: Promise<unknown>, error: unknown): never {
    if (firstLoad === reading) firstLoad = undefined;
    if (error instanceof ClearedError) writer.doubt(error);
    throw error;
  }

  async function loadSome(wanted: Wanted): Promise<Everything> {
    const reading = connection.withStore(STORES, 'readonly', async (transaction) => {
      const some = await readSome(transaction, wanted);
      await canary.look(transaction);
      return some;
    });
    isFirst(reading);
    return reading.catch((error: unknown) => notLoaded(reading, error));
  }

  /** What was handed over since each load under way began: a slice may have been read before it was written. */
  const since = new Set<Change[]>();
  async function loadAll(take: (all: Everything) => void): Promise<void> {
    const changes = [...writer.waiting()];
    since.add(changes);
    const reading = readInSlices(connection, canary.look);
    isFirst(reading);
    try {
      const all = await reading;
      take(changes.reduce(lay, all));
      if (writer.state.value !== 'not-saved') writer.say('');
    } catch (error) {
      notLoaded(reading, error);
    } finally {
      since.delete(changes);
    }
  }

  function write(changes: readonly Change[]): Promise<void> {
    const written = writer.write(changes);
    for (const list of since) list.push(...changes);
    return written;
  }

  async function look(): Promise<ClearedError | undefined> {
    try {
      await connection.withStore(STORES, 'readonly', (transaction) => canary.look(transaction));
      return undefined;
    } catch (error) {
      if (error instanceof ClearedError) return error;
      throw error;
    }
  }

  /** The writer's doubt settled: all is well, or what the screens hold is written back. @throws StoreError */
  async function mend(seen: ClearedError | undefined): Promise<void> {
    const cleared = seen ?? (await look());
    if (!cleared) return;
    if (!memory) throw cleared;
    const [records, mark] = await putBack(connection, writer.overlay(memory()), canary.last);
    await canary.counted(mark);
    canary.report({ kind: 'put-back', records });
    tabs.announce();
    tell();
  }

  const { backups, ...door } = createBackups({
    name,
    connection,
    canary,
    outside,
    writer: () => writer,
    ready,
    changed() {
      tabs.announce();
      tell();
    },
  });

  const onHide = (): void => {
    if (document.visibilityState === 'hidden') void writer.flush().catch(() => undefined);
    else if (writer.state.value === 'not-saved') writer.retry();
    // A phone may have cleared it meanwhile.
    else if (firstLoad) writer.doubt();
  };
  const onLeave = (): void => void writer.flush().catch(() => undefined);
  if (typeof document !== 'undefined') {
    document.addEventListener('visibilitychange', onHide);
    addEventListener('pagehide', onLeave);
  }

  const asChange = ([store, record]: Entry): Change => ({ store, id: record.id, record });
  return {
    load,
    loadSome,
    loadAll,
    put: async (store, record) => write([asChange([store, record] as unknown as Entry)]),
    putAll: async (entries) => write(entries.map(asChange)),
    remove: async (store, id) => write([{ store, id }]),
    saveState: writer.state,
    saveMessage: writer.message,
    flush: () => writer.flush(),
    retry: () => writer.retry(),
    remember(inMemory) {
      memory = inMemory;
    },
    loss: canary.loss,
    lossSeen: () => canary.report(undefined),
    onOutsideChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    ...backups,
    persisted,
    newId,
    now,
    close() {
      writer.stop();
      tabs.close();
      connection.close();
      door.close();
      if (typeof document !== 'undefined') {
        document.removeEventListener('visibilitychange', onHide);
        removeEventListener('pagehide', onLeave);
      }
    },
  };
}

/** When all was last saved to a file is told where the database with it is lost. */
function noteBackup(outside: Outside, changes: readonly Change[]): void {
  for (const { store, id, record } of changes) {
    const value = store === 'preferences' && id === 'backup' && record && 'value' in record ? record.value : undefined;
    if (typeof value === 'object' && value && 'at' in value) outside.backup.keep(String(value.at));
  }
}

/** Work that would be missed: not what is half typed, not a setting, not the made-up car. */
function isRealData({ store, record }: Change): boolean {
  if (!record || store === 'drafts' || store === 'preferences') return false;
  return !('practice' in record && record.practice);
}
