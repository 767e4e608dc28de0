/** First load. What the store offers of backups; the code behind it is fetched when it is first used. */
import { type ReadonlySignal, signal } from '@preact/signals';
import { InputError } from '../../core/input-error.ts';
import type { Backup, CutOff, Preview } from './backup.ts';
import { type Canary, ClearedError } from './canary.ts';
import { now } from './clock.ts';
import type { Connection } from './connection.ts';
import type { Done, Outside } from './outside.ts';
import type { Everything } from './schema.ts';
import type { UndoPreview } from './undo.ts';
import type { Writer } from './writer.ts';

export interface Backups {
  /** The backup of everything. With the database out of reach it is made of `inMemory`. @throws StoreError */
  exportAll(inMemory?: Everything): Promise<Blob>;
  /** What a backup holds and what restoring it would do; touches nothing. @throws InputError */
  inspect(file: Blob | string): Promise<Preview>;
  /** Adds a backup to what is here; absent records delete nothing. @throws InputError, and then nothing is touched */
  restore(file: Blob | string): Promise<Preview>;
  /** What undoing the last restore would take away, put back and leave; touches nothing. */
  inspectUndo(): Promise<UndoPreview | undefined>;
  /** Takes back what the last restore brought (and again: brings it back). What came since stays. */
  undoRestore(): Promise<boolean>;
  /** What `undoRestore` would take back. */
  undoes(): Promise<Done['kind'] | undefined>;
  /** How far a restore or an undo is, in records; nothing while there is none. */
  readonly restoring: ReadonlySignal<{ readonly through: number; readonly all: number } | undefined>;
  /** A restore or an undo that was cut off and not taken up since, once it was looked for. */
  readonly cutOff: ReadonlySignal<CutOff | undefined>;
  /** Looks for it. Never throws. */
  lookForCutOff(): Promise<void>;
  /** Leaves it as it is: what came in can still be undone. */
  leaveCutOff(): Promise<void>;
  /** Keeps a copy of all records beside the database, once a day, where there is something new. @throws StoreError */
  keepDaily(): Promise<void>;
  /** When the copy of all records was made that is kept beside the database; ISO 8601. */
  copyMade(): Promise<string | undefined>;
  /** Joins that copy with what is here. */
  putBackCopy(): Promise<void>;
}

interface Parts {
  readonly name: string;
  readonly connection: Connection;
  readonly canary: Canary;
  readonly outside: Outside;
  readonly writer: () => Writer;
  /** Ends when the records have been loaded for the first time: nothing is written before. */
  readonly ready: () => Promise<unknown>;
  /** The records have changed behind the screens. */
  readonly changed: () => void;
}

export function createBackups({ name, connection, canary, outside, writer, ready, changed }: Parts) {
  const restoring = signal<{ through: number; all: number } | undefined>();
  const cutOff = signal<CutOff | undefined>();
  let opening: Promise<Backup> | undefined;

  const backup = (): Promise<Backup> => {
    opening ??= import('./backup.ts').then(({ createBackup }) =>
      createBackup({
        name,
        connection,
        canary,
        outside,
        now,
        settle: () => writer().flush(),
        progress(through, all) {
          restoring.value = { through, all };
        },
      }),
    );
    opening.catch(() => {
      opening = undefined;
    });
    return opening;
  };

  async function look(): Promise<void> {
    cutOff.value = await (await backup()).cutOff();
  }
  async function changing<T>(work: (backup: Backup) => Promise<T>): Promise<T> {
    restoring.value = { through: 0, all: 0 };
    // Where it was cut off a part of it may be in.
    let touched = true;
    try {
      await ready();
      return await work(await backup());
    } catch (error) {
      if (error instanceof ClearedError) writer().doubt(error);
      if (error instanceof InputError) touched = false;
      throw error;
    } finally {
      restoring.value = undefined;
      if (touched) changed();
      await look().catch(() => undefined);
    }
  }
  const asFile = (file: Blob | string): Blob => (typeof file === 'string' ? new Blob([file]) : file);

  const backups: Backups = {
    async exportAll(inMemory) {
      const { databaseSlices, exportFile, memorySlices } = await import('./export.ts');
      try {
        await ready();
        return await exportFile(databaseSlices(connection, canary.look, writer().waiting()), now());
      } catch (error) {
        if (error instanceof ClearedError) writer().doubt(error);
        if (!inMemory) throw error;
        return exportFile(memorySlices(writer().overlay(inMemory)), now());
      }
    },
    inspect: async (file) => (await backup()).inspect(asFile(file)),
    restore: (file) => changing((open) => open.restore(asFile(file))),
    inspectUndo: async () => (await backup()).inspectUndo(),
    undoRestore: () => changing((open) => open.undo()),
    undoes: async () => (await backup()).undoes(),
    restoring,
    cutOff,
    async lookForCutOff() {
      await look().catch(() => undefined);
    },
    async leaveCutOff() {
      await (await backup()).leave();
      await look();
    },
    async keepDaily() {
      await ready();
      await (await backup()).keepDaily();
    },
    copyMade: async () => (await backup()).copyMade(),
    async putBackCopy() {
      await changing((open) => open.putBackCopy());
      canary.report(undefined);
    },
  };
  return {
    backups,
    close: () => void opening?.then((open) => open.close()).catch(() => undefined),
  };
}
