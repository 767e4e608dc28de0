/**
 * Two files of one car as one: a union by id. Absent never deletes. Where one id has two contents both are kept, the
 * second under an id made from its content, and said so; so merging again, in either order, changes nothing.
 */
import type { CarFile, Moved, Round, Visit } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { canonical } from './canonical.ts';
import { hash, under } from './made-id.ts';
import { byText as compare } from './order.ts';
import { type Facts, joinFacts } from './visit-facts.ts';

/** One id (or the car, the spec) with two contents. */
export interface MergeNote {
  /** Where: `car`, `spec`, `visits.ID`, `visits.ID.rounds.ID`. */
  readonly field: string;
  /** What the merged file has there. */
  readonly kept: unknown;
  /** The other content, whole. For a round or a move it is in the merged file too, under its own id. */
  readonly other: unknown;
}
export interface Merged {
  readonly file: CarFile;
  readonly notes: readonly MergeNote[];
}

/**
 * Two files of one car as one: visits, rounds and moves are a union by id, and none is lost. `a` is the one at hand: where
 * the two describe the car or its spec differently, a's stays and b's is in the notes.
 * @param a, b validated
 * @throws InputError when the files are of different cars
 */
export function mergeCarFiles(a: CarFile, b: CarFile): Merged {
  if (a.car.id !== b.car.id) throw new InputError('car.id', b.car.id, { is: 'car', id: a.car.id, which: 'same' });
  const notes: MergeNote[] = [];
  const car = settle('car', a.car, b.car, notes) ?? a.car;
  const spec = settle('spec', a.spec, b.spec, notes);
  const visits = mergeVisits(a.visits ?? [], b.visits ?? [], notes);
  const file: CarFile = { format: a.format, version: a.version, car, ...(spec ? { spec } : {}), visits };
  return { file, notes };
}

function settle<T>(field: string, a: T | undefined, b: T | undefined, notes: MergeNote[]): T | undefined {
  if (a !== undefined && b !== undefined && canonical(a) !== canonical(b)) notes.push({ field, kept: a, other: b });
  return a ?? b;
}

/** Visits of one side only are merged with themselves: the order of their rounds is settled all the same. */
function mergeVisits(a: readonly Visit[], b: readonly Visit[], notes: MergeNote[]): Visit[] {
  const added = b.filter(({ id }) => !a.some((visit) => visit.id === id));
  return [...a, ...added]
    .map((visit) => mergeVisit(visit, b.find(({ id }) => id === visit.id) ?? visit, notes))
    .sort((x, y) => compare(x.opened, y.opened) || compare(x.id, y.id));
}

/**
 * A visit is opened once and may be closed later: of two openings the earlier holds, of what was marked since (closed,
 * opened again, a check) the latest, and the rest is among its marks.
 */
function mergeVisit(a: Visit & Facts, b: Visit & Facts, notes: MergeNote[]): Visit {
  const field = `visits.${a.id}`;
  const { closed: closedA, checks: _, marks: __, deleted: ___, rounds: roundsA, ...headA } = a;
  const { closed: closedB, checks: ____, marks: _____, deleted: ______, rounds: roundsB, ...headB } = b;
  settle(field, headA, headB, notes);
  if (closedA && closedB) settle(`${field}.closed`, closedA, closedB, notes);
  const opened = [a.opened, b.opened].sort(compare)[0]!;
  const rounds = union<Round>(`${field}.rounds`, roundsA, roundsB, notes, (x, y, at) => mergeRound(x, y, at, notes));
  return { ...headA, opened, ...joinFacts(a, b), rounds };
}

/** Two that differ. The reading of a round never changes, but moves are added to it. Nothing when it is not the same round. */
function mergeRound(a: Round, b: Round, field: string, notes: MergeNote[]): Round | undefined {
  const { moved: movedA, ...readA } = a;
  const { moved: movedB, ...readB } = b;
  if (canonical(readA) !== canonical(readB)) return undefined;
  if (!movedA || !movedB) return { ...readA, moved: movedA ?? movedB ?? [] };
  return { ...readA, moved: union<Moved>(`${field}.moved`, movedA, movedB, notes) };
}

interface Entry {
  readonly id?: string;
  readonly at?: string;
}

/** By id; what has no id is known by its content. */
function union<T extends Entry>(
  field: string,
  a: readonly T[],
  b: readonly T[],
  notes: MergeNote[],
  join: (a: T, b: T, field: string) => T | undefined = () => undefined,
): T[] {
  const all = new Map<string, T>();
  for (const one of [...a, ...b]) {
    const key = one.id ?? canonical(one);
    const present = all.get(key);
    if (!present || canonical(present) === canonical(one)) {
      all.set(key, present ?? one);
      continue;
    }
    const joined = join(present, one, `${field}.${key}`);
    if (joined) {
      all.set(key, joined);
      continue;
    }
    // Which of the two keeps the id depends on their content alone, not on the order of the files.
    const [kept, other] = [present, one].sort((x, y) => compare(canonical(x), canonical(y))) as [T, T];
    const copy = { ...other, id: under(key, hash(canonical(other))) };
    notes.push({ field: `${field}.${key}`, kept, other });
    all.set(key, kept);
    all.set(copy.id, copy);
  }
  const list = [...all.values()];
  return list.every(({ at }) => at !== undefined)
    ? list.sort((x, y) => compare(x.at!, y.at!) || compare(x.id ?? '', y.id ?? ''))
    : list;
}
