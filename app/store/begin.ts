/** How a restore or an undo begins and ends, so that the browser or the phone may stop anywhere in between. */
import { laterThan } from '../../core/records/order.ts';
import type { Ground } from './ground.ts';
import type { Done, UnderWay } from './outside.ts';
import { UNDO } from './schema.ts';
import { keepSnapshot } from './snapshot.ts';
import type { Step } from './undo.ts';

export interface Begun extends Done {
  /** @param through how many records it has gone through with this piece */
  keep(through: number, steps: readonly Step[]): Promise<void>;
}

/**
 * Keeps a copy of the present and sets the flag. One that goes on after another was cut off joins it, so that one undo takes
 * back both; but the undo of a restore that was cut off is one of its own.
 * @param copies whether the present is worth a copy: not where it is a copy that is put back
 */
export async function begin(ground: Ground, what: Omit<UnderWay, 'at'>, copies = true): Promise<Begun> {
  const { way, canary, now } = ground;
  const cut = await way.underWay();
  const joins = cut && (what.kind === 'restore' || cut.kind === 'undo');
  // What the browser has lost may be in the copy that there is, and in no other.
  if (!joins && copies && !canary.loss.value) await keepSnapshot(ground);
  const at = joins ? cut.at : laterThan((cut ?? (await way.last()))?.at, now());
  await way.begin({ ...what, at });
  let { pieces } = await way.progress(at);
  return {
    at,
    kind: what.kind,
    async keep(through, steps) {
      pieces += 1;
      await way.keepPiece(at, pieces, through, steps);
    },
  };
}

export async function end({ way, connection }: Ground, { at, kind }: Done): Promise<void> {
  await way.end({ at, kind });
  // What an earlier version kept is older.
  await connection.withStore(['preferences'], 'readwrite', async (transaction) => {
    const preferences = transaction.objectStore('preferences');
    if (await preferences.getKey(UNDO)) await preferences.delete(UNDO);
  });
}
