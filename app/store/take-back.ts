/** The undo of the last restore (or of its undo), in pieces as the restore itself. What it does is said in undo.ts. */
import { FILE_ORDER, PIECE, READ_ORDER } from '../../core/records/backup-lines.ts';
import { byText } from '../../core/records/order.ts';
import { begin, end } from './begin.ts';
import type { Ground } from './ground.ts';
import { inPieces } from './in-pieces.ts';
import type { Done } from './outside.ts';
import { type Plan, writePiece } from './piece-writer.ts';
import { readMany } from './read-many.ts';
import { readInSlices } from './read-parts.ts';
import { type StoreName, UNDO } from './schema.ts';
import { type Kept, markOf, type PieceChange, type Step, type UndoPreview, undoOf } from './undo.ts';

export interface TakingBack {
  inspect(): Promise<UndoPreview | undefined>;
  /** False where there is nothing to take back. */
  undo(): Promise<boolean>;
  /** What it would take back: a restore, or an undo; one that was cut off before any other. */
  what(): Promise<Done['kind'] | undefined>;
}

/** The name of what an earlier version kept within the database. */
const EARLIER = 'earlier';

export function createTakingBack(ground: Ground): TakingBack {
  const { connection, canary, way, settle, progress } = ground;

  /** What to undo: of an undo that was cut off, what it was about, so that it goes on. */
  async function target(): Promise<Done | undefined> {
    const cut = await way.underWay();
    if (cut?.kind === 'undo') return { at: cut.of ?? '', kind: 'restore' };
    const last = cut ?? (await way.last());
    const earlier = await keptEarlier();
    return earlier && !(last && last.at > earlier.at) ? { at: EARLIER, kind: 'restore' } : last;
  }
  const keptEarlier = (): Promise<Kept | undefined> =>
    connection.withStore(['preferences'], 'readonly', async (transaction) => {
      return (await transaction.objectStore('preferences').get(UNDO))?.value as Kept | undefined;
    });
  const keptOf = async ({ at }: Done): Promise<Kept | undefined> =>
    at === EARLIER ? keptEarlier() : { at, steps: await way.steps(at) };

  async function preview(what: Done): Promise<UndoPreview | undefined> {
    const kept = await keptOf(what);
    return kept && undoOf(kept, await readInSlices(connection, canary.look));
  }

  return {
    async inspect() {
      await settle();
      const what = await target();
      return what && preview(what);
    },

    async undo() {
      await settle();
      const what = await target();
      const change = what && (await preview(what));
      if (!change) return false;
      // One that was cut off goes on from where it was: what it has gone through is no longer among the steps.
      const cut = await way.underWay();
      let through = cut?.kind === 'undo' ? (await way.progress(cut.at)).through : 0;
      const all = through + change.steps.length;
      const begun = await begin(ground, { kind: 'undo', of: what.at, all });
      for (const piece of inPieces(inTheirOrder(change.steps), PIECE.records)) {
        await writePiece(connection, canary, planOf(piece), (steps) => begun.keep(through, steps));
        through += piece.length;
        progress(through, all);
      }
      await end(ground, begun);
      return true;
    },

    what: async () => (await target())?.kind,
  };
}

/** What is put back comes first, in the order of a file; what goes is taken away in the other one: nothing is left hanging. */
function inTheirOrder(steps: readonly Step[]): readonly Step[] {
  const byId = (a: Step, b: Step): number => byText(a.id, b.id);
  const returns = FILE_ORDER.flatMap((store) => steps.filter((one) => one.store === store && one.before).sort(byId));
  const goes = READ_ORDER.flatMap((store) => steps.filter((one) => one.store === store && !one.before).sort(byId));
  return [...returns, ...goes];
}

/** Only what is still as it was found. */
const planOf =
  (steps: readonly Step[]): Plan =>
  async (transaction) => {
    const found = new Map<StoreName, Awaited<ReturnType<typeof readMany>>>();
    for (const store of new Set(steps.map((one) => one.store))) {
      const own = steps.filter((one) => one.store === store);
      found.set(
        store,
        await readMany(
          transaction,
          store,
          own.map(({ id }) => id),
        ),
      );
    }
    return steps.flatMap(({ store, id, before, after }): readonly PieceChange[] => {
      const now = found.get(store)?.get(id);
      return (now && markOf(now)) === after ? [{ store, id, before: now, record: before }] : [];
    });
  };
