/**
 * Two sets of records as one, by id. What is absent on one side deletes nothing, nothing of either side is lost, and
 * neither the order of the sides nor how often they are joined makes a difference: a record that is edited keeps all its
 * versions, a visit all its marks; of what never changes, two contents under one id are two records, the second under an
 * id made of its content.
 */
import { canonical } from './canonical.ts';
import { digest, under } from './made-id.ts';
import { byText } from './order.ts';
import type { DraftRecord, ReadingRecord, StoreName, Stores, VisitRecord } from './stored.ts';
import { typedApart } from './typed-apart.ts';
import { joinVersions, otherVersions, type Versioned } from './versions.ts';
import { joinFacts, toldTwice } from './visit-facts.ts';

interface Known {
  readonly id: string;
}
/** How records of a store are joined. */
interface Kind<T extends Known> {
  /** What two contents of one record have in common. Other records under one id differ in it, and go by its order. */
  readonly base: (record: T) => object;
  /** Two of one base as one; nothing where they are two records all the same. */
  readonly join: (a: T, b: T) => T | undefined;
  /** Whether it holds what two phones told differently. */
  readonly twofold: (record: T) => boolean;
}

const VERSIONS: Kind<Versioned> = {
  base: () => ({}),
  join: joinVersions,
  twofold: (record) => otherVersions(record).length > 0,
};
const TYPED: Kind<DraftRecord> = {
  ...VERSIONS,
  join: joinVersions,
  twofold: (record) => typedApart(record).length > 0,
};
const MARKS: Kind<VisitRecord> = {
  base: ({ id: _, closed: __, checks: ___, marks: ____, deleted: _____, ...rest }) => rest,
  join: (a, b) => ({ ...MARKS.base(a), id: a.id, ...joinFacts(a, b) }) as VisitRecord,
  twofold: toldTwice,
};
/** A car file brings a reading without its digits as typed. */
const READ: Kind<ReadingRecord> = {
  base: ({ id: _, typed: __, ...rest }) => rest,
  join: (a, b) => (isBare(a) ? b : isBare(b) ? a : undefined),
  twofold: () => false,
};
const isBare = ({ typed }: ReadingRecord): boolean => Object.keys(typed).length === 0;
const FIXED: Kind<Known> = { base: ({ id: _, ...rest }) => rest, join: () => undefined, twofold: () => false };

// Each is of the records of its store.
const KINDS = {
  cars: VERSIONS,
  visits: MARKS,
  readings: READ,
  moves: FIXED,
  drafts: TYPED,
  preferences: VERSIONS,
} as unknown as Readonly<Record<StoreName, Kind<Known>>>;

/** What became of a record that came in. */
export type Verdict =
  /** Not here before. */
  | 'added'
  /** It told more of one that is here. */
  | 'updated'
  /** The same on both sides. */
  | 'same'
  /** Different, and all of it is here already. */
  | 'kept';

export interface Union<T> {
  /** Records that were not here like this: all that is to be written. */
  readonly changed: readonly T[];
  /** How many of them have an id that was not here before. */
  readonly fresh: number;
  /** Of each that came in, in their order. */
  readonly verdicts: readonly Verdict[];
  /** Ids of changed records that two phones told differently: both are kept. */
  readonly twofold: readonly string[];
}

/** The records of one store with those that come in, which may name an id more than once. */
export function unite<S extends StoreName>(store: S, here: Stores[S], incoming: Stores[S]): Union<Stores[S][number]> {
  const byId = new Map<string, Stores[S][number]>(here.map((record) => [record.id, record]));
  return uniteFound(store, (id) => byId.get(id), incoming);
}

/**
 * The same of records that are looked up. Of a piece it asks for those of the piece's ids, and for those of ids that it makes
 * where two contents meet under one: so pieces give what the whole gives.
 */
export function uniteFound<S extends StoreName>(
  store: S,
  find: (id: string) => Stores[S][number] | undefined,
  incoming: Stores[S],
): Union<Stores[S][number]> {
  const kind = KINDS[store];
  const changes = new Map<string, Known>();
  const all: Here = {
    get: (id) => changes.get(id) ?? find(id),
    set: (record) => changes.set(record.id, record),
  };
  const parted = new Set<string>();
  const verdicts = incoming.map((record): Verdict => {
    const known = all.get(record.id);
    if (known && canonical(known) === canonical(record)) return 'same';
    const news = put(kind, all, record, parted);
    if (news.length === 0) return 'kept';
    return known ? 'updated' : 'added';
  });
  const changed = [...changes.values()];
  const twofold = changed.filter((record) => parted.has(record.id) || kind.twofold(record)).map(({ id }) => id);
  const fresh = changed.filter(({ id }) => !find(id)).length;
  // They come from the lists of this store.
  return { changed: changed as unknown as readonly Stores[S][number][], fresh, verdicts, twofold };
}

/** What is here, with what has come in laid over it. */
interface Here {
  readonly get: (id: string) => Known | undefined;
  readonly set: (record: Known) => unknown;
}

/** Ids under which something is new. @param parted ids of records that another content had to make way for, or made */
function put(kind: Kind<Known>, all: Here, record: Known, parted: Set<string>): readonly string[] {
  const here = all.get(record.id);
  const set = (next: Known): readonly string[] => {
    if (here && canonical(here) === canonical(next)) return [];
    all.set(next);
    return [next.id];
  };
  if (!here || canonical(here) === canonical(record)) return set(record);
  const [a, b] = [here, record].map((one) => canonical(kind.base(one))) as [string, string];
  const joined = a === b ? kind.join(here, record) : undefined;
  if (joined) return set(joined);
  // Which of the two keeps the id depends on their content alone.
  const stays = (byText(a, b) || byText(canonical(here), canonical(record))) <= 0;
  const [first, second, key] = stays ? [here, record, b] : [record, here, a];
  const moved = { ...second, id: under(record.id, digest(key)) };
  const news = [...set(first), ...put(kind, all, moved, parted)];
  if (news.length > 0) parted.add(moved.id);
  return news;
}
