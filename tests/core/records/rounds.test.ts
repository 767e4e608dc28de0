import { describe, expect, it } from 'vitest';
import type { Moved, Visit } from '../../../core/contract.ts';
import { current, latestRound, latestVisit, movedOn, packsAfter, seized } from '../../../core/records/rounds.ts';

const round = (id: string, replaces?: string) => ({ id, reading: {}, settings: {}, ...(replaces ? { replaces } : {}) });
const move = (adjuster: string, to: number, more: Partial<Moved> = {}): Moved => ({
  corner: 'LF',
  adjuster,
  from: 0,
  to,
  ...more,
});
const visit = (id: string, opened: string, rounds = [round(`${id}-1`)]): Visit => ({ id, carId: 'c', opened, rounds });

describe('immutable records', () => {
  it('a correction stands in the place of what it corrects', () => {
    const ids = (records: readonly { id?: string }[]) => current(records).map(({ id }) => id);
    expect(ids([round('1'), round('2'), round('3', '1')])).toEqual(['3', '2']);
    expect(ids([round('1'), round('2', '1'), round('3', '2')])).toEqual(['3']);
    expect(ids([round('1'), round('2', 'elsewhere')])).toEqual(['1', '2']);
  });

  it('a ring of corrections ends', () => {
    expect(current([round('1'), round('2', '1'), { ...round('1', '2'), id: '1' }])).toHaveLength(1);
  });

  it('the last visit with a round counts, and its last round that holds', () => {
    const visits = [visit('new', '2024-02-02'), visit('old', '2024-01-01'), visit('empty', '2024-03-03', [])];
    expect(latestVisit(visits)?.id).toBe('new');
    expect(latestVisit([...visits].reverse())?.id).toBe('new');
    expect(latestVisit([])).toBeUndefined();
    expect(latestRound(visit('v', '2024-01-01', [round('1'), round('2'), round('3', '1')]))?.id).toBe('2');
  });

  it('of two visits that were opened together the later in the file counts', () => {
    const [one, other] = [visit('one', '2024-02-02'), visit('other', '2024-02-02')];
    const old = visit('old', '2024-01-01');
    expect(latestVisit([one, other])?.id).toBe('other');
    expect(latestVisit([other, one, old])?.id).toBe('one');
  });

  it('settings move on by what was done, a taken-back mark among it', () => {
    const moves = [
      move('a', 2, { id: 'm1' }),
      move('b', 3, { outcome: 'wont-move' }),
      move('c', 1, { outcome: 'set-to' }),
      move('a', 0, { id: 'm2', replaces: 'm1' }),
    ];
    expect(movedOn({ LF: { b: 1 } }, moves)).toEqual({ LF: { a: 0, b: 1, c: 1 } });
  });

  it('what would not move is seized until it is moved', () => {
    const stuck = {
      ...round('1'),
      moved: [move('a', 0, { outcome: 'wont-move' }), move('b', 0, { outcome: 'wont-move' })],
    };
    const freed = { ...round('2'), moved: [move('a', 1, { outcome: 'done' })] };
    expect(seized(visit('v', '2024-01-01', [stuck]))).toHaveLength(2);
    expect(seized(visit('v', '2024-01-01', [stuck, freed]))).toEqual([{ corner: 'LF', adjuster: 'b' }]);
  });
});

describe('what is in packs', () => {
  const had = [{ size: 3, count: 1 }];
  const built = [{ size: 1.5, count: 3 }];
  const packs = { LF: { a: had, b: had } };

  it('is what a move says that it was built of, and not known after a move that says nothing', () => {
    expect(packsAfter(packs, [move('a', 4.5, { shims: built }), move('b', 1)])).toEqual({ LF: { a: built } });
    expect(packsAfter({}, [move('a', 4.5, { shims: built })])).toEqual({ LF: { a: built } });
    expect(packsAfter({}, [move('a', 4.5)])).toEqual({});
    expect(
      packsAfter(packs, [move('a', 4.5, { shims: built }), move('a', 3, { from: 4.5, outcome: 'set-to' })]),
    ).toEqual({ LF: { b: had } });
  });

  it('stays where nothing was changed', () => {
    expect(packsAfter(packs, [move('a', 0), move('b', 3, { outcome: 'wont-move' })])).toEqual(packs);
    expect(packs).toEqual({ LF: { a: had, b: had } });
  });

  it('goes by corrections', () => {
    const moves = [move('a', 4.5, { id: 'm', shims: built }), move('a', 0, { id: 'n', replaces: 'm' })];
    expect(packsAfter(packs, moves)).toEqual(packs);
  });
});
