/** A file written by hand gets ids and times; the same file always gets the same. */
import { describe, expect, it } from 'vitest';
import type { CarFile, Moved, Round, Visit } from '../../../core/contract.ts';
import { identified } from '../../../core/records/identify.ts';
import { digest, hash, under } from '../../../core/records/made-id.ts';
import { carFile } from './fixture.ts';

const BASE = carFile('tarn-gt.json');
const move: Moved = { corner: 'LF', adjuster: 'tie-rod', from: 0, to: 1 };
const visitOf = (...rounds: Round[]): Visit => ({ id: 'v', carId: BASE.car.id, opened: '2024-01-01', rounds });
const fileOf = (...rounds: Round[]): CarFile => ({ ...BASE, visits: [visitOf(...rounds)] });
const roundsOf = (file: CarFile): readonly Round[] => identified(file).visits?.[0]?.rounds ?? [];

describe('ids made from content', () => {
  it('are there for every round and move, and no two are alike', () => {
    const read = (camber: number): Round => ({ reading: { LF: { camber } }, settings: {}, moved: [move] });
    const rounds = roundsOf(fileOf(read(1), read(2)));
    const ids = rounds.flatMap(({ id, moved = [] }) => [id, ...moved.map((one) => one.id)]);
    for (const id of ids) expect(id).toMatch(/^v~[0-9a-f]{8}/);
    expect(new Set(ids).size).toBe(4);
  });

  it('are the same whenever and in whatever order of keys the file is read', () => {
    const one = fileOf({ reading: { LF: { camber: 1, toe: 0 } }, settings: {}, moved: [move] });
    const other = fileOf({ moved: [{ ...move }], settings: {}, reading: { LF: { toe: 0, camber: 1 } } });
    expect(identified(one).visits).toEqual(identified(other).visits);
    expect(identified(identified(one))).toEqual(identified(one));
  });

  it('leave what the file says as it is', () => {
    const at = '2024-01-02T10:00:00Z';
    const moved: Moved[] = [{ ...move, id: 'm', at, outcome: 'wont-move' }];
    const given = fileOf({ id: 'r', at, reading: {}, settings: {}, moved });
    expect(identified(given)).toEqual(given);
  });

  it('come with the time of the visit or the round, and a move that was done', () => {
    const [round] = roundsOf(fileOf({ reading: {}, settings: {}, moved: [move] }));
    expect(round).toMatchObject({ at: '2024-01-01', moved: [{ at: '2024-01-01', outcome: 'done' }] });
    const [timed] = roundsOf(fileOf({ at: '2024-01-05', reading: {}, settings: {}, moved: [move] }));
    expect(timed).toMatchObject({ at: '2024-01-05', moved: [{ at: '2024-01-05' }] });
  });

  it('are not made for moves that there are none of, nor visits for a file without', () => {
    expect(roundsOf(fileOf({ reading: {}, settings: {} }))[0]).not.toHaveProperty('moved');
    const { visits: _, ...bare } = BASE;
    expect(identified(bare)).toEqual({ ...bare, visits: [] });
  });
});

it('the hash is FNV-1a of 32 bits: its published test values', () => {
  // http://www.isthe.com/chongo/tech/comp/fnv: "", "a", "foobar".
  expect([hash(''), hash('a'), hash('foobar')]).toEqual(['811c9dc5', 'e40c292c', 'bf9cf968']);
});

describe('a digest', () => {
  it('is the hash and as much again, that tells apart what the hash does not', () => {
    const texts = Array.from({ length: 400 }, (_, i) => `${i}`.repeat(1 + (i % 3)));
    for (const text of texts) expect(digest(text)).toMatch(new RegExp(`^${hash(text)}[0-9a-f]{8}$`));
    expect(new Set(texts.map((text) => digest(text).slice(8))).size).toBe(new Set(texts).size);
    // A well-known pair of one FNV-1a hash, from memory.
    expect(hash('costarring')).toBe(hash('liquid'));
    expect(digest('costarring')).not.toBe(digest('liquid'));
  });
});

describe('an id under another one', () => {
  it('holds both as long as it is not too long for an id', () => {
    expect(under('visit', 'a1')).toBe('visit~a1');
    const parent = 'p'.repeat(398);
    expect(under(parent, 'a')).toBe(`${parent}~a`);
  });

  it('that would be too long is short, and still of its own parent and mark', () => {
    const parents = ['x', 'y'].map((end) => 'p'.repeat(1000) + end);
    const ids = parents.flatMap((parent) => ['a', 'b'].map((mark) => under(parent, mark)));
    expect(new Set(ids).size).toBe(4);
    for (const id of ids) {
      expect(id.length).toBeLessThanOrEqual(400);
      expect(id.startsWith('p'.repeat(200))).toBe(true);
    }
    // However often one is made under another.
    let id = 'visit';
    for (let depth = 0; depth < 60; depth++) id = under(id, digest(id));
    expect(id.length).toBeLessThanOrEqual(400);
    expect(under('p'.repeat(399), 'a')).toHaveLength(200 + 1 + 16 + 1 + 1);
  });
});
