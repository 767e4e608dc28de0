/**
 * First load. Records found by id, and by the car or the visit that they belong to, without a look at any other. What is
 * known of a list stands beside it, is made when it is first asked for, and is handed on to the list that follows from it:
 * a write costs what it writes, however much is kept.
 */
type Kept = { readonly id: string };

interface Known {
  /** Where in the list a record stands, by id; of two of one id the first, as a look along the list finds it. */
  readonly places: Map<string, number>;
  /** What belongs to a car or a visit, in the order of the list. */
  readonly owned: Map<string, readonly Kept[]>;
}

const knownOf = new WeakMap<readonly Kept[], Known>();
const NOTHING: readonly never[] = [];

export function byId<T extends Kept>(list: readonly T[], id: string): T | undefined {
  const place = know(list).places.get(id);
  return place === undefined ? undefined : list[place];
}

/** Visits of a car; readings or moves of a visit. */
export function ownedBy<T extends Kept>(list: readonly T[], owner: string): readonly T[] {
  // They were put there from this very list.
  return (know(list).owned.get(owner) as readonly T[] | undefined) ?? NOTHING;
}

/** The list with records at the places of those of their ids, new ones at its end. */
export function withRecords<T extends Kept>(list: readonly T[], records: readonly T[]): readonly T[] {
  if (records.length === 0) return list;
  const known = know(list);
  const next = [...list];
  // From here on it is the new list's: the old one makes its own again, should anybody still ask it.
  knownOf.delete(list);
  let isTrue = true;
  for (const record of records) isTrue = lay(next, known, record) && isTrue;
  if (isTrue) knownOf.set(next, known);
  return next;
}

/** False where the record went over to another owner: what belongs to whom is then made anew from the list. */
function lay<T extends Kept>(list: T[], { places, owned }: Known, record: T): boolean {
  const place = places.get(record.id);
  const before = place === undefined ? undefined : list[place];
  const owner = ownerOf(record);
  places.set(record.id, place ?? list.length);
  list[place ?? list.length] = record;
  if (before && ownerOf(before) !== owner) return false;
  if (owner === undefined) return true;
  const own = owned.get(owner) ?? NOTHING;
  owned.set(owner, before ? own.map((one) => (one === before ? record : one)) : [...own, record]);
  return true;
}

function know(list: readonly Kept[]): Known {
  const present = knownOf.get(list);
  if (present) return present;
  const places = new Map<string, number>();
  const owned = new Map<string, Kept[]>();
  list.forEach((record, place) => {
    if (!places.has(record.id)) places.set(record.id, place);
    const owner = ownerOf(record);
    if (owner === undefined) return;
    const own = owned.get(owner);
    if (own) own.push(record);
    else owned.set(owner, [record]);
  });
  const known = { places, owned };
  knownOf.set(list, known);
  return known;
}

/** A reading and a move name their visit, a visit its car; a draft or a car is nobody's. */
function ownerOf(record: Kept): string | undefined {
  const { visitId, carId } = record as { readonly visitId?: string; readonly carId?: string };
  return visitId ?? carId;
}
