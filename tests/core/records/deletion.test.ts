/** A deletion is a mark: the latest holds, none is lost, and it holds only of what it knew. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Visit } from '../../../core/contract.ts';
import { canonical } from '../../../core/records/canonical.ts';
import { type Deletable, deletionOf, isDeleted } from '../../../core/records/deletion.ts';
import { broughtBack, deletedNow, joinDeletions } from '../../../core/records/deletion-marks.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { edited, joinVersions, otherVersions, type Versioned } from '../../../core/records/versions.ts';
import { type Facts, joinFacts, marked } from '../../../core/records/visit-facts.ts';
import { carFile } from './fixture.ts';

const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const NOTHING = { records: 0 };

describe('what is deleted', () => {
  it('is so until it is brought back, and can be deleted again', () => {
    const gone = deletedNow<Deletable & { readonly id: string }>({ id: 'v' }, { records: 2, latest: at(8) }, at(9));
    expect(gone).toEqual({ id: 'v', deleted: [{ at: at(9), knew: 2 }] });
    expect(isDeleted(gone, { records: 2, latest: at(8) })).toBe(true);
    const back = broughtBack(gone, at(10));
    expect([isDeleted(back, { records: 2 }), deletionOf(back)]).toEqual([false, undefined]);
    expect(isDeleted(deletedNow(back, { records: 2 }, at(11)), { records: 2 })).toBe(true);
    expect([isDeleted({}, NOTHING), isDeleted({ deleted: [] }, NOTHING)]).toEqual([false, false]);
  });

  it('comes back by itself where there is more than anybody knew who deleted it', () => {
    const gone = deletedNow({}, { records: 2, latest: at(8) }, at(9));
    // A reading of before that came in from another phone after, and a closing that was made after.
    expect(isDeleted(gone, { records: 3, latest: at(8) })).toBe(false);
    expect(isDeleted(gone, { records: 2, latest: at(10) })).toBe(false);
    // One phone knew of both, the other, later, of none: all that is there was deleted by somebody who saw it.
    const other = deletedNow({}, NOTHING, at(10));
    expect(isDeleted(joinDeletions(gone, other), { records: 2 })).toBe(true);
    // Not if it was brought back in between.
    const since = joinDeletions(broughtBack(gone, at(9)), other);
    expect(isDeleted(since, { records: 2 })).toBe(false);
  });

  it('is so at once, though the clock is behind that of what it deletes', () => {
    const gone = deletedNow({}, { records: 1, latest: at(12) }, at(9));
    expect(isDeleted(gone, { records: 1, latest: at(12) })).toBe(true);
    const back = broughtBack(gone, at(9));
    for (const joined of [joinDeletions(gone, back), joinDeletions(back, gone)]) {
      expect(isDeleted(joined, { records: 1, latest: at(12) })).toBe(false);
    }
  });

  it('is told by the latest mark, in whatever order a hand wrote them down', () => {
    const marks = [{ at: at(11), knew: 0 }, { at: at(10) }, { at: at(9), knew: 5 }];
    expect(isDeleted({ deleted: marks }, NOTHING)).toBe(true);
    expect(isDeleted({ deleted: marks }, { records: 1 })).toBe(false);
    expect(deletionOf({ deleted: marks })).toEqual({ at: at(11), knew: 0 });
  });
});

describe('beside it', () => {
  interface Named extends Versioned {
    readonly name: string;
  }
  const record: Named = { id: 'c', name: 'Marl', changed: at(7) };

  it('an edit keeps the mark, and two phones that edit and delete have no two builds', () => {
    const gone = deletedNow(record, NOTHING, at(9));
    const named = edited<Named>(record, { id: 'c', name: 'Marl estate' }, at(10));
    for (const both of [joinVersions(gone, named), joinVersions(named, gone)]) {
      expect(both).toMatchObject({ name: 'Marl estate', deleted: gone.deleted });
      expect(otherVersions(both)).toEqual([]);
      // It was edited after.
      expect(isDeleted(both, { records: 0, latest: both.changed })).toBe(false);
    }
    expect(edited(gone, { ...gone, name: 'Whin' }, at(11)).deleted).toEqual(gone.deleted);
    expect(joinVersions(gone, record).versions).toBeUndefined();
  });

  it('marks of a visit leave it, and it them', () => {
    const gone = deletedNow(marked<Facts>({}, { closed: at(8) }, at(8)), NOTHING, at(9));
    const noted = marked(gone, { checks: { pins: 'ok' } }, at(10));
    expect(noted).toMatchObject({ closed: at(8), checks: { pins: 'ok' }, deleted: gone.deleted });
    expect(joinFacts({ closed: at(8) }, gone)).toEqual({ closed: at(8), deleted: gone.deleted });
  });
});

it('two car files keep the marks of a visit, whichever is at hand', () => {
  const file = carFile('tarn-gt.json');
  const [first, ...others] = file.visits as [Visit];
  const gone = { ...file, visits: [deletedNow(first, { records: 9 }, at(9)), ...others] };
  for (const { file: both, notes } of [mergeCarFiles(file, gone), mergeCarFiles(gone, file)]) {
    expect(both.visits?.find(({ id }) => id === first.id)?.deleted).toEqual([{ at: at(9), knew: 9 }]);
    expect(notes).toEqual([]);
  }
});

it('two phones’ marks are joined as sets are, and no mark is lost or made', () => {
  const step = fc.record({
    back: fc.boolean(),
    hour: fc.integer({ min: 1, max: 20 }),
    records: fc.integer({ min: 0, max: 3 }),
  });
  const history = fc
    .array(step, { maxLength: 5 })
    .map((steps) =>
      steps.reduce<Deletable>(
        (one, { back, hour, records }) => (back ? broughtBack(one, at(hour)) : deletedNow(one, { records }, at(hour))),
        {},
      ),
    );
  const marks = ({ deleted = [] }: Deletable): string[] => deleted.map((one) => canonical(one));
  fc.assert(
    fc.property(history, history, history, (a, b, c) => {
      const both = joinDeletions(a, b);
      expect(canonical(joinDeletions(b, a))).toBe(canonical(both));
      expect(canonical(joinDeletions(both, b))).toBe(canonical(both));
      expect(canonical(joinDeletions(both, c))).toBe(canonical(joinDeletions(a, joinDeletions(b, c))));
      expect(new Set(marks(both))).toEqual(new Set([...marks(a), ...marks(b)]));
    }),
  );
});
