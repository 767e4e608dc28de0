/**
 * A record that is edited as a set of versions, none of which is ever lost. The one that is shown stands in the record
 * itself, all others in `versions`; `past` tells which of them somebody saw and replaced. Two such records are joined by
 * the union of both, so the order does not count and once is as good as thrice.
 */
import { canonical } from './canonical.ts';
import type { Deletable } from './deletion.ts';
import { joinDeletions } from './deletion-marks.ts';
import { digest } from './made-id.ts';
import { byText, byTime, laterThan } from './order.ts';

/** Whether it is deleted is beside what it holds: no version of it. */
export interface Versioned extends Deletable {
  readonly id: string;
  readonly changed?: string;
  /** Other contents of this record, each without its id. */
  readonly versions?: readonly object[];
  /** Contents that were replaced knowingly, by digest, and the newest time of theirs that was. */
  readonly past?: Readonly<Record<string, string>>;
}
interface Version {
  readonly content: object;
  /** The content as text, its time left out: the same build saved twice is one. */
  readonly key: string;
  readonly changed?: string | undefined;
}
type Past = Readonly<Record<string, string>>;

function versionOf(content: object): Version {
  const { id: _, versions: __, past: ___, deleted: ____, changed, ...rest } = content as Partial<Versioned>;
  return { content: rest, key: canonical(rest), changed };
}
const allOf = (record: Versioned): Version[] => [record, ...(record.versions ?? [])].map(versionOf);
const order = (a: Version, b: Version): number => byTime(a.changed, b.changed) || byText(a.key, b.key);

/** Those that nobody replaced; where all were, as in a file made by hand, all. */
function standing(all: readonly Version[], past: Past): readonly Version[] {
  const left = all.filter(({ key, changed }) => {
    const replaced = past[digest(key)];
    return replaced === undefined || byTime(changed, replaced) > 0;
  });
  return left.length > 0 ? left : all;
}

/** One record of these versions: equal contents once, at their newest time, and the newest that stands is shown. */
function compose<T extends Versioned>(id: string, versions: readonly Version[], past: Past): T {
  const byKey = new Map<string, Version>();
  for (const one of versions) {
    const known = byKey.get(one.key);
    if (!known || order(known, one) < 0) byKey.set(one.key, one);
  }
  const all = [...byKey.values()].sort(order);
  const shown = standing(all, past).at(-1);
  const others = all.filter((one) => one !== shown).map(plain);
  const more = {
    ...(others.length > 0 && { versions: others }),
    ...(Object.keys(past).length > 0 && { past }),
  };
  return { id, ...(shown && plain(shown)), ...more } as unknown as T;
}
const plain = ({ content, changed }: Version): object => ({ ...content, ...(changed !== undefined && { changed }) });

/** The union of two records of one id. */
export function joinVersions<T extends Versioned>(a: T, b: T): T {
  return { ...compose<T>(a.id, [...allOf(a), ...allOf(b)], mergePast(a.past, b.past)), ...joinDeletions(a, b) };
}

function mergePast(a: Past = {}, b: Past = {}): Past {
  const past = { ...a };
  for (const [key, time] of Object.entries(b)) {
    const known = past[key];
    if (known === undefined || byTime(known, time) < 0) past[key] = time;
  }
  return past;
}

/** All those versions seen and replaced. */
const replacing = (past: Past | undefined, seen: readonly Version[]): Past =>
  mergePast(past, Object.fromEntries(seen.map(({ key, changed }) => [digest(key), changed ?? ''])));

/**
 * The record after an edit here: what it showed stays among its versions.
 * @param next all of the new content; equal to what is shown it changes nothing
 * @param now ISO 8601
 */
export function edited<T extends Versioned>(before: T | undefined, next: Omit<T, 'changed'>, now: string): T {
  const own = versionOf(next);
  if (!before) return compose<T>(next.id, [{ ...own, changed: now }], {});
  const shown = versionOf(before);
  if (shown.key === own.key) return before;
  const version = { ...own, changed: laterThan(before.changed, now) };
  const record = compose<T>(before.id, [...allOf(before), version], replacing(before.past, [shown]));
  return { ...record, ...joinDeletions(before, {}) };
}

/** Versions of another phone that nobody has decided about: as whole records, the newest first. */
export function otherVersions<T extends Versioned>(record: T): readonly T[] {
  if (!record.versions) return [];
  const shown = versionOf(record).key;
  return standing(allOf(record).sort(order), record.past ?? {})
    .filter(({ key }) => key !== shown)
    .map((one) => ({ id: record.id, ...plain(one) }) as unknown as T)
    .reverse();
}

/** Whether two records show the same content, whenever it was written. */
export const sameVersion = (a: Versioned, b: Versioned): boolean => versionOf(a).key === versionOf(b).key;

/** Every version that is kept beside the one that is shown: as whole records, the newest first. */
export const keptVersions = <T extends Versioned>(record: T): readonly T[] =>
  [...(record.versions ?? [])].reverse().map((one) => ({ id: record.id, ...one }) as unknown as T);

/** The record after somebody saw all that stands and took this one (the shown one, or another). The rest stays kept. */
export function chosen<T extends Versioned>(record: T, version: T, now: string): T {
  const own = versionOf(version);
  const all = allOf(record);
  const seen = standing(all, record.past ?? {}).filter(({ key }) => key !== own.key);
  const newest = all.sort(order).at(-1)?.changed;
  const next = compose<T>(
    record.id,
    [...all, { ...own, changed: laterThan(newest, now) }],
    replacing(record.past, seen),
  );
  return { ...next, ...joinDeletions(record, {}) };
}
