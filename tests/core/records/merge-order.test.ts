/** What a merged file is in order of, and what either file alone brings to it. */
import { describe, expect, it } from 'vitest';
import type { CarFile, Round, Visit } from '../../../core/contract.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { carFile } from './fixture.ts';

const BASE = carFile('tarn-gt.json');
const roundAt = (id: string, at: string | undefined, more: Partial<Round> = {}): Round => ({
  ...{ id, reading: {}, settings: {}, ...more },
  ...(at ? { at } : {}),
});
const fileWith = (opened: string, ...rounds: Round[]): CarFile => ({
  ...BASE,
  visits: [{ id: 'v', carId: BASE.car.id, opened, rounds }],
});
const roundsOf = ({ file }: ReturnType<typeof mergeCarFiles>) => file.visits?.[0]?.rounds ?? [];

describe('two files of one car', () => {
  it('takes the earlier of two openings, and says so', () => {
    const [early, late] = [fileWith('2024-01-01'), fileWith('2024-01-02')];
    for (const [a, b] of [
      [early, late],
      [late, early],
    ] as const) {
      const { file, notes } = mergeCarFiles(a, b);
      expect(file.visits?.[0]?.opened).toBe('2024-01-01');
      expect(notes.map(({ field }) => field)).toEqual(['visits.v']);
    }
  });

  it('leaves a visit open that was opened again, and closed one that was closed after that', () => {
    const [base] = fileWith('2024-01-01').visits as [Visit];
    const mark = (day: number, value: string) => ({ value, at: `2024-01-0${day}` });
    const told = (more: object): CarFile => ({ ...BASE, visits: [{ ...base, ...more }] });
    const closed = told({ closed: '2024-01-02' });
    const reopened = told({ marks: { closed: [mark(2, '2024-01-02'), mark(3, '')] } });
    const again = told({ closed: '2024-01-04' });
    for (const [a, b, end] of [
      [closed, reopened, undefined],
      [reopened, closed, undefined],
      [reopened, again, '2024-01-04'],
      [again, reopened, '2024-01-04'],
    ] as const) {
      expect(mergeCarFiles(a, b).file.visits?.[0]?.closed).toBe(end);
    }
  });

  it('keeps visits that were opened together in the order of their ids', () => {
    const visit = (id: string): Visit => ({ id, carId: BASE.car.id, opened: '2024-01-01', rounds: [] });
    const { file } = mergeCarFiles({ ...BASE, visits: [visit('c'), visit('a')] }, { ...BASE, visits: [visit('b')] });
    expect(file.visits?.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  });

  it('has rounds in the order of their times, those of one time by id; without times as they came', () => {
    const [a, b] = [
      fileWith('2024-01-01', roundAt('z', '2024-01-03'), roundAt('y', '2024-01-02')),
      fileWith('2024-01-01', roundAt('x', '2024-01-02'), roundAt('w', '2024-01-04')),
    ];
    expect(roundsOf(mergeCarFiles(a, b)).map(({ id }) => id)).toEqual(['x', 'y', 'z', 'w']);
    const [c, d] = [
      fileWith('2024-01-01', roundAt('z', undefined), roundAt('y', '2024-01-02')),
      fileWith('2024-01-01', roundAt('x', '2024-01-01')),
    ];
    expect(roundsOf(mergeCarFiles(c, d)).map(({ id }) => id)).toEqual(['z', 'y', 'x']);
  });

  it('knows a round without an id by its content', () => {
    const bare = ({ id: _, ...round }: Round): Round => round;
    const round = bare(roundAt('', '2024-01-02', { reading: { LF: { camber: 1 } } }));
    const other = bare(roundAt('', '2024-01-02', { reading: { LF: { camber: 2 } } }));
    const { file, notes } = mergeCarFiles(fileWith('2024-01-01', round), fileWith('2024-01-01', round, other));
    expect(file.visits?.[0]?.rounds).toHaveLength(2);
    expect(notes).toEqual([]);
  });

  it('takes the moves of a round from whichever file has them', () => {
    const moved = [{ id: 'm', corner: 'LF', adjuster: 'tie-rod', from: 0, to: 1 } as const];
    const [without, withMoves, none] = [{}, { moved }, { moved: [] }].map((more) =>
      fileWith('2024-01-01', roundAt('r', '2024-01-02', more)),
    ) as [CarFile, CarFile, CarFile];
    for (const [a, b] of [
      [without, withMoves],
      [withMoves, without],
      [none, withMoves],
    ] as const) {
      const merged = mergeCarFiles(a, b);
      expect(roundsOf(merged)).toEqual([{ id: 'r', at: '2024-01-02', reading: {}, settings: {}, moved }]);
      expect(merged.notes).toEqual([]);
    }
    expect(roundsOf(mergeCarFiles(without, without))[0]).not.toHaveProperty('moved');
  });

  it('has a spec where either file has one, and notes only two that differ', () => {
    const spec = { front: { camber: { low: -1, high: 1 } } };
    const { spec: _, ...bare } = BASE;
    expect(mergeCarFiles(bare, { ...bare, spec })).toMatchObject({ file: { spec }, notes: [] });
    expect(mergeCarFiles(bare, bare).file).not.toHaveProperty('spec');
    const { file, notes } = mergeCarFiles({ ...bare, spec }, { ...bare, spec: {} });
    expect(file.spec).toEqual(spec);
    expect(notes).toEqual([{ field: 'spec', kept: spec, other: {} }]);
  });
});
