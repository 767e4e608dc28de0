import { describe, expect, it } from 'vitest';
import type { CarFile, Moved, Round, Visit } from '../../../core/contract.ts';
import { identified } from '../../../core/records/identify.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { carFile } from './fixture.ts';

const BASE = carFile('tarn-gt.json');
const OPENED = '2024-01-01T09:00:00Z';

/** As it is written by hand: no ids, no times. */
const move = (to: number): Moved => ({ corner: 'LF', adjuster: 'tie-rod', from: 0, to });
const round = (camber: number, ...moved: Moved[]): Round => ({ reading: { LF: { camber } }, settings: {}, moved });
const fileOf = (...rounds: Round[]): CarFile => {
  const visit: Visit = { id: 'v', carId: BASE.car.id, opened: OPENED, rounds };
  return { ...BASE, visits: [visit] };
};

const roundsOf = ({ visits = [] }: CarFile): readonly Round[] => visits.flatMap(({ rounds }) => rounds);
const idsOf = (file: CarFile): (string | undefined)[] => roundsOf(file).map(({ id }) => id);

describe('a file without ids', () => {
  it('gets one for every round and move, its time and its outcome', () => {
    const [one] = roundsOf(identified(fileOf(round(1, move(2)))));
    expect(one).toMatchObject({ id: expect.stringMatching(/^v~[0-9a-f]{8}$/), at: OPENED });
    const id = expect.stringMatching(new RegExp(`^${one?.id}~[0-9a-f]{8}$`));
    expect(one?.moved).toEqual([{ ...move(2), id, at: OPENED, outcome: 'done' }]);
  });

  it('keeps two of the same content as two, each under an id of its own', () => {
    const twins = identified(fileOf(round(1, move(2), move(2)), round(3), round(1, move(2), move(2))));
    const moves = roundsOf(twins).flatMap(({ moved = [] }) => moved.map(({ id }) => id));
    for (const ids of [idsOf(twins), moves]) expect(new Set(ids).size).toBe(ids.length);
    expect(idsOf(mergeCarFiles(twins, twins).file)).toHaveLength(3);
  });

  it('has the same ids each time, whatever is added to it afterwards', () => {
    const [first, second] = idsOf(identified(fileOf(round(1), round(2))));
    expect(idsOf(identified(fileOf(round(1), round(2), round(1), round(3))))).toMatchObject([
      ...[first, second, `${first}.2`],
      expect.any(String),
    ]);
    const once = identified(fileOf(round(1), round(1)));
    expect(identified(once)).toEqual(once);
  });

  it('keeps the ids that it has', () => {
    const own: Round = { ...round(1), id: 'r', at: '2024-01-01T10:00:00Z' };
    expect(idsOf(identified(fileOf(own, round(1))))).toEqual(['r', expect.stringMatching(/^v~/)]);
  });
});
