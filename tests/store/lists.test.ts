/** What a list knows of itself agrees with a look along it, whatever was written and whoever still holds an older list. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byId, ownedBy, withRecords } from '../../app/store/lists.ts';

interface Thing {
  readonly id: string;
  readonly carId?: string;
  readonly visitId?: string;
  readonly text: number;
}

const IDS = ['a', 'b', 'c', 'd', 'e', 'constructor', '__proto__'];
const OWNERS = ['u', 'v', 'toString'];
const owner = fc.constantFrom({}, ...OWNERS.map((carId) => ({ carId })), ...OWNERS.map((visitId) => ({ visitId })), {
  visitId: 'u',
  carId: 'v',
});
const thing = fc
  .tuple(fc.constantFrom(...IDS), owner, fc.nat())
  .map(([id, whose, text]): Thing => ({ id, ...whose, text }));

/** The same by a look along the list. */
const ownerOf = ({ visitId, carId }: Thing): string | undefined => visitId ?? carId;
function agrees(list: readonly Thing[]): void {
  for (const id of IDS) expect(byId(list, id)).toBe(list.find((one) => one.id === id));
  for (const whose of OWNERS) expect(ownedBy(list, whose)).toEqual(list.filter((one) => ownerOf(one) === whose));
}
function written(list: readonly Thing[], records: readonly Thing[]): Thing[] {
  const next = [...list];
  for (const record of records) {
    const place = next.findIndex(({ id }) => id === record.id);
    next[place < 0 ? next.length : place] = record;
  }
  return next;
}

it('lists that follow from one another, each asked at any time', () => {
  const steps = fc.array(fc.record({ records: fc.array(thing, { maxLength: 4 }), ask: fc.boolean(), from: fc.nat() }));
  fc.assert(
    fc.property(fc.uniqueArray(thing, { selector: ({ id }) => id }), steps, (start, all) => {
      const lists: (readonly Thing[])[] = [start];
      for (const { records, ask, from } of all) {
        // Mostly the newest, at times one that others follow from already.
        const base = lists[ask ? lists.length - 1 : from % lists.length] ?? start;
        const before = [...base];
        const next = withRecords(base, records);
        expect(next).toEqual(written(base, records));
        expect(base, 'the list before it stays as it was').toEqual(before);
        lists.push(next);
        if (ask) agrees(next);
      }
      for (const list of lists) agrees(list);
    }),
  );
});

it('what was handed out does not change when more is written', () => {
  const list: readonly Thing[] = [{ id: 'a', visitId: 'u', text: 1 }];
  const own = ownedBy(list, 'u');
  withRecords(list, [
    { id: 'b', visitId: 'u', text: 2 },
    { id: 'a', visitId: 'u', text: 3 },
  ]);
  expect(own).toEqual([{ id: 'a', visitId: 'u', text: 1 }]);
});

it('of two of one id the first is found, and both belong to whom they name', () => {
  const list: readonly Thing[] = [
    { id: 'a', visitId: 'u', text: 1 },
    { id: 'a', visitId: 'v', text: 2 },
  ];
  agrees(list);
});

describe('what a look costs, in ids and owners that are read', () => {
  let reads = 0;
  const counted = (id: string, whose?: string): Thing => ({
    get id() {
      reads += 1;
      return id;
    },
    get visitId() {
      reads += 1;
      return whose;
    },
    text: 0,
  });
  const MANY = 2000;
  const FEW = 20;
  const makeMany = (): Thing[] => Array.from({ length: MANY }, (_, i) => counted(`t${i}`, `v${i % 500}`));
  const costOf = (work: () => void): number => {
    reads = 0;
    work();
    return reads;
  };

  it('is that of the whole list once', () => {
    const list = makeMany();
    expect(byId(list, 't7')).toBe(list[7]);
    expect(costOf(() => byId(list, 't1999'))).toBeLessThan(FEW);
    expect(costOf(() => ownedBy(list, 'v3'))).toBeLessThan(FEW);
    expect(costOf(() => byId(list, 'none'))).toBeLessThan(FEW);
  });

  it('is what was written, in the list that follows: a new record, another in place of one', () => {
    const list = makeMany();
    byId(list, 't7');
    const added = counted('new', 'v3');
    const changed = counted('t3', 'v3');
    const cost = costOf(() => {
      const next = withRecords(withRecords(list, [added]), [changed]);
      expect(byId(next, 'new')).toBe(added);
      expect(ownedBy(next, 'v3')).toEqual([changed, list[503], list[1003], list[1503], added]);
    });
    expect(cost).toBeLessThan(200);
  });

  it('is nothing where nothing is written, and the list stays the same one', () => {
    const list = makeMany();
    expect(costOf(() => expect(withRecords(list, [])).toBe(list))).toBe(0);
  });

  it('is what was written of records that are nobody’s, too', () => {
    const list = Array.from({ length: MANY }, (_, i) => counted(`t${i}`));
    byId(list, 't7');
    const [added, changed] = [counted('new'), counted('t3')];
    const cost = costOf(() => {
      const next = withRecords(withRecords(list, [added]), [changed]);
      expect([byId(next, 'new'), byId(next, 't3'), byId(next, 't4')]).toEqual([added, changed, list[4]]);
    });
    expect(cost).toBeLessThan(200);
  });

  it('is that of a new list where a record went over to another owner', () => {
    const list = makeMany();
    const over = counted('t3', 'v4');
    const next = withRecords(list, [over]);
    expect(ownedBy(next, 'v3')).toEqual([list[503], list[1003], list[1503]]);
    expect(ownedBy(next, 'v4').slice(0, 2)).toEqual([over, list[4]]);
  });
});
