/** Random histories of two phones that hand each other their backups. */
import fc from 'fast-check';
import { merge } from '../../app/store/merge.ts';
import type { Entry, Everything } from '../../app/store/schema.ts';
import { canonical } from '../../core/records/canonical.ts';
import { lastMarked } from '../../core/records/deletion.ts';
import { broughtBack, deletedNow } from '../../core/records/deletion-marks.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { edited } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { car, draft, inOrder, reading } from './records.ts';

export const EMPTY: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };

export function put(all: Everything, [store, record]: Entry): Everything {
  const rest = (all[store] as readonly { readonly id: string }[]).filter(({ id }) => id !== record.id);
  return { ...all, [store]: [...rest, record] };
}
export const restore = (all: Everything, file: Everything): Everything => merge(all, file).entries.reduce(put, all);
export const text = (all: Everything): string => canonical(inOrder(all));

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
/** Deleted and brought back, as somebody does who sees what is on the phone. */
const held = (all: Everything, visitId: string): number =>
  [...all.readings, ...all.moves].filter((one) => one.visitId === visitId).length;
const remove = fc.tuple(fc.constantFrom('cars', 'visits'), few).map(
  ([store, id]): Act =>
    (all, at) => {
      if (store === 'visits') {
        const visit = all.visits.find((one) => one.id === id);
        const work = { records: held(all, id), latest: visit && lastMarked(visit) };
        return visit ? put(all, ['visits', deletedNow(visit, work, at)]) : all;
      }
      const record = all.cars.find((one) => one.id === id);
      const own = all.visits.filter(({ carId }) => carId === id);
      const records = own.reduce((sum, visit) => sum + 1 + held(all, visit.id), 0);
      return record ? put(all, ['cars', deletedNow(record, { records, latest: record.changed }, at)]) : all;
    },
);
const back = fc.tuple(fc.constantFrom('cars', 'visits'), few).map(
  ([store, id]): Act =>
    (all, at) => {
      const [car, visit] = [all.cars, all.visits].map((list: readonly { readonly id: string }[]) =>
        list.find((one) => one.id === id),
      );
      if (store === 'visits') return visit ? put(all, ['visits', broughtBack(visit as VisitRecord, at)]) : all;
      return car ? put(all, ['cars', broughtBack(car as CarRecord, at)]) : all;
    },
);
/** Readings and moves are random ids in life; here two phones may hold one id with two contents. */
const shims = fc.constantFrom(undefined, [], [{ size: 1.5, count: 2 }]);
const read = fc.tuple(fc.constantFrom('r', 's', 't'), fc.integer({ min: 0, max: 2 }), fc.boolean(), shims).map(
  ([id, camber, bare, pack]): Act =>
    (all) => {
      if (all.readings.some((one) => one.id === id)) return all;
      const typed: Record<string, string> = bare ? {} : { 'LF.camber': String(camber) };
      const packs = pack && { packs: { LF: { upper: pack } } };
      return put(all, ['readings', { ...reading, id, reading: { LF: { camber } }, typed, ...packs }]);
    },
);
const move = fc.tuple(fc.constantFrom('m', 'n'), fc.integer({ min: 0, max: 2 }), shims).map(
  ([id, to, pack]): Act =>
    (all, at) => {
      if (all.moves.some((one) => one.id === id)) return all;
      const what = {
        corner: 'LF',
        adjuster: 'rod',
        from: 0,
        to,
        outcome: 'done',
        ...(pack && { shims: pack }),
      } as const;
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
export const histories = fc.oneof(
  of(edit, remove, back),
  of(check, close, reopen, plain, remove, back),
  of(read, move),
  of(type, prefer),
  of(edit, check, close, reopen, plain, read, move, type, prefer, remove, back),
);

export function play(history: readonly (readonly [string, Act, number])[]): readonly [Everything, Everything] {
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
export function pieces(all: Everything): Set<string> {
  const found = new Set<string>();
  for (const store of ['cars', 'drafts', 'preferences'] as const) {
    for (const { versions = [], past: _, deleted = [], ...own } of all[store]) {
      for (const mark of deleted) found.add(`${store} ${own.id} deleted ${canonical(mark)}`);
      for (const { changed: __, ...content } of [own, ...versions.map((one) => ({ ...one, id: own.id }))] as {
        changed?: string;
      }[])
        found.add(`${store} ${canonical(content)}`);
    }
  }
  for (const { id: own, opened, closed, checks = {}, marks = {}, deleted = [] } of all.visits) {
    // Of two openings under one id there are two visits.
    const id = `${own.split('~')[0]} ${opened}`;
    for (const mark of deleted) found.add(`${id} deleted ${canonical(mark)}`);
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
