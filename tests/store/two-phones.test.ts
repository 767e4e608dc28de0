/**
 * Two phones that work on the same cars and hand each other their backups: whatever they did, in whatever order and
 * however often the files come in, both hold the same in the end, and nothing of either is missing.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merge } from '../../app/store/merge.ts';
import type { Entry, Everything, StoreName } from '../../app/store/schema.ts';
import { canonical } from '../../core/records/canonical.ts';
import { readStores } from '../../core/records/stored-schema.ts';
import { edited } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { car, draft, inOrder, reading } from './records.ts';

const EMPTY: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };

function put(all: Everything, [store, record]: Entry): Everything {
  const rest = (all[store] as readonly { readonly id: string }[]).filter(({ id }) => id !== record.id);
  return { ...all, [store]: [...rest, record] };
}
const restore = (all: Everything, file: Everything): Everything => merge(all, file).entries.reduce(put, all);
const text = (all: Everything): string => canonical(inOrder(all));

/** What a technician may do on one phone; ids, names and times are few, so that the two often meet. */
type Act = (all: Everything, at: string) => Everything;
const few = fc.constantFrom('a', 'b');
const value = fc.constantFrom('', 'ok', 'LF low', 'LF lower bush soft');
const label = fc.constantFrom('Marl', 'Whin', 'Tarn');

const edit = fc.tuple(few, label).map(
  ([id, name]): Act =>
    (all, at) => {
      const before = all.cars.find((one) => one.id === id);
      const next = { id, car: { ...car.car, id, label: name }, spec: {} };
      return put(all, ['cars', edited(before, next, at)]);
    },
);
const change = (of: (at: string, text: string) => Parameters<typeof marked>[1]) =>
  fc.tuple(few, value).map(
    ([id, text]): Act =>
      (all, at) => {
        const visit = all.visits.find((one) => one.id === id) ?? { id, carId: 'a', opened: '2026-01-01T08:00:00Z' };
        return put(all, ['visits', marked(visit, of(at, text), at)]);
      },
  );
const check = fc.constantFrom('tyres', 'joints').chain((name) => change((_, text) => ({ checks: { [name]: text } })));
const close = change((at) => ({ closed: at }));
const reopen = change(() => ({ closed: '' }));
/** Readings and moves are random ids in life; here two phones may hold one id with two contents. */
const read = fc.tuple(fc.constantFrom('r', 's', 't'), fc.integer({ min: 0, max: 2 }), fc.boolean()).map(
  ([id, camber, bare]): Act =>
    (all) => {
      if (all.readings.some((one) => one.id === id)) return all;
      const typed: Record<string, string> = bare ? {} : { 'LF.camber': String(camber) };
      return put(all, ['readings', { ...reading, id, reading: { LF: { camber } }, typed }]);
    },
);
const move = fc.tuple(fc.constantFrom('m', 'n'), fc.integer({ min: 0, max: 2 })).map(
  ([id, to]): Act =>
    (all, at) => {
      if (all.moves.some((one) => one.id === id)) return all;
      const what = { corner: 'LF', adjuster: 'rod', from: 0, to, outcome: 'done' } as const;
      return put(all, ['moves', { id, visitId: 'a', readingId: 'r', at, ...what }]);
    },
);
const type = fc.tuple(few, value).map(
  ([id, typed]): Act =>
    (all, at) =>
      put(all, ['drafts', { ...draft(id, typed), changed: at }]),
);
const prefer = fc.tuple(few, value, fc.boolean()).map(
  ([id, set, dated]): Act =>
    (all, changed) =>
      put(all, ['preferences', { id, value: set, ...(dated && { changed }) }]),
);
/** As a build of before did it: the fields alone, whatever marks there are. */
const plain = fc.tuple(few, value, fc.boolean()).map(
  ([id, text, done]): Act =>
    (all, at) => {
      const { closed: _, ...visit } = all.visits.find((one) => one.id === id) ?? {
        id,
        carId: 'a',
        opened: '2026-01-01',
      };
      return put(all, ['visits', { ...visit, checks: { tyres: text }, ...(done && { closed: at }) }]);
    },
);

/** Acts of the first phone, of the second, and files that go over; each a minute after the one before, more or less. */
const where = fc.constantFrom('first', 'second', 'first', 'second', 'to-first', 'to-second');
const of = (...acts: fc.Arbitrary<Act>[]) =>
  fc.array(fc.tuple(where, fc.oneof(...acts), fc.integer({ min: -3, max: 9 })), { maxLength: 25 });
/** Of one kind of thing, so that the two often meet; and of all. */
const histories = fc.oneof(
  of(edit),
  of(check, close, reopen, plain),
  of(read, move),
  of(type, prefer),
  of(edit, check, close, reopen, plain, read, move, type, prefer),
);

function play(history: readonly (readonly [string, Act, number])[]): readonly [Everything, Everything] {
  let [first, second, minute] = [EMPTY, EMPTY, 100];
  for (const [what, act, later] of history) {
    minute += later;
    const at = new Date(Date.UTC(2026, 0, 1, 8, minute)).toISOString();
    if (what === 'first') first = act(first, at);
    else if (what === 'second') second = act(second, at);
    else if (what === 'to-first') first = restore(first, second);
    else second = restore(second, first);
  }
  return [first, second];
}

/** All that a phone holds, piece by piece: contents of cars, drafts, settings and records, and marks of visits. */
function pieces(all: Everything): Set<string> {
  const found = new Set<string>();
  for (const store of ['cars', 'drafts', 'preferences'] as const) {
    for (const { versions = [], past: _, ...own } of all[store]) {
      for (const { changed: __, ...content } of [own, ...versions.map((one) => ({ ...one, id: own.id }))] as {
        changed?: string;
      }[])
        found.add(`${store} ${canonical(content)}`);
    }
  }
  for (const { id: own, opened, closed, checks = {}, marks = {} } of all.visits) {
    // Of two openings under one id there are two visits.
    const id = `${own.split('~')[0]} ${opened}`;
    if (closed) found.add(`${id} closed ${closed}`);
    for (const [name, value] of Object.entries(checks)) found.add(`${id} check:${name} ${value}`);
    for (const [key, list] of Object.entries(marks)) for (const one of list) found.add(`${id} ${key} ${one.value}`);
  }
  // A file's reading without its digits is no more than the same reading with them.
  for (const { id: _, typed, ...rest } of all.readings) {
    found.add(`reading ${canonical(rest)}`);
    if (Object.keys(typed).length > 0) found.add(`typed ${canonical(rest)} ${canonical(typed)}`);
  }
  for (const { id: _, ...rest } of all.moves) found.add(`move ${canonical(rest)}`);
  return found;
}

describe('two phones', () => {
  it('hold the same after each took the other’s file, whoever was first', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const [here, there] = [restore(first, second), restore(second, first)];
        expect(text(here)).toBe(text(there));
        const held = pieces(here);
        for (const piece of [...pieces(first), ...pieces(second)]) expect(held).toContain(piece);
      }),
      { numRuns: 1000 },
    );
  });

  it('give a third one the same in either order, and thrice is as good as once', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const once = restore(restore(EMPTY, first), second);
        expect(text(restore(restore(EMPTY, second), first))).toBe(text(once));
        for (const file of [first, second, first, once]) {
          const again = merge(once, file);
          expect(again.entries).toEqual([]);
          expect(again.counts.added + again.counts.updated).toBe(0);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('and a third with work of its own: it makes no difference which two met first', () => {
    fc.assert(
      fc.property(histories, histories, (history, other) => {
        const [a, b] = play(history);
        const [c] = play(other);
        expect(text(restore(restore(a, b), c))).toBe(text(restore(a, restore(b, c))));
      }),
      { numRuns: 1000 },
    );
  });

  it('hold only what a backup takes back', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const all = JSON.parse(JSON.stringify(restore(first, second)));
        expect(readStores(all)).toEqual({ stores: all, aside: [] });
      }),
      { numRuns: 200 },
    );
  });

  it('lose nothing of any store: each has its acts in these histories', () => {
    const [all] = fc
      .sample(histories, { numRuns: 300, seed: 1 })
      .map((history) => play(history))
      .reduce(([sum], [first, second]) => [restore(restore(sum, first), second), EMPTY], [EMPTY, EMPTY]);
    for (const store of Object.keys(EMPTY) as StoreName[]) expect(all[store].length, store).toBeGreaterThan(0);
  });
});
