/**
 * The way back from a restore, and from its undo. What a change brought is known by its ids and by how it was written:
 * an undo takes back only what is still as it was brought. What was changed since stays, and so does what records that
 * came since lean on: a car that was brought in and measured here is no longer only the backup's.
 */
import { canonical } from '../../core/records/canonical.ts';
import { hash } from '../../core/records/made-id.ts';
import { type Breath, breather } from './breath.ts';
import { type Entry, type Everything, STORES, type StoreName } from './schema.ts';

type Stored = Entry[1];
type Records = ReadonlyMap<string, Stored>;

/** One record that a restore or an undo wrote or took away. */
export interface Step {
  readonly store: StoreName;
  readonly id: string;
  /** As it was before; absent where it was not here. */
  readonly before?: Stored;
  /** Mark of what was written; absent where it was taken away. */
  readonly after?: string;
}
/** What is kept for the undo. The first version kept all records as they were. */
export type Kept =
  | { readonly at: string; readonly steps: readonly Step[] }
  | { readonly at: string; readonly records: Everything };

export type Why = 'changed' | 'leaned-on';
/** What an undo would do. */
export interface UndoPreview {
  /** When the records were changed that way, ISO 8601. */
  readonly at: string;
  /** All that it would do. */
  readonly steps: readonly Step[];
  /** Taken away: as it was brought, and nothing leans on it. */
  readonly goes: readonly Entry[];
  /** Put back as it was before. */
  readonly returns: readonly Entry[];
  /** Stays as it is here, and why. */
  readonly stays: readonly { readonly entry: Entry; readonly why: Why }[];
}

/** What a piece does to one record: puts it, or without one takes it away. */
export interface PieceChange {
  readonly store: StoreName;
  readonly id: string;
  readonly before: Stored | undefined;
  readonly record: Stored | undefined;
}

/** What to keep so that this change can be undone. */
export const stepOf = ({ store, id, before, record }: PieceChange): Step => ({
  store,
  id,
  ...(before && { before }),
  ...(record && { after: markOf(record) }),
});

/**
 * Steps of one record as one, those that came first already in `all`. One that was kept and then never written (a kill came between) is known by the next of its
 * record, which does not begin where it would have led.
 */
export function join(all: Map<string, Step>, steps: readonly Step[]): void {
  for (const one of steps) {
    const name = key(one.store, one.id);
    const known = all.get(name);
    const goesOn = known && known.after === (one.before && markOf(one.before));
    if (!goesOn) {
      all.set(name, one);
      continue;
    }
    const { before: _, ...rest } = one;
    all.set(name, { ...rest, ...(known.before && { before: known.before }) });
  }
}

/** What undoing would do to the records as they are now. */
export async function undoOf(kept: Kept, present: Everything): Promise<UndoPreview> {
  const breath = breather();
  const here = new Map<string, Stored>();
  for (const store of STORES) {
    for (const record of present[store]) {
      here.set(key(store, record.id), record);
      const pause = breath();
      if (pause) await pause;
    }
  }
  const due: Step[] = [];
  const stays: { entry: Entry; why: Why }[] = [];
  for (const one of 'steps' in kept ? kept.steps : stepsOf(kept, present)) {
    const pause = breath();
    if (pause) await pause;
    const now = here.get(key(one.store, one.id));
    const mark = now && markOf(now);
    if (mark === one.after) due.push(one);
    // It is as it was before: it was never written, or is undone already.
    else if (mark === (one.before && markOf(one.before))) continue;
    // A draft that is gone by now has become a record, which came since.
    else if (now) stays.push({ entry: pair(one.store, now), why: 'changed' });
  }
  const leaned = await leanedOn(due, here, kept.at, breath);
  for (const one of due.filter((step) => leaned.has(step))) {
    stays.push({ entry: pair(one.store, here.get(key(one.store, one.id))!), why: 'leaned-on' });
  }
  const free = due.filter((step) => !leaned.has(step));
  return {
    at: kept.at,
    steps: free,
    goes: free.flatMap(({ store, id, before, after }) =>
      before || !after ? [] : [pair(store, here.get(key(store, id))!)],
    ),
    returns: free.flatMap(({ store, before }) => (before ? [pair(store, before)] : [])),
    stays,
  };
}

/** The steps that records which stay stand on: what they name must not be taken away, or put back to before they came. */
async function leanedOn(due: readonly Step[], here: Records, at: string, breath: Breath): Promise<ReadonlySet<Step>> {
  const stepAt = new Map<string, Step>();
  for (const one of due) {
    stepAt.set(key(one.store, one.id), one);
    const pause = breath();
    if (pause) await pause;
  }
  const leaned = new Set<Step>();
  const staying = [...here.keys()].filter((name) => !stepAt.has(name));
  for (let next = staying.pop(); next; next = staying.pop()) {
    const pause = breath();
    if (pause) await pause;
    const record = here.get(next)!;
    const cameSince = timeOf(record) > at;
    for (const name of namedBy(next, record)) {
      const one = stepAt.get(name);
      // What was here before may stand on what is put back, as it did then.
      if (!one?.after || leaned.has(one) || (one.before && !cameSince)) continue;
      leaned.add(one);
      staying.push(name);
    }
  }
  return leaned;
}

/** The records that a record names, as keys. @param name its own key */
function namedBy(name: string, record: Stored): readonly string[] {
  const own = record as unknown as Readonly<Record<string, unknown>>;
  const store = name.slice(0, name.indexOf(' ')) as StoreName;
  // `reading:VISIT`, `visit:VISIT`, `build:CAR`
  const place = store === 'drafts' ? record.id.slice(record.id.indexOf(':') + 1) : undefined;
  const named: readonly (readonly [StoreName, unknown])[] = [
    ['cars', own.carId ?? place],
    ['visits', own.visitId ?? place],
    ['readings', own.readingId],
    [store, own.replaces],
  ];
  return named.flatMap(([of, id]) => (typeof id === 'string' ? [key(of, id)] : []));
}

/** Of all records as they were: what has no time since then was brought, and settings are nobody's to lose. */
function stepsOf({ at, records }: { at: string; records: Everything }, present: Everything): readonly Step[] {
  const before = byKey(records);
  const here = byKey(present);
  const stores = STORES.filter((store) => store !== 'preferences');
  const brought = stores.flatMap((store) =>
    present[store].flatMap((record) => {
      const was = before.get(key(store, record.id));
      const isSame = was && markOf(was) === markOf(record);
      if (isSame) return [];
      // Another mark than its own: it counts as changed since, and is named.
      const { after = '', ...rest } = stepOf({ store, id: record.id, before: was, record });
      return [{ ...rest, after: timeOf(record) > at ? '' : after }];
    }),
  );
  const missing = STORES.flatMap((store) =>
    records[store].flatMap((record) =>
      here.has(key(store, record.id)) ? [] : [stepOf({ store, id: record.id, before: record, record: undefined })],
    ),
  );
  return [...brought, ...missing];
}

/** When a record last changed, as far as it says. */
function timeOf(record: Stored): string {
  const { changed, closed, at, opened } = record as unknown as Readonly<Record<string, unknown>>;
  return String(changed ?? closed ?? at ?? opened ?? '');
}

function byKey(everything: Everything): Records {
  return new Map(
    STORES.flatMap((store) => everything[store].map((record) => [key(store, record.id), record] as const)),
  );
}
const key = (store: StoreName, id: string): string => `${store} ${id}`;
// A record is paired with the store that it was found in.
const pair = (store: StoreName, record: Stored): Entry => [store, record] as Entry;

/** Known again by length and hash: no safeguard, but no edit by hand meets both. */
export function markOf(record: Stored): string {
  const text = canonical(record);
  return `${text.length}-${hash(text)}`;
}
