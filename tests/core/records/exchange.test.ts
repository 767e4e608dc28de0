import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { CarFile, Round, Visit } from '../../../core/contract.ts';
import { validateCarFile } from '../../../core/records/car-file.ts';
import { fromCarFile, toCarFile } from '../../../core/records/exchange.ts';
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

const ids = ['r1', 'r2', 'r3', 'r4'];
const roundOf = fc
  .record({ id: fc.constantFrom(...ids), camber: fc.integer({ min: -2, max: 2 }) })
  .map(
    ({ id, camber }): Round => ({ id, at: `2024-01-0${id[1]}T10:00:00Z`, reading: { LF: { camber } }, settings: {} }),
  );
const visitOf = fc
  .record({
    id: fc.constantFrom('v1', 'v2'),
    rounds: fc.uniqueArray(roundOf, { selector: ({ id }) => id, maxLength: 4 }),
    closed: fc.option(fc.constantFrom('2024-02-01T00:00:00Z', '2024-02-02T00:00:00Z'), { nil: undefined }),
  })
  .map(
    ({ id, rounds, closed }): Visit => ({
      id,
      carId: BASE.car.id,
      opened: `2024-01-0${id[1]}T09:00:00Z`,
      rounds,
      ...(closed ? { closed } : {}),
    }),
  );
const fileOf = fc
  .uniqueArray(visitOf, { selector: ({ id }) => id, maxLength: 2 })
  .map((visits): CarFile => ({ ...BASE, visits: [...visits].sort((a, b) => (a.id < b.id ? -1 : 1)) }));

/** Every reading in a file. */
const readings = (file: CarFile): string[] =>
  (file.visits ?? []).flatMap(({ id, rounds }) =>
    rounds.map((round) => `${id} ${JSON.stringify(round.reading)} ${round.at}`),
  );

describe('mergeCarFiles', () => {
  it('loses no reading of either file', () => {
    fc.assert(
      fc.property(fileOf, fileOf, (a, b) => {
        const merged = readings(mergeCarFiles(a, b).file);
        for (const one of [...readings(a), ...readings(b)]) expect(merged).toContain(one);
      }),
    );
  });

  it('gives the same visits in either order', () => {
    fc.assert(
      fc.property(fileOf, fileOf, (a, b) => {
        const sorted = ({ visits = [] }: CarFile) =>
          visits.map((visit) => ({
            ...visit,
            rounds: [...visit.rounds].sort((x, y) => ((x.id ?? '') < (y.id ?? '') ? -1 : 1)),
          }));
        expect(sorted(mergeCarFiles(a, b).file)).toEqual(sorted(mergeCarFiles(b, a).file));
      }),
    );
  });

  it('changes nothing the second time', () => {
    fc.assert(
      fc.property(fileOf, fileOf, (a, b) => {
        const once = mergeCarFiles(a, b).file;
        expect(mergeCarFiles(once, b).file).toEqual(once);
        expect(mergeCarFiles(once, once)).toEqual({ file: once, notes: [] });
      }),
    );
  });

  it('keeps both of one id with two contents, and says so', () => {
    const at = '2024-01-01T10:00:00Z';
    const visit = (camber: number): Visit => ({
      id: 'v',
      carId: BASE.car.id,
      opened: at,
      rounds: [{ id: 'r', at, reading: { LF: { camber } }, settings: {} }],
    });
    const { file, notes } = mergeCarFiles({ ...BASE, visits: [visit(1)] }, { ...BASE, visits: [visit(2)] });
    expect(file.visits?.[0]?.rounds.map(({ reading }) => reading.LF?.camber)).toEqual([1, 2]);
    expect(notes).toMatchObject([{ field: 'visits.v.rounds.r', kept: { id: 'r' }, other: { id: 'r' } }]);
    expect(validateCarFile(file)).toEqual(file);
  });

  it('joins the moves of one round and keeps the car at hand', () => {
    const at = '2024-01-01T10:00:00Z';
    const visit = (id: string): Visit => ({
      id: 'v',
      carId: BASE.car.id,
      opened: at,
      rounds: [
        {
          id: 'r',
          at,
          reading: {},
          settings: {},
          moved: [{ id, at, corner: 'LF', adjuster: 'tie-rod', from: 0, to: 1 }],
        },
      ],
    });
    const other = { ...BASE, car: { ...BASE.car, label: 'Tarn GT, red' }, visits: [visit('m2')] };
    const { file, notes } = mergeCarFiles({ ...BASE, visits: [visit('m1')] }, other);
    expect(file.visits?.[0]?.rounds[0]?.moved?.map(({ id }) => id)).toEqual(['m1', 'm2']);
    expect(file.car.label).toBe(BASE.car.label);
    expect(notes).toMatchObject([{ field: 'car', other: { label: 'Tarn GT, red' } }]);
  });

  it('refuses another car', () => {
    const other = { ...BASE, car: { ...BASE.car, id: 'other' } };
    expect(() => mergeCarFiles(BASE, other)).toThrow(
      'car.id: "other" is not allowed; allowed: the id of the same car, fixture-tarn-gt',
    );
  });
});
