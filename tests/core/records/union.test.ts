/** Records that come in beside those that are here: a union of sets, told record by record. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../../core/records/canonical.ts';
import type {
  DraftRecord,
  MoveRecord,
  ReadingRecord,
  StoreName,
  Stores,
  VisitRecord,
} from '../../../core/records/stored.ts';
import { unite } from '../../../core/records/union.ts';

const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const reading = (id: string, camber: number, typed: Readonly<Record<string, string>> = {}): ReadingRecord => ({
  id,
  visitId: 'v',
  at: at(8),
  reading: { LF: { camber } },
  settings: {},
  typed,
});
const move = (id: string, to: number): MoveRecord => ({
  id,
  visitId: 'v',
  readingId: 'r',
  at: at(8),
  corner: 'LF',
  adjuster: 'rod',
  from: 0,
  to,
  outcome: 'done',
});
const draft = (text: string, hour: number): DraftRecord => ({
  id: 'd',
  texts: { 'LF.camber': text },
  changed: at(hour),
});
const visit = (more: Partial<VisitRecord> = {}): VisitRecord => ({ id: 'v', carId: 'c', opened: at(7), ...more });

/** All that is there after records came in. */
function joined<S extends StoreName>(store: S, here: Stores[S], incoming: Stores[S]): Stores[S] {
  const { changed } = unite(store, here, incoming);
  const ids = new Set(changed.map(({ id }) => id));
  const kept = (here as readonly { readonly id: string }[]).filter(({ id }) => !ids.has(id));
  return [...kept, ...changed].sort((a, b) => (a.id < b.id ? -1 : 1)) as unknown as Stores[S];
}

describe('what became of each record that came in', () => {
  it('is told in their order, and what is to be written with how many are new', () => {
    const here = [move('a', 1), move('b', 1)];
    const { changed, fresh, verdicts, twofold } = unite('moves', here, [move('b', 1), move('c', 1), move('a', 1)]);
    expect(verdicts).toEqual(['same', 'added', 'same']);
    expect([changed, fresh, twofold]).toEqual([[move('c', 1)], 1, []]);
  });

  it('of two contents under one id both are kept, the second under an id of its content, and it is said', () => {
    const one = unite('moves', [move('a', 1)], [move('a', 2)]);
    const other = unite('moves', [move('a', 2)], [move('a', 1)]);
    for (const { verdicts, twofold, fresh } of [one, other]) {
      expect([verdicts, fresh, twofold.length]).toEqual([['updated'], 1, 1]);
      expect(twofold[0]).toMatch(/^a~[0-9a-f]{16}$/);
    }
    const [forth, back] = [
      joined('moves', [move('a', 1)], [move('a', 2)]),
      joined('moves', [move('a', 2)], [move('a', 1)]),
    ];
    expect(forth).toEqual(back);
    expect(forth.map(({ to }) => to).sort()).toEqual([1, 2]);
    // Again it is all here.
    for (const again of [move('a', 1), move('a', 2)]) {
      const { changed, verdicts, twofold } = unite('moves', forth, [again]);
      expect([changed, twofold]).toEqual([[], []]);
      expect(['same', 'kept']).toContain(verdicts[0]);
    }
    expect(new Set([1, 2].map((to) => unite('moves', forth, [move('a', to)]).verdicts[0]))).toEqual(
      new Set(['same', 'kept']),
    );
  });

  it('a reading without the digits as typed is one with them, whichever came first', () => {
    const typed = reading('r', 1, { 'LF.camber': '1.0' });
    expect(joined('readings', [reading('r', 1)], [typed])).toEqual([typed]);
    expect(unite('readings', [reading('r', 1)], [typed])).toMatchObject({
      verdicts: ['updated'],
      fresh: 0,
      twofold: [],
    });
    expect(unite('readings', [typed], [reading('r', 1)])).toMatchObject({ verdicts: ['kept'], changed: [] });
    // Typed otherwise, or read otherwise, it is another one.
    expect(joined('readings', [typed], [reading('r', 1, { 'LF.camber': '1' })])).toHaveLength(2);
    expect(joined('readings', [typed], [reading('r', 2)])).toHaveLength(2);
  });

  it('a visit has the marks of both; of two openings there are two', () => {
    const [closed, checked] = [visit({ closed: at(9) }), visit({ checks: { tyres: 'ok' } })];
    expect(joined('visits', [closed], [checked])).toEqual([visit({ closed: at(9), checks: { tyres: 'ok' } })]);
    expect(unite('visits', [closed], [checked]).twofold).toEqual([]);
    expect(unite('visits', [closed], [visit({ closed: at(10) })]).twofold).toEqual(['v']);
    const two = joined('visits', [closed], [visit({ opened: at(6), checks: { tyres: 'ok' } })]);
    expect(two.map(({ opened }) => opened).sort()).toEqual([at(6), at(7)]);
    // Each keeps its own marks, and they go by how they differ, not by these.
    expect(two.find(({ opened }) => opened === at(7))?.closed).toBe(at(9));
    expect(two.find(({ opened }) => opened === at(6))?.checks).toEqual({ tyres: 'ok' });
  });

  it('what was typed on the way to what stands there was not told differently; what was typed instead was', () => {
    expect(unite('drafts', [draft('-1', 8)], [draft('-1.2', 9)]).twofold).toEqual([]);
    expect(unite('drafts', [draft('-1.2', 9)], [draft('-1', 8)]).twofold).toEqual([]);
    expect(unite('drafts', [draft('-1.3', 8)], [draft('-1.2', 9)]).twofold).toEqual(['d']);
    expect(unite('drafts', [{ ...draft('', 8), texts: { 'RF.toe': '0' } }], [draft('-1.2', 9)]).twofold).toEqual(['d']);
  });

  it('of a setting the later is shown and the other is a question', () => {
    const set = (value: string, hour: number) => ({ id: 'theme', value, changed: at(hour) });
    for (const [a, b] of [
      [set('dark', 8), set('light', 9)],
      [set('light', 9), set('dark', 8)],
    ] as const) {
      const { changed, twofold } = unite('preferences', [a], [b]);
      expect([changed[0]?.value, twofold]).toEqual(['light', ['theme']]);
    }
  });
});

describe('records of every store', () => {
  const id = fc.constantFrom('a', 'b');
  const few = fc.integer({ min: 0, max: 2 });
  const stores: { readonly [S in StoreName]?: fc.Arbitrary<Stores[S][number]> } = {
    moves: fc.tuple(id, few).map(([own, to]) => move(own, to)),
    readings: fc
      .tuple(id, few, fc.constantFrom({}, { 'LF.camber': '0' }, { 'LF.camber': '1' }))
      .map(([own, camber, typed]) => reading(own, camber, typed as Readonly<Record<string, string>>)),
    visits: fc
      .record({
        id,
        carId: fc.constant('c'),
        opened: fc.constantFrom(at(6), at(7)),
        closed: fc.constantFrom(at(9), at(10)),
        checks: fc.dictionary(fc.constantFrom('tyres', 'pins'), fc.constantFrom('', 'ok', 'worn'), { maxKeys: 2 }),
      })
      .map(({ checks, ...rest }) => ({ ...rest, ...(Object.keys(checks).length > 0 && { checks }) })),
    drafts: fc.tuple(id, few, few).map(([own, text, hour]) => ({ ...draft(String(text), hour), id: own })),
    preferences: fc.tuple(id, few, few).map(([own, value, hour]) => ({ id: own, value, changed: at(hour) })),
  };

  it.each(Object.keys(stores) as (keyof typeof stores)[])('%s: are one set in whatever order they come', (store) => {
    // The list is of the store's records.
    const records = fc.array(stores[store] as fc.Arbitrary<never>, { maxLength: 6 });
    const all = (...lists: readonly (readonly never[])[]) =>
      canonical(lists.reduce<readonly unknown[]>((here, list) => joined(store, here as never, list as never), []));
    fc.assert(
      fc.property(records, records, records, (a, b, c) => {
        expect(all(b, a)).toBe(all(a, b));
        expect(all(a, b, b, a)).toBe(all(a, b));
        expect(all([...a, ...b], c)).toBe(all(c, b, a));
        const there = joined(store, [], a as never);
        const { changed, fresh, verdicts } = unite(store, there, b as never);
        expect(verdicts).toHaveLength(b.length);
        const known = new Set(there.map((one: { readonly id: string }) => one.id));
        expect(fresh).toBe(changed.filter((one: { readonly id: string }) => !known.has(one.id)).length);
        expect(changed.length === 0).toBe(verdicts.every((one) => one === 'same' || one === 'kept'));
      }),
    );
  });
});
