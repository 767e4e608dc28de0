/**
 * What of a visit changes: whether it is closed, each of its checks, and whether it is deleted (deletion.ts). Each is a
 * set of marks with a time; the latest holds and the others are kept, so that two phones' marks are joined by union. `closed` and `checks` say what
 * holds; a mark that they say by themselves is not written down, so a visit of before is one too.
 */
import { canonical } from './canonical.ts';
import type { Deletable } from './deletion.ts';
import { joinDeletions } from './deletion-marks.ts';
import { byText, byTime, laterThan } from './order.ts';

/** One value, `''` for open again or not ticked, and when it was set, where that is known. */
export interface Mark {
  readonly value: string;
  readonly at?: string;
}
export interface Facts extends Deletable {
  readonly closed?: string;
  readonly checks?: Readonly<Record<string, string>>;
  /** By what they mark: `closed`, `check:NAME`; the oldest first. */
  readonly marks?: Readonly<Record<string, readonly Mark[]>>;
}

const CLOSED = 'closed';
const CHECK = 'check:';
const order = (a: Mark, b: Mark): number => byTime(a.at, b.at) || byText(a.value, b.value);

/** The mark that a field makes by itself. */
const implied = (key: string, value: string): Mark => (key === CLOSED ? { value, at: value } : { value });

const isImplied = (key: string, mark: Mark | undefined): boolean =>
  (key === CLOSED || key.startsWith(CHECK)) && canonical(mark) === canonical(implied(key, mark?.value ?? ''));

/** Every mark, those that are only said by the fields too. */
function marksOf({ closed, checks = {}, marks = {} }: Facts): Map<string, readonly Mark[]> {
  const all = new Map<string, readonly Mark[]>();
  for (const [key, list] of Object.entries(marks)) if (list.length > 0) all.set(key, once(list));
  const said = Object.entries(checks).map(([name, value]) => [CHECK + name, value] as const);
  for (const [key, value] of closed === undefined ? said : [...said, [CLOSED, closed] as const]) {
    const list = all.get(key) ?? [];
    if (list.at(-1)?.value !== value) all.set(key, once([...list, implied(key, value)]));
  }
  return all;
}

const once = (marks: readonly Mark[]): readonly Mark[] =>
  [...new Map(marks.map((one) => [canonical(one), one])).values()].sort(order);

/** The fields that these marks say, and the marks that the fields do not. */
function factsOf(all: ReadonlyMap<string, readonly Mark[]>): Facts {
  const closed = all.get(CLOSED)?.at(-1)?.value;
  const entries = [...all].sort(([a], [b]) => byText(a, b));
  const checks = entries.flatMap(([key, list]) =>
    key.startsWith(CHECK) ? [[key.slice(CHECK.length), list.at(-1)?.value ?? '']] : [],
  );
  const marks = entries.filter(([key, list]) => list.length > 1 || !isImplied(key, list[0]));
  return {
    ...(closed && { closed }),
    ...(checks.length > 0 && { checks: Object.fromEntries(checks) }),
    ...(marks.length > 0 && { marks: Object.fromEntries(marks) }),
  };
}

/** The union of what two phones know of one visit. */
export function joinFacts(a: Facts, b: Facts): Facts {
  const all = new Map(marksOf(a));
  for (const [key, list] of marksOf(b)) all.set(key, once([...(all.get(key) ?? []), ...list]));
  return { ...factsOf(all), ...joinDeletions(a, b) };
}

type Change = { readonly closed?: string; readonly checks?: Readonly<Record<string, string>> };

/**
 * A visit after marks made here: each stands in the place of the one that was shown, and what else was kept is kept.
 * @param change `closed`: when, `''` to open it again; `checks` by name: `ok`, a note, or `''`
 * @param now ISO 8601
 */
export function marked<T extends Facts>(visit: T, { closed, checks = {} }: Change, now: string): T {
  const { closed: _, checks: __, marks: ___, ...rest } = visit;
  const all = marksOf(visit);
  const set = (key: string, value: string): void => {
    const list = all.get(key) ?? [];
    const last = list.at(-1);
    if (last?.value === value) return;
    all.set(key, once([...list.slice(0, -1), { value, at: laterThan(last?.at, now) }]));
  };
  for (const [name, value] of Object.entries(checks)) set(CHECK + name, value);
  if (closed !== undefined) set(CLOSED, closed);
  return { ...rest, ...factsOf(all) } as unknown as T;
}

/** What another phone noted for a check and what is shown does not say. */
export function otherNotes({ checks, marks }: Facts, name: string): readonly string[] {
  const shown = checks?.[name] ?? '';
  const values = (marks?.[CHECK + name] ?? []).map(({ value }) => value);
  return [...new Set(values)].filter((value) => value !== 'ok' && !shown.startsWith(value));
}

/** Whether two phones noted different things for a check, or closed it at different times. */
export function toldTwice(facts: Facts): boolean {
  const closings = (facts.marks?.[CLOSED] ?? []).filter(({ value }) => value !== '');
  const names = Object.keys(facts.checks ?? {});
  return closings.length > 1 || names.some((name) => otherNotes(facts, name).length > 0);
}
