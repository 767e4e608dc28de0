/** What two phones told differently, through the database and a file: both are there, it is said, and the order is one. */
import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../app/store/schema.ts';
import type { Store } from '../../app/store/store.ts';
import { canonical } from '../../core/records/canonical.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { chosen, edited, keptVersions, otherVersions } from '../../core/records/versions.ts';
import { marked, otherNotes } from '../../core/records/visit-facts.ts';
import { open } from './opened.ts';
import { car, inOrder, reading, storesOf } from './records.ts';

async function phone(...entries: Entry[]): Promise<Store> {
  const store = open();
  if (entries.length > 0) await store.putAll(entries);
  return store;
}
const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const renamed = (label: string, hour: number, from: CarRecord = car): CarRecord =>
  edited(from, { ...from, car: { ...from.car, label } }, at(hour));
const visit: VisitRecord = { id: 'v', carId: car.id, opened: at(8) };
const labels = (records: readonly CarRecord[]): string[] => records.map((one) => one.car.label);

/** Two phones' files in either order into an empty one: the same, and this is it. */
async function together(one: Store, other: Store) {
  const files = [await one.exportAll(), await other.exportAll()] as const;
  const [forth, back] = [await phone(), await phone()];
  await forth.restore(files[0]);
  const report = await forth.restore(files[1]);
  await back.restore(files[1]);
  await back.restore(files[0]);
  const [a, b] = [await storesOf(await forth.exportAll()), await storesOf(await back.exportAll())];
  expect(canonical(a)).toBe(canonical(b));
  const again = await forth.restore(files[0]);
  expect(again.changes).toMatchObject({ added: 0, updated: 0 });
  return { all: inOrder(await forth.load()), both: report.both };
}

describe('a car', () => {
  it('edited on both phones shows the later edit, keeps the other and says so', async () => {
    const { all, both } = await together(
      await phone(['cars', renamed('Here', 10)]),
      await phone(['cars', renamed('There', 11)]),
    );
    const [now] = all.cars as [CarRecord];
    expect(now.car.label).toBe('There');
    expect(labels(otherVersions(now))).toEqual(['Here']);
    expect(both).toEqual([{ store: 'cars', id: car.id }]);
    // What both had begun with was replaced knowingly: kept, and nothing to decide.
    expect(labels(keptVersions(now))).toEqual(['Here', car.car.label]);
  });

  it('edited on one phone is no question on the other, nor is a backup of before', async () => {
    const { all, both } = await together(await phone(['cars', car]), await phone(['cars', renamed('There', 11)]));
    expect(labels(otherVersions(all.cars[0]!))).toEqual([]);
    expect(both).toEqual([]);
  });

  it('asks until somebody has decided on one of the phones, and then on neither', async () => {
    const [here, there] = [renamed('Here', 10), renamed('There', 11)];
    const { all } = await together(await phone(['cars', here]), await phone(['cars', there]));
    const [now] = all.cars as [CarRecord];
    const decided = chosen(now, otherVersions(now)[0]!, at(12));
    expect([decided.car.label, labels(otherVersions(decided))]).toEqual(['Here', []]);
    const after = await together(await phone(['cars', decided]), await phone(['cars', there]));
    expect(after.all.cars).toEqual([decided]);
    const kept = chosen(now, now, at(12));
    expect([kept.car.label, labels(otherVersions(kept))]).toEqual(['There', []]);
    expect(labels(keptVersions(kept))).toContain('Here');
  });

  it('that is changed back is what it was, and not what was replaced', () => {
    const back = renamed(car.car.label, 12, renamed('Else', 10));
    expect([back.car.label, labels(otherVersions(back))]).toEqual([car.car.label, []]);
    expect(renamed(back.car.label, 13, back)).toBe(back);
  });

  it('edited on a phone whose clock is behind is edited all the same', () => {
    const behind = renamed('Then', 7, renamed('Now', 11));
    expect([behind.car.label, labels(otherVersions(behind))]).toEqual(['Then', []]);
  });
});

describe('a visit', () => {
  it('signed off on one phone and ticked on the other has both', async () => {
    const { all } = await together(
      await phone(['visits', marked(visit, { closed: at(10), checks: { 'left:torque': 'ok' } }, at(10))]),
      await phone(['visits', marked(visit, { checks: { pins: 'ok' } }, at(9))]),
    );
    expect(all.visits[0]).toMatchObject({ closed: at(10), checks: { 'left:torque': 'ok', pins: 'ok' } });
  });

  it('opened again on one phone stays open, and signed off after that is closed', async () => {
    const closed = marked(visit, { closed: at(10) }, at(10));
    const reopened = marked(closed, { closed: '' }, at(11));
    const { all } = await together(await phone(['visits', closed]), await phone(['visits', reopened]));
    expect(all.visits[0]).not.toHaveProperty('closed');
    const later = marked(reopened, { closed: at(12) }, at(12));
    const end = await together(await phone(['visits', all.visits[0]!]), await phone(['visits', later]));
    expect(end.all.visits[0]?.closed).toBe(at(12));
  });

  it('of before, without marks, is joined by what its fields say', async () => {
    const { all, both } = await together(
      await phone(['visits', { ...visit, checks: { joints: 'LF low' } }]),
      await phone(['visits', { ...visit, closed: at(10), checks: { joints: 'ok', pins: 'ok' } }]),
    );
    expect(all.visits[0]).toMatchObject({ closed: at(10), checks: { joints: 'ok', pins: 'ok' } });
    expect(otherNotes(all.visits[0]!, 'joints')).toEqual(['LF low']);
    expect(both).toEqual([{ store: 'visits', id: 'v' }]);
  });

  it('keeps what another phone noted while its own note is typed', () => {
    const marks = {
      'check:joints': [
        { value: 'RF', at: at(8) },
        { value: 'LF l', at: at(9) },
      ],
    };
    const typed = marked({ ...visit, checks: { joints: 'LF l' }, marks }, { checks: { joints: 'LF lo' } }, at(10));
    expect(typed.checks).toEqual({ joints: 'LF lo' });
    expect(otherNotes(typed, 'joints')).toEqual(['RF']);
    expect(typed.marks?.['check:joints']).toHaveLength(2);
  });
});

describe('a reading', () => {
  it('of one id with two contents is two readings, the same two in either order', async () => {
    const other = { ...reading, reading: {} };
    const { all, both } = await together(await phone(['readings', reading]), await phone(['readings', other]));
    const bare = all.readings.map(({ id: _, ...rest }) => rest);
    for (const { id: _, ...one } of [reading, other]) expect(bare).toContainEqual(one);
    expect(all.readings.map(({ id }) => id.split('~')[0])).toEqual([reading.id, reading.id]);
    expect(both.map(({ store }) => store)).toEqual(['readings']);
  });

  it('from a car file, which has no digits as typed, is the same reading', async () => {
    const { all } = await together(
      await phone(['readings', { ...reading, typed: {} }]),
      await phone(['readings', { ...reading, typed: { 'LF.camber': '0,5' } }]),
    );
    expect(all.readings).toEqual([{ ...reading, typed: { 'LF.camber': '0,5' } }]);
  });

  it('with the longest id that there may be still opens where it is two', async () => {
    const long = { ...reading, id: 'i'.repeat(400) };
    const { all } = await together(
      await phone(['readings', long]),
      await phone(['readings', { ...long, reading: {} }]),
    );
    expect(all.readings).toHaveLength(2);
    const to = await phone();
    expect(
      (await to.restore(await (await phone(...all.readings.map((one) => ['readings', one] as const))).exportAll()))
        .aside,
    ).toEqual([]);
  });
});
