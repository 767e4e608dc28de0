/**
 * What is deleted is as if it had never been here: all that the screens derive is that of a phone without it; and nothing of
 * it goes from the records. What another phone did without knowing brings it back.
 */
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { pastOf } from '../../app/screens/history/past.ts';
import { carsInOrder, found } from '../../app/state/car-list.ts';
import { carState } from '../../app/state/car-state.ts';
import { bringBackCar, bringBackVisit, deleteCar, deleteVisit, goneFrom } from '../../app/state/deleting.ts';
import { openSince } from '../../app/state/forgotten.ts';
import { deletedUnawares, isGone } from '../../app/state/gone.ts';
import { lastPacks } from '../../app/state/packs.ts';
import { keepDraft, type Records, records } from '../../app/state/records.ts';
import { lastHeights, lastSettings, openVisit, visitsOf } from '../../app/state/visits.ts';
import { merge } from '../../app/store/merge.ts';
import { planRequest } from '../../core/index.ts';
import { toCarFile } from '../../core/records/exchange.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { modulesUnder } from '../boundary/modules.ts';
import { put } from '../store/histories.ts';
import { carId, makeShop, minute, visitId } from '../tools/shop.ts';

/** Every visit leaves the car otherwise. */
const plain = makeShop({ cars: 4, visits: 3, open: 2 });
const shop: Records = {
  ...plain,
  readings: plain.readings.map((one, n) => ({
    ...one,
    reading: { ...one.reading, rideHeights: { LF: 300 + n } },
    settings: { LF: { mark: n } },
    packs: { LF: { pack: [{ size: 1, count: n + 1 }] } },
  })),
};

beforeEach(() => {
  records.value = shop;
});

const without = (all: Records, visit: string): Records => ({
  ...all,
  visits: all.visits.filter(({ id }) => id !== visit),
  readings: all.readings.filter(({ visitId }) => visitId !== visit),
  moves: all.moves.filter(({ visitId }) => visitId !== visit),
});

/** All that a screen may show of the cars. */
function shown(all: Records) {
  const cars = carsInOrder(all);
  return {
    order: cars.map(({ id }) => id),
    search: found(cars, 'tarn').map(({ id }) => id),
    cars: cars.map((car) => {
      const { past, lines, ...history } = pastOf(all, car);
      return {
        row: carState(all, car),
        open: openVisit(all, car.id)?.id,
        since: visitsOf(all, car.id).map((visit) => openSince(all, visit)),
        visits: visitsOf(all, car.id).map(({ id }) => id),
        settings: lastSettings(all, car.id),
        packs: lastPacks(all, car.id),
        heights: lastHeights(all, car.id)?.reading.rideHeights,
        history: { ...history, of: past.map((one) => [one.day, ...lines.map((line) => one.left(line))]) },
      };
    }),
  };
}

describe('a deleted visit', () => {
  it.each([0, 1, 2])('leaves all as it would be without it: visit %i', (n) => {
    const id = visitId(1, n);
    const before = shown(shop);
    deleteVisit({ id });
    expect(shown(records.value)).toEqual(shown(without(shop, id)));
    expect(shown(records.value)).not.toEqual(before);
    expect(records.value.readings).toBe(shop.readings);
    expect(goneFrom(records.value).map(({ visit }) => visit?.id)).toEqual([id]);
    bringBackVisit({ id });
    expect(shown(records.value)).toEqual(before);
    expect(goneFrom(records.value)).toEqual([]);
  });

  it('is planned from by nobody whom the car file is given to', () => {
    const of = (all: Records) => toCarFile(all.cars[2] as CarRecord, all.visits, all.readings, all.moves);
    const id = visitId(2, 2);
    const last = (all: Records) => planRequest({ ...of(all), spec: {} }).settings;
    const bare = { ...shop, readings: plain.readings, moves: [] };
    const told = bare.readings.map((one) =>
      one.visitId === id ? { ...one, settings: { LF: { [front]: 3 }, RF: { [front]: 3 } } } : one,
    );
    records.value = { ...bare, readings: told };
    const before = last(records.value);
    deleteVisit({ id });
    expect(last(records.value)).toEqual(last(without(records.value, id)));
    expect(last(records.value)).not.toEqual(before);
    expect(of(records.value).visits?.map((visit) => visit.deleted?.length ?? 0)).toEqual([0, 0, 1]);
  });
});
const front = shop.cars[0]?.car.front.adjusters[0]?.id ?? '';

describe('a deleted car', () => {
  it('is in no list and no search, with all its visits on file', () => {
    const id = carId(1);
    const before = shown(shop);
    deleteCar({ id });
    expect(carsInOrder(records.value).map((car) => car.id)).toEqual(before.order.filter((one) => one !== id));
    expect(found(carsInOrder(records.value), 'bench1')).toEqual([]);
    expect(records.value.visits).toBe(shop.visits);
    expect(goneFrom(records.value)).toMatchObject([{ car: { id } }]);
    bringBackCar({ id });
    expect(shown(records.value)).toEqual(before);
  });

  it('keeps a visit of its own deleted when it comes back', () => {
    deleteVisit({ id: visitId(1, 0) });
    deleteCar({ id: carId(1) });
    expect(goneFrom(records.value).map(({ visit }) => visit?.id)).toEqual([undefined]);
    bringBackCar({ id: carId(1) });
    expect(visitsOf(records.value, carId(1))).toHaveLength(2);
  });
});

describe('two phones', () => {
  const carOf = (all: Records) => all.cars.find(({ id }) => id === carId(1)) as CarRecord;
  const visitOf = (all: Records) => all.visits.find(({ id }) => id === visitId(1, 2)) as VisitRecord;
  const joined = (a: Records, b: Records) => merge(a, b).entries.reduce(put, a);
  /** What the one has that deleted, and the other that worked on. */
  function apart(remove: () => void, work: (all: Records) => Records): readonly Records[] {
    remove();
    const deleted = records.value;
    const worked = work(shop);
    return [joined(deleted, worked), joined(worked, deleted)];
  }
  const reading = { ...shop.readings[0]!, id: 'more', visitId: visitId(1, 2), at: minute(1) };
  const works: Record<string, (all: Records) => Records> = {
    'another reading, even if of before': (all) => put(all, ['readings', reading]),
    'signed off since': (all) =>
      put(all, ['visits', marked(visitOf(all), { closed: '2099-01-01T08:00:00Z' }, '2099-01-01T08:00:00Z')]),
    'half a reading typed since': (all) =>
      put(all, ['drafts', { id: `reading:${visitId(1, 2)}`, texts: {}, changed: '2099-01-01T08:00:00Z' }]),
  };

  it.each(Object.entries(works))('one deletes a visit, the other has %s: it is here, and said', (_, work) => {
    for (const all of apart(() => deleteVisit({ id: visitId(1, 2) }), work)) {
      expect(isGone(all, visitOf(all))).toBe(false);
      expect(deletedUnawares(all, visitOf(all))).toBeDefined();
      // Who sees all of it may delete it, or keep it.
      records.value = all;
      deleteVisit(visitOf(all));
      expect(isGone(records.value, visitOf(records.value))).toBe(true);
      records.value = all;
      bringBackVisit(visitOf(all));
      expect(deletedUnawares(records.value, visitOf(records.value))).toBeUndefined();
      expect(isGone(records.value, visitOf(records.value))).toBe(false);
    }
  });

  it.each([
    ...Object.entries(works),
    [
      'another visit',
      (all: Records) => put(all, ['visits', { id: 'new', carId: carId(1), opened: minute(1) }]),
    ] as const,
    [
      'another plate since',
      (all: Records) => put(all, ['cars', { ...carOf(all), changed: '2099-01-01T08:00:00Z' }]),
    ] as const,
  ])('one deletes a car, the other has %s: it is here, and said', (_, work) => {
    for (const all of apart(() => deleteCar({ id: carId(1) }), work)) {
      expect(isGone(all, carOf(all))).toBe(false);
      expect(carsInOrder(all).map(({ id }) => id)).toContain(carId(1));
      expect(deletedUnawares(all, carOf(all))).toBeDefined();
    }
  });

  it('one deletes and the other does nothing: it is deleted on both', () => {
    const [a, b] = apart(
      () => deleteCar({ id: carId(1) }),
      (all) => all,
    ) as [Records, Records];
    for (const all of [a, b]) {
      expect(isGone(all, carOf(all))).toBe(true);
      expect(deletedUnawares(all, carOf(all))).toBeUndefined();
    }
  });
});

it('a list of cars follows work that brings one back', () => {
  deleteCar({ id: carId(1) });
  expect(carsInOrder(records.value).map(({ id }) => id)).not.toContain(carId(1));
  vi.useFakeTimers({ now: Date.now() + 60_000 });
  // Half a reading that another window has under its thumb.
  keepDraft(`reading:${visitId(1, 2)}`, { 'LF.camber': '1' }, undefined);
  vi.useRealTimers();
  expect(carsInOrder(records.value).map(({ id }) => id)).toContain(carId(1));
});

it('whoever goes through cars or visits asks those who know which are deleted', () => {
  // Those that have to see all: what is deleted, what came in, what was read; see app/state/gone.ts.
  const seeAll = [
    ...['gone', 'deleting', 'car-list', 'visits', 'records'].map((name) => `app/state/${name}.ts`),
    ...['app/screens/settings/storage.tsx', 'app/screens/build/import-file.ts'],
  ];
  const asks =
    /ownedBy\(\s*[\w.]*\bvisits\b|\b(?:all|records\.value)\.(?:cars|visits)\.(?:map|filter|flatMap|find|forEach|some|every|reduce)\b/;
  const others = ['state', 'screens', 'shell', 'practice']
    .flatMap((folder) => modulesUnder(`app/${folder}`))
    .filter(({ path, source }) => asks.test(source) && !seeAll.includes(path))
    .map(({ path }) => path);
  expect(others).toEqual([]);
});
