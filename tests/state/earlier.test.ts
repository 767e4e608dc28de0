/** Which visits before one teach of its car: those that were opened before it, are not deleted, and have two readings. */
import { beforeEach, expect, it } from 'vitest';
import { earlierVisits, visitsThatTeach } from '../../app/state/earlier.ts';
import { questionOf } from '../../app/state/planning.ts';
import { records } from '../../app/state/records.ts';
import { visitView } from '../../app/state/visits.ts';
import { car, reading } from '../store/records.ts';

const at = (day: number): string => `2026-03-${String(day).padStart(2, '0')}T08:00:00.000Z`;
const visit = (id: string, day: number) => ({ id, carId: car.id, opened: at(day) });
const read = (id: string, visitId: string, day: number, hour: number) => ({
  ...{ ...reading, id, visitId, at: at(day).replace('T08', `T${hour}`) },
});
const two = (visitId: string, day: number) => [
  read(`${visitId}-a`, visitId, day, 10),
  read(`${visitId}-b`, visitId, day, 11),
];

beforeEach(() => {
  records.value = {
    ...{ drafts: [], preferences: [], moves: [] },
    cars: [car],
    visits: [visit('first', 1), visit('once', 2), visit('second', 3), visit('now', 4), visit('later', 5)],
    readings: [
      ...two('first', 1),
      read('once-a', 'once', 2, 10),
      ...two('second', 3),
      read('now-a', 'now', 4, 10),
      ...two('later', 5),
    ],
  };
});
const view = () => visitView(records.value, 'now')!;
const ids = () => earlierVisits(view()).map(({ id }) => id);

it('are those before it with two readings, oldest first, and no later one', () => {
  expect(ids()).toEqual(['first', 'second']);
  expect(visitsThatTeach(car).map(({ id }) => id)).toEqual(['first', 'second', 'later']);
  expect(earlierVisits(view())).toBe(earlierVisits(view()));
});

it('go with every question about the visit, which comes last', () => {
  const { file } = questionOf(view(), view().rounds[0]!);
  expect(file.visits?.map(({ id }) => id)).toEqual(['first', 'second', 'now']);
  expect(file.visits?.[0]?.rounds.map(({ id }) => id)).toEqual(['first-a', 'first-b']);
});

it('are none that was deleted', () => {
  const gone = { ...visit('first', 1), deleted: [{ at: at(6), knew: 2 }] };
  records.value = { ...records.value, visits: [gone, ...records.value.visits.slice(1)] };
  expect(ids()).toEqual(['second']);
});
