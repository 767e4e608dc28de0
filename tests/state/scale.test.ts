/** What is looked at grows with what is asked, not with what is kept: counted, not timed. */
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { carsInOrder, found, readNames } from '../../app/state/car-list.ts';
import { carState } from '../../app/state/car-state.ts';
import { lastPacks } from '../../app/state/packs.ts';
import { keep, type Records, records } from '../../app/state/records.ts';
import { lastSettings, openVisit, ownRecords, visitsOf, visitView } from '../../app/state/visits.ts';
import type { MoveRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { carId, makeShop, minute, visitId } from '../tools/shop.ts';

const CARS = 60;
const plain = makeShop({ cars: CARS, visits: 4, open: 5 });

/** Ids of the records that anything was read of. */
const touched = new Set<string>();

function watched<T extends { readonly id: string }>(list: readonly T[]): readonly T[] {
  return list.map(
    (record) =>
      new Proxy(record, {
        get(target, key) {
          touched.add(target.id);
          return Reflect.get(target, key);
        },
      }),
  );
}
const shop: Records = {
  ...plain,
  cars: watched(plain.cars),
  visits: watched(plain.visits),
  readings: watched(plain.readings),
  moves: watched(plain.moves),
};

/** All that belongs to a car, found by a look along everything. */
function ofCar(id: string): Set<string> {
  const visits = plain.visits.filter((one) => one.carId === id).map((one) => one.id);
  const theirs = [...plain.readings, ...plain.moves].filter((one) => visits.includes(one.visitId));
  return new Set([id, ...visits, ...theirs.map((one) => one.id)]);
}
function onlyOf(id: string): void {
  const own = ofCar(id);
  expect([...touched].filter((one) => !own.has(one))).toEqual([]);
  expect(touched.size, 'the proxies count').toBeGreaterThan(0);
}

beforeEach(() => {
  records.value = shop;
  // Once for all that is kept: what belongs to whom.
  for (const { id } of plain.cars) visitsOf(shop, id);
  visitView(shop, visitId(0, 0));
  carsInOrder(shop);
  touched.clear();
});

describe('a car among many', () => {
  const asks: Record<string, (all: Records, id: string) => unknown> = {
    'its open visit': openVisit,
    'its visits': visitsOf,
    'where its adjusters stand': lastSettings,
    'what is in its packs': lastPacks,
    'its own records': ownRecords,
    'a visit of it': (all) => visitView(all, visitId(7, 2)),
    'its row': (all, id) => carState(all, all.cars.find((_, n) => plain.cars[n]?.id === id) as never),
  };
  it.each(Object.entries(asks))('%s is found without a look at another', (_, ask) => {
    ask(shop, carId(7));
    onlyOf(carId(7));
  });
});

describe('a write', () => {
  const visit = visitId(3, 3);
  const reading: ReadingRecord = { ...(plain.readings[0] as ReadingRecord), id: 'new-reading', visitId: visit };
  const move: MoveRecord = { ...(plain.moves[0] as MoveRecord), id: 'new-move', visitId: visit, readingId: reading.id };

  it('looks at nothing but what it writes, and the next question knows of it', () => {
    keep(['readings', { ...reading, at: minute(9e6) }], ['moves', { ...move, at: minute(9e6 + 1) }]);
    const last = visitView(records.value, visit)?.rounds.at(-1);
    expect(last?.record.id).toBe('new-reading');
    expect(last?.moves.map(({ id }) => id)).toEqual(['new-move']);
    carState(records.value, records.value.cars[3] as never);
    onlyOf(carId(3));
  });

  it('leaves the lists that it has nothing for the very same ones', () => {
    keep(['drafts', { id: 'reading:x', texts: {}, changed: minute(1) }]);
    const { drafts, ...others } = records.value;
    for (const [name, list] of Object.entries(others)) expect(list, name).toBe(shop[name as keyof Records]);
    expect(drafts).toHaveLength(1);
    expect([...touched]).toEqual([]);
  });

  it('a visit that is closed is written in its place', () => {
    const open = openVisit(shop, carId(2));
    const record = plain.visits.find(({ id }) => id === open?.id) as VisitRecord;
    keep(['visits', { ...record, closed: minute(9e6) }]);
    expect(openVisit(records.value, carId(2))).toBeUndefined();
    expect(records.value.visits.map(({ id }) => id)).toEqual(plain.visits.map(({ id }) => id));
  });
});

describe('the list of cars', () => {
  it('has those on the rack first, then the newest edit', () => {
    const order = carsInOrder(shop).map(({ id }) => id);
    const newest = plain.cars.map(({ id }) => id).reverse();
    const onRack = newest.filter((id) => plain.visits.some((one) => one.carId === id && !one.closed));
    expect(onRack).toHaveLength(5);
    expect(order).toEqual([...onRack, ...newest.filter((id) => !onRack.includes(id))]);
  });

  it('is searched by names that were read once', () => {
    const order = carsInOrder(shop);
    readNames(order);
    expect(touched.size, 'the names of all').toBe(CARS);
    touched.clear();
    for (const words of ['b', 'be', 'bench17', 'TARN estate 17', 'nothing']) found(order, words);
    expect([...touched]).toEqual([]);
    expect(found(order, 'bench17').map(({ id }) => id)).toEqual([carId(17)]);
    expect(found(order, 'nothing')).toEqual([]);
  });
});
