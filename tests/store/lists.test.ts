/** What a list knows of itself agrees with a look along it, whatever was written and whoever still holds an older list. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
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
