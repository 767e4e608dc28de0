/** Which readings of the records repeat one another: those of one visit that nothing was moved between. */
import { expect, it, vi } from 'vitest';
import type { Records } from '../../app/state/records.ts';
import { repeatedReadings } from '../../app/state/repeats.ts';
import { car, reading } from '../store/records.ts';

const at = (minute: number): string => `2026-03-02T08:${String(minute).padStart(2, '0')}:00.000Z`;
const record = (id: string, minute: number, camber: number, front = 6) => ({
  ...{ ...reading, id, visitId: 'v', at: at(minute), reading: { LF: { camber } } },
  settings: { LF: { 'upper-front-pack': front } },
});
const move = (id: string, readingId: string, to: number) => ({
  ...{ id, visitId: 'v', readingId, at: at(30), corner: 'LF' as const, adjuster: 'upper-front-pack' },
  ...{ from: 6, to, outcome: 'done' as const },
});
const all = (extra: Partial<Records>): Records =>
  ({
    ...{ drafts: [], preferences: [], moves: [], readings: [] },
    ...{ cars: [car], visits: [{ id: 'v', carId: car.id, opened: at(0) }] },
    ...extra,
  }) as Records;

it('are those with the same positions and no move in between', async () => {
  const readings = [record('a', 1, 0.1), record('b', 2, 0.12), record('c', 3, 0.5, 3), record('d', 4, 0.52, 3)];
  const found = await repeatedReadings(all({ readings, moves: [move('m', 'b', 3)] }));
  expect(found.map((group) => group.map((one) => one.LF?.camber))).toEqual([
    [0.1, 0.12],
    [0.5, 0.52],
  ]);
});

it('are none where something was moved, of a correction, or of the made-up car', async () => {
  const two = [record('a', 1, 0.1), record('b', 2, 0.12)];
  expect(await repeatedReadings(all({ readings: two, moves: [move('m', 'a', 3)] }))).toEqual([]);
  expect(await repeatedReadings(all({ readings: [two[0]!, { ...two[1]!, replaces: 'a' }] }))).toEqual([]);
  expect(await repeatedReadings(all({ readings: two, cars: [{ ...car, practice: true }] }))).toEqual([]);
});

it('of a shop’s tens of thousands of visits lets fingers in between, and is given up where nobody waits for it', async () => {
  const visits = Array.from({ length: 20_000 }, (_, i) => ({ id: `v${i}`, carId: car.id, opened: at(0) }));
  const readings = visits.flatMap(({ id }) => [
    { ...record(`${id} a`, 1, 0.1), visitId: id },
    { ...record(`${id} b`, 2, 0.12), visitId: id },
  ]);
  const shop = all({ visits, readings });
  let turns = 0;
  const ticking = setInterval(() => (turns += 1));
  const found = await repeatedReadings(shop);
  expect(found).toHaveLength(visits.length);
  // Ten milliseconds of work at a time, and this is more than a few of these.
  expect(turns).toBeGreaterThan(3);
  const isOver = vi.fn(() => true);
  expect(await repeatedReadings(shop, isOver)).toEqual([]);
  expect(isOver).toHaveBeenCalledTimes(1);
  clearInterval(ticking);
});
