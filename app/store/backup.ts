/** A backup in, and the way back from it: one at a time, in one window at a time. */

import { end } from './begin.ts';
import { openBeside } from './beside.ts';
import { StoreError } from './failure.ts';
import type { Ground } from './ground.ts';
import type { Done, Outside, UnderWay } from './outside.ts';
import { createRestoring } from './restore.ts';
import { keepDaily, snapshotIn } from './snapshot.ts';
import { createTakingBack } from './take-back.ts';
import type { Preview } from './tally.ts';
import type { UndoPreview } from './undo.ts';
import { wayBack } from './way-back.ts';

export type { Preview };

/** A restore or an undo that was cut off, and how many records it had gone through by then. */
export interface CutOff extends UnderWay {
  readonly through: number;
}

export interface Backup {
  inspect(file: Blob): Promise<Preview>;
  restore(file: Blob): Promise<Preview>;
  inspectUndo(): Promise<UndoPreview | undefined>;
  undo(): Promise<boolean>;
  undoes(): Promise<Done['kind'] | undefined>;
  cutOff(): Promise<CutOff | undefined>;
  /** What was cut off is left as it is, and can be undone. */
  leave(): Promise<void>;
  /** Keeps a copy beside the database, once a day. */
  keepDaily(): Promise<void>;
  /** When the copy was made that is kept beside the database. */
  copyMade(): Promise<string | undefined>;
  putBackCopy(): Promise<Preview | undefined>;
  close(): void;
}

type Parts = Omit<Ground, 'beside' | 'way'> & { readonly name: string; readonly outside: Outside };

export async function createBackup({ name, outside, ...parts }: Parts): Promise<Backup> {
  const beside = await openBeside(name);
  const way = wayBack(beside, outside.underWay);
  const ground: Ground = { ...parts, beside, way };
  const restoring = createRestoring(ground);
  const takingBack = createTakingBack(ground);
  const alone = <T>(work: () => Promise<T>): Promise<T> =>
    ifAlone(`${name}-restore`, work, () => {
      throw new StoreError('Another window restores at the moment. Wait until it is done.');
    });

  return {
    inspect: restoring.inspect,
    restore: (file) => alone(() => restoring.restore(file)),
    inspectUndo: takingBack.inspect,
    undo: () => alone(takingBack.undo),
    undoes: takingBack.what,
    cutOff: () =>
      ifAlone(
        `${name}-restore`,
        async () => {
          const cut = await way.underWay();
          return cut && { ...cut, through: (await way.progress(cut.at)).through };
        },
        // What is under way goes on, in another window.
        () => undefined,
      ),
    leave: () =>
      alone(async () => {
        const cut = await way.underWay();
        if (cut) await end(ground, cut);
      }),
    keepDaily: () =>
      ifAlone(
        `${name}-restore`,
        () => keepDaily(ground),
        async () => undefined,
      ),
    copyMade: async () => (await snapshotIn(beside))?.made,
    putBackCopy: async () => {
      const copy = await snapshotIn(beside);
      return copy && alone(() => restoring.restore(copy.file, false));
    },
    close: () => beside.close(),
  };
}

/** Without locks, in an old browser, every window is alone. */
async function ifAlone<T>(name: string, work: () => Promise<T>, otherwise: () => T): Promise<T> {
  const locks = globalThis.navigator?.locks;
  if (!locks) return work();
  return locks.request(name, { ifAvailable: true }, (lock) => (lock ? work() : otherwise()));
}
