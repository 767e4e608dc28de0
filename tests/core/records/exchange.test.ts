import { describe, expect, it, test } from 'vitest';
import type { Visit } from '../../../core/contract.ts';
import { validateCarFile } from '../../../core/records/car-file.ts';
import { fromCarFile, toCarFile, UNDATED } from '../../../core/records/exchange.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { carFile, carFileNames } from './fixture.ts';

const BASE = carFile('tarn-gt.json');
const now = '2024-12-01T08:00:00Z';

describe('records and car files', () => {
  test.each(carFileNames)('%s comes back from records as it was', (name) => {
    const file = carFile(name);
    let made = 0;
    const records = fromCarFile(file, { now, makeId: () => `made-${++made}` });
    expect(made).toBe(0);
    const back = toCarFile(records.car, records.visits, records.readings, records.moves);
    const withMoves = (file.visits ?? []).map((visit) => ({
      ...visit,
      rounds: visit.rounds.map((round) => ({ ...round, moved: round.moved ?? [] })),
    }));
    expect(back).toEqual({ ...file, visits: withMoves });
    expect(validateCarFile(back)).toEqual(back);
  });

  it('keep the steering ratio, how far the wheel stood off, the ride heights, and what front toe is against', () => {
    const rideHeights = { LF: 385, RR: -12.7 };
    const reading = { LF: { toe: 0.1 }, toeReference: 'thrust-line', steeringWheel: -3.5, rideHeights } as const;
    const rounds = [{ id: 'r', at: now, reading, settings: {}, moved: [] }];
    const visits: Visit[] = [{ id: 'v', carId: BASE.car.id, opened: now, rounds }];
    const file = validateCarFile({ ...BASE, car: { ...BASE.car, steeringRatio: 15.5 }, visits });
    const records = fromCarFile(file, { now, makeId: () => 'x' });
    const back = toCarFile(records.car, records.visits, records.readings, records.moves);
    expect(back.car.steeringRatio).toBe(15.5);
    expect(back.visits).toEqual(visits);
    expect(mergeCarFiles(file, back).file).toEqual(file);
  });

  it('gives ids and times to a file that was written by hand', () => {
    const visits: Visit[] = [
      {
        id: 'v',
        carId: BASE.car.id,
        opened: '2024-01-01',
        rounds: [{ reading: {}, settings: {}, moved: [{ corner: 'LF', adjuster: 'tie-rod', from: 0, to: 1 }] }],
      },
    ];
    let made = 0;
    const { readings, moves, car } = fromCarFile({ ...BASE, visits }, { now, makeId: () => `made-${++made}` });
    expect(readings).toEqual([{ id: 'made-1', visitId: 'v', at: '2024-01-01', reading: {}, settings: {}, typed: {} }]);
    expect(moves).toMatchObject([{ id: 'made-2', visitId: 'v', readingId: 'made-1', outcome: 'done' }]);
    expect(car).toMatchObject({ id: BASE.car.id, changed: UNDATED, spec: BASE.spec });
  });

  it('are in the order of their times in the file, whatever order the records come in', () => {
    const time = (day: number) => `2024-01-0${day}T10:00:00Z`;
    const visit = (day: number) => ({ id: `v${day}`, carId: BASE.car.id, opened: time(day) });
    const reading = (day: number, of: string) => ({
      ...{ id: `r${day}`, visitId: of, at: time(day), reading: {}, settings: {}, typed: {} },
    });
    const move = (day: number) => ({
      ...{ id: `m${day}`, visitId: 'v1', readingId: 'r2', at: time(day), corner: 'LF' as const, adjuster: 'tie-rod' },
      ...{ from: 0, to: day, outcome: 'done' as const },
    });
    const { visits = [] } = toCarFile(
      { car: BASE.car, spec: {} },
      [visit(3), visit(1), visit(2)],
      [reading(4, 'v1'), reading(2, 'v1'), reading(3, 'v1'), reading(5, 'v2')],
      [move(7), move(5), move(6)],
    );
    expect(visits.map(({ id }) => id)).toEqual(['v1', 'v2', 'v3']);
    expect(visits.map(({ rounds }) => rounds.map(({ id }) => id))).toEqual([['r2', 'r3', 'r4'], ['r5'], []]);
    expect(visits[0]?.rounds.map(({ moved }) => moved?.map(({ id }) => id))).toEqual([['m5', 'm6', 'm7'], [], []]);
  });

  it('passes over the records of other cars', () => {
    const { car, visits, readings, moves } = fromCarFile(BASE, { now, makeId: () => 'x' });
    const strange = { ...visits[0], id: 'other', carId: 'other', opened: now };
    expect(toCarFile(car, [...visits, strange], readings, moves).visits).toHaveLength(1);
  });
});
