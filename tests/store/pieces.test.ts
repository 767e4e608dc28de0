/**
 * Everything that the app can write, through files and piece by piece: into an empty phone it is equal, twice it changes
 * nothing, two phones' files give the same in either order, and pieces of any size give what the whole gives.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exportFile, memorySlices } from '../../app/store/export.ts';
import { merge, mergePiece } from '../../app/store/merge.ts';
import { readBackup } from '../../app/store/read-backup.ts';
import type { Entry, Everything } from '../../app/store/schema.ts';
import { STORES } from '../../app/store/schema.ts';
import { canonical } from '../../core/records/canonical.ts';
import { shortOrLong } from '../tools/seeds.ts';
import { EMPTY, histories, pieces, play, put, restore, text } from './histories.ts';
import { transactionOn } from './transaction.ts';

async function mergeInto(all: Everything, piece: Everything) {
  const merged = await mergePiece(transactionOn(all), piece);
  const next = merged.changes.reduce((now, { store, record }) => put(now, [store, record] as Entry), all);
  return { ...merged, next };
}

const made = '2026-01-02T08:00:00Z';
const fileOf = (all: Everything): Promise<Blob> => exportFile(memorySlices(all), made);
async function restoreFile(all: Everything, file: Blob): Promise<Everything> {
  let now = all;
  for await (const { records, aside } of readBackup(file)) {
    expect(aside).toEqual([]);
    now = (await mergeInto(now, records)).next;
  }
  return now;
}

describe('a random history', () => {
  it('through a file into an empty phone is equal, and once more changes nothing', { timeout: 120_000 }, () =>
    fc.assert(
      fc.asyncProperty(histories, async (history) => {
        const [first, second] = play(history);
        for (const all of [first, restore(first, second)]) {
          const file = await fileOf(all);
          const there = await restoreFile(EMPTY, file);
          expect(text(there)).toBe(text(all));
          expect(await restoreFile(there, file)).toBe(there);
        }
      }),
      { numRuns: shortOrLong(80, 1000) },
    ),
  );

  it(
    'of two phones gives the same in either order of their files, nothing of either missing',
    { timeout: 120_000 },
    () =>
      fc.assert(
        fc.asyncProperty(histories, async (history) => {
          const phones = play(history);
          const [one, other] = [await fileOf(phones[0]), await fileOf(phones[1])];
          const forth = await restoreFile(await restoreFile(EMPTY, one), other);
          const back = await restoreFile(await restoreFile(EMPTY, other), one);
          expect(text(forth)).toBe(text(back));
          // Where the two told one id differently, the other content lies under an id of its own by now.
          for (const file of [one, other]) expect(await restoreFile(forth, file)).toBe(forth);
          const held = pieces(forth);
          for (const piece of [...pieces(phones[0]), ...pieces(phones[1])]) expect(held).toContain(piece);
        }),
        { numRuns: shortOrLong(80, 1000) },
      ),
  );
});

describe('pieces of any size, in any order of the phones', () => {
  /** The records of a file, cut where it may fall. */
  const cut = (all: Everything, size: number): Everything[] => {
    const entries = STORES.flatMap((store) => all[store].map((record) => [store, record] as Entry));
    const count = Math.max(1, Math.ceil(entries.length / size));
    return Array.from({ length: count }, (_, n) => entries.slice(n * size, (n + 1) * size).reduce(put, EMPTY));
  };

  it('give what the whole gives: the same records, the same counts, the same told to be kept both', () =>
    fc.assert(
      fc.asyncProperty(histories, fc.integer({ min: 1, max: 6 }), fc.boolean(), async (history, size, turned) => {
        const [first, second] = play(history);
        const here = turned ? restore(first, second) : first;
        const file = second;
        const whole = merge(here, file);
        let now = here;
        const counts = { added: 0, updated: 0, same: 0, kept: 0 };
        const both = new Set<string>();
        for (const piece of cut(file, size)) {
          const merged = await mergeInto(now, piece);
          now = merged.next;
          for (const [name, count] of Object.entries(merged.counts)) counts[name as keyof typeof counts] += count;
          for (const one of merged.both) both.add(canonical(one));
        }
        expect(text(now)).toBe(text(restore(here, file)));
        expect(counts).toEqual(whole.counts);
        expect([...both].sort()).toEqual(whole.both.map(canonical).sort());
      }),
      { numRuns: shortOrLong(60, 1000) },
    ));
});
