import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CarFile, Round, Visit } from '../../../core/contract.ts';
import { validateCarFile } from '../../../core/records/car-file.ts';
import { hash } from '../../../core/records/made-id.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { carFile } from './fixture.ts';

const BASE = carFile('tarn-gt.json');

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

  it('of two closings the later holds, of two openings the earlier, whichever file is at hand; both are told', () => {
    const [early, late] = ['2024-01-01T10:00:00Z', '2024-01-01T18:30:00Z'];
    const visit = (opened: string, closed?: string): CarFile => {
      const one: Visit = { id: 'v', carId: BASE.car.id, opened, rounds: [], ...(closed ? { closed } : {}) };
      return { ...BASE, visits: [one] };
    };
    const closings = [visit(early, '2024-01-02T08:00:00Z'), visit(early, '2024-01-02T17:00:00Z')] as const;
    for (const [a, b] of [closings, [closings[1], closings[0]]] as const) {
      const { file, notes } = mergeCarFiles(a, b);
      expect(file.visits?.[0]?.closed).toBe('2024-01-02T17:00:00Z');
      expect(notes.map(({ field }) => field)).toEqual(['visits.v.closed']);
    }
    const openings = [visit(early), visit(late)] as const;
    for (const [a, b] of [openings, [openings[1], openings[0]]] as const) {
      expect(mergeCarFiles(a, b).file.visits?.[0]?.opened).toBe(early);
    }
    // One that is still open on one phone has been closed on the other.
    for (const [a, b] of [
      [visit(early), closings[0]],
      [closings[0], visit(early)],
    ] as const) {
      const { file, notes } = mergeCarFiles(a, b);
      expect(file.visits?.[0]?.closed).toBe('2024-01-02T08:00:00Z');
      expect(notes).toEqual([]);
    }
  });

  it('refuses another car', () => {
    const other = { ...BASE, car: { ...BASE.car, id: 'other' } };
    expect(() => mergeCarFiles(BASE, other)).toThrow(
      'car.id: "other" is not allowed; allowed: the id of the same car, fixture-tarn-gt',
    );
  });
});

describe('the hash of a content', () => {
  // Source: the test vectors of the authors of FNV, draft-eastlake-fnv, 32 bits, FNV-1a; from memory.
  it.each([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['foobar', 'bf9cf968'],
  ])('of "%s" is %s', (text, digits) => {
    expect(hash(text)).toBe(digits);
  });
});
