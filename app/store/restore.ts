/**
 * A backup in. The whole file is read and checked before anything is touched; then it is read again and joined with what is
 * here piece by piece, so that neither its size nor that of what is here has to fit into memory.
 */
import { backupPieces } from './backup-pieces.ts';
import { type Begun, begin, end } from './begin.ts';
import type { Ground } from './ground.ts';
import { type Merge, mergePiece } from './merge.ts';
import { writePiece } from './piece-writer.ts';
import { STORES } from './schema.ts';
import { createTally, type Preview } from './tally.ts';

export interface Restoring {
  inspect(file: Blob): Promise<Preview>;
  /** @param copies whether the present is worth a copy */
  restore(file: Blob, copies?: boolean): Promise<Preview>;
}

export function createRestoring(ground: Ground): Restoring {
  const { connection, canary, settle, progress } = ground;
  /** How many records there are in files that were read to their end: what is in a file does not change. */
  const checked = new WeakMap<Blob, number>();

  async function inspect(file: Blob): Promise<Preview> {
    const tally = createTally();
    await settle();
    for await (const piece of backupPieces(file)) {
      const merged = await connection.withStore(STORES, 'readonly', (transaction) =>
        mergePiece(transaction, piece.records),
      );
      tally.add(piece, merged);
    }
    checked.set(file, tally.through());
    return tally.preview();
  }

  async function restore(file: Blob, copies = true): Promise<Preview> {
    if (!checked.has(file)) await inspect(file);
    await settle();
    const all = checked.get(file) ?? 0;
    const tally = createTally();
    // With nothing to add it never begins, and the way back to before the last restore stays open.
    let begun: Begun | undefined;
    for await (const piece of backupPieces(file)) {
      /** What it does by the last look at it before it was written. */
      let merged: Merge | undefined;
      await writePiece(
        connection,
        canary,
        async (transaction) => {
          const now = await mergePiece(transaction, piece.records);
          if (!merged || now.changes.length > 0) merged = now;
          return now.changes;
        },
        async (steps) => {
          begun ??= await begin(ground, { kind: 'restore', made: piece.made, all }, copies);
          await begun.keep(tally.through(), steps);
        },
      );
      if (merged) tally.add(piece, merged);
      progress(tally.through(), all);
    }
    if (begun) await end(ground, begun);
    return tally.preview();
  }

  return { inspect, restore };
}
