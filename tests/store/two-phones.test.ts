/**
 * Two phones that work on the same cars and hand each other their backups: whatever they did, in whatever order and
 * however often the files come in, both hold the same in the end, and nothing of either is missing.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merge } from '../../app/store/merge.ts';
import type { StoreName } from '../../app/store/schema.ts';
import { readStores } from '../../core/records/stored-schema.ts';
import { EMPTY, histories, pieces, play, restore, text } from './histories.ts';

describe('two phones', () => {
  it('hold the same after each took the other’s file, whoever was first', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const [here, there] = [restore(first, second), restore(second, first)];
        expect(text(here)).toBe(text(there));
        const held = pieces(here);
        for (const piece of [...pieces(first), ...pieces(second)]) expect(held).toContain(piece);
      }),
      { numRuns: 1000 },
    );
  });

  it('give a third one the same in either order, and thrice is as good as once', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const once = restore(restore(EMPTY, first), second);
        expect(text(restore(restore(EMPTY, second), first))).toBe(text(once));
        for (const file of [first, second, first, once]) {
          const again = merge(once, file);
          expect(again.entries).toEqual([]);
          expect(again.counts.added + again.counts.updated).toBe(0);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('and a third with work of its own: it makes no difference which two met first', () => {
    fc.assert(
      fc.property(histories, histories, (history, other) => {
        const [a, b] = play(history);
        const [c] = play(other);
        expect(text(restore(restore(a, b), c))).toBe(text(restore(a, restore(b, c))));
      }),
      { numRuns: 1000 },
    );
  });

  it('hold only what a backup takes back', () => {
    fc.assert(
      fc.property(histories, (history) => {
        const [first, second] = play(history);
        const all = JSON.parse(JSON.stringify(restore(first, second)));
        expect(readStores(all)).toEqual({ stores: all, aside: [] });
      }),
      { numRuns: 200 },
    );
  });

  it('lose nothing of any store: each has its acts in these histories', () => {
    const [all] = fc
      .sample(histories, { numRuns: 300, seed: 1 })
      .map((history) => play(history))
      .reduce(([sum], [first, second]) => [restore(restore(sum, first), second), EMPTY], [EMPTY, EMPTY]);
    for (const store of Object.keys(EMPTY) as StoreName[]) expect(all[store].length, store).toBeGreaterThan(0);
  });
});
