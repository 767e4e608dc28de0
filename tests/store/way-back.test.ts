/** What is kept beside the database of a restore or an undo: where it is found again, and what of it stays. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Done, UnderWay } from '../../app/store/outside.ts';
import { markOf, type Step } from '../../app/store/undo.ts';
import { type WayBack, wayBack } from '../../app/store/way-back.ts';
import { inMemory } from './ground.ts';
import { draft } from './records.ts';

const [EARLY, LATE] = ['2026-03-01T08:00:00.000Z', '2026-03-02T08:00:00.000Z'];
const restoreAt = (at: string): UnderWay => ({ at, kind: 'restore', all: 9 });

let files: Map<string, Blob>;
/** The flag outside. */
let flag: UnderWay | undefined;
let way: WayBack;
beforeEach(() => {
  flag = undefined;
  const kept = inMemory();
  files = kept.files;
  way = wayBack(kept.beside, {
    read: () => flag,
    keep(value) {
      flag = value;
    },
  });
});

describe('what is under way', () => {
  it('is known from beside the database or from outside, whichever the browser has kept', async () => {
    expect(await way.underWay()).toBeUndefined();
    await way.begin(restoreAt(EARLY));
    expect(await way.underWay()).toEqual(restoreAt(EARLY));
    const outside = flag;
    flag = undefined;
    expect(await way.underWay(), 'beside alone').toEqual(restoreAt(EARLY));
    files.clear();
    flag = outside;
    expect(await way.underWay(), 'outside alone').toEqual(restoreAt(EARLY));
  });

  it('is nothing once it is done, though its flag comes back; a later one is', async () => {
    await way.begin(restoreAt(EARLY));
    const back = flag;
    await way.end(restoreAt(EARLY));
    expect([await way.underWay(), flag]).toEqual([undefined, undefined]);
    expect(await way.last()).toEqual({ at: EARLY, kind: 'restore' } satisfies Done);
    flag = back;
    expect(await way.underWay()).toBeUndefined();
    await way.begin(restoreAt(LATE));
    expect(await way.underWay()).toEqual(restoreAt(LATE));
  });
});

describe('the pieces', () => {
  const steps = (...ids: string[]): Step[] => ids.map((id) => ({ store: 'drafts', id, after: id }));
  const idsAt = async (at: string) => (await way.steps(at)).map(({ id }) => id);

  it('are told by their number, and how far it came with the last of them', async () => {
    expect(await way.progress(EARLY)).toEqual({ pieces: 0, through: 0 });
    await way.keepPiece(EARLY, 1, 400, steps('a', 'b'));
    await way.keepPiece(EARLY, 2, 700, steps('c'));
    await way.keepPiece(LATE, 1, 900, steps('of another'));
    expect(await way.progress(EARLY)).toEqual({ pieces: 2, through: 700 });
    expect(await idsAt(EARLY)).toEqual(['a', 'b', 'c']);
    await way.keepPiece(EARLY, 2, 700, steps('in its place'));
    expect(await idsAt(EARLY)).toEqual(['a', 'b', 'in its place']);
    // As a file is named on every system.
    for (const name of files.keys()) expect(name).toMatch(/^[\w-]+$/);
  });

  it('come in the order of their numbers, not of their digits: a record that two wrote is one step', async () => {
    const [first, second, third] = ['1', '2', '3'].map((text) => draft('a', text));
    const step = (before: typeof first, after: typeof first): Step[] => [
      { store: 'drafts', id: 'a', ...(before && { before }), ...(after && { after: markOf(after) }) },
    ];
    await way.keepPiece(EARLY, 10, 2, step(second, third));
    await way.keepPiece(EARLY, 2, 1, step(first, second));
    expect(await way.steps(EARLY)).toEqual(step(first, third));
  });

  it('of those before are of no use once one is done; its own stay, and so does all that is not theirs', async () => {
    for (const name of ['snapshot-1', 'other-step-']) files.set(name, new Blob(['{}']));
    await way.keepPiece(EARLY, 1, 1, steps('old'));
    await way.keepPiece(LATE, 1, 1, steps('own'));
    await way.end(restoreAt(LATE));
    expect(await idsAt(EARLY)).toEqual([]);
    expect(await idsAt(LATE)).toEqual(['own']);
    expect([...files.keys()].filter((name) => !name.startsWith('step-')).sort()).toEqual([
      'last',
      'other-step-',
      'snapshot-1',
    ]);
  });
});
