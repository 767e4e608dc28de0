import { describe, expect, it, test } from 'vitest';
import type { Visit } from '../../../core/contract.ts';
import { validateCarFile } from '../../../core/records/car-file.ts';
import { fromCarFile, toCarFile } from '../../../core/records/exchange.ts';
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
    expect(car).toMatchObject({ id: BASE.car.id, changed: now, spec: BASE.spec });
  });

  it('passes over the records of other cars', () => {
    const { car, visits, readings, moves } = fromCarFile(BASE, { now, makeId: () => 'x' });
    const strange = { ...visits[0], id: 'other', carId: 'other', opened: now };
    expect(toCarFile(car, [...visits, strange], readings, moves).visits).toHaveLength(1);
  });
});
