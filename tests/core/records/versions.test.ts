/** Records that are edited, as sets of versions: what is shown, what is kept, and that a join is a union of sets. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../../core/records/canonical.ts';
import { byTime } from '../../../core/records/order.ts';
import {
  chosen,
  edited as editedOf,
  joinVersions,
  keptVersions,
  otherVersions,
  sameVersion,
  type Versioned,
} from '../../../core/records/versions.ts';

interface Named extends Versioned {
  readonly text: string;
}
const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const named = (text: string, hour: number): Named => ({ id: 'x', text, changed: at(hour) });
const fresh = (text: string): Named => ({ id: 'x', text });
const edited = (before: Named | undefined, next: Named, now: string): Named => editedOf<Named>(before, next, now);
const texts = (records: readonly Named[]): string[] => records.map(({ text }) => text);

/** A record after acts of one phone: edits, and choices among what stands. */
const acts = fc.array(
  fc.record({
    text: fc.constantFrom('a', 'b', 'c', 'd'),
    hour: fc.integer({ min: 1, max: 20 }),
    chooses: fc.boolean(),
  }),
  { minLength: 1, maxLength: 5 },
);
const records = acts.map((all) =>
  all.reduce<Named | undefined>((record, { text, hour, chooses }) => {
    if (record && chooses) return chosen(record, named(text, hour), at(hour));
    return edited(record, fresh(text), at(hour));
  }, undefined),
) as fc.Arbitrary<Named>;
/** Every content that a record holds. */
const contents = (record: Named): Set<string> => new Set(texts([record, ...keptVersions(record)]));

describe('an edit', () => {
  it('shows what was written and keeps what was there, which is no question any more', () => {
    const second = edited(edited(undefined, fresh('one'), at(8)), fresh('two'), at(9));
    expect(second).toMatchObject({ id: 'x', text: 'two', changed: at(9) });
    expect(keptVersions(second)).toEqual([named('one', 8)]);
    expect(otherVersions(second)).toEqual([]);
    const third = edited(second, fresh('three'), at(10));
    expect(texts(keptVersions(third))).toEqual(['two', 'one']);
  });

  it('begins with nothing beside what is shown', () => {
    expect(edited(undefined, fresh('one'), at(8))).toEqual(named('one', 8));
    expect([keptVersions(named('one', 8)), otherVersions(named('one', 8))]).toEqual([[], []]);
  });

  it('that changes nothing is none', () => {
    const record = edited(named('one', 8), fresh('two'), at(9));
    expect(edited(record, { ...record }, at(10))).toBe(record);
    expect(edited(record, fresh('two'), at(10))).toBe(record);
  });

  it('on a phone whose clock is behind is shown all the same', () => {
    const record = edited(named('one', 12), fresh('two'), at(9));
    expect(record.text).toBe('two');
    expect(byTime(record.changed, at(12))).toBe(1);
    expect(otherVersions(record)).toEqual([]);
  });

  it('back to what it was is that, kept once', () => {
    const back = edited(edited(named('one', 8), fresh('two'), at(9)), fresh('one'), at(10));
    expect(back).toMatchObject({ text: 'one', changed: at(10) });
    expect(texts(keptVersions(back))).toEqual(['two']);
    expect(otherVersions(back)).toEqual([]);
  });
});

describe('two phones’ records of one id', () => {
  const begun = named('begun', 8);
  const [here, there] = [edited(begun, fresh('here'), at(10)), edited(begun, fresh('there'), at(11))];

  it('show the later edit; the other is a question, and what both had begun with is none', () => {
    for (const joined of [joinVersions(here, there), joinVersions(there, here)]) {
      expect(joined.text).toBe('there');
      expect(otherVersions(joined)).toEqual([named('here', 10)]);
      expect(texts(keptVersions(joined))).toEqual(['here', 'begun']);
    }
  });

  it('ask no more once somebody has chosen, whichever it was, and lose nothing by it', () => {
    const joined = joinVersions(here, there);
    for (const [choice, other] of [
      ['here', 'there'],
      ['there', 'here'],
    ] as const) {
      const decided = chosen(joined, [joined, ...otherVersions(joined)].find(({ text }) => text === choice)!, at(12));
      expect([decided.text, otherVersions(decided)]).toEqual([choice, []]);
      expect(texts(keptVersions(decided))).toContain(other);
      // The other phone, that has not decided, learns it and does not bring the question back.
      for (const told of [joinVersions(decided, there), joinVersions(here, decided)]) {
        expect([told.text, otherVersions(told)]).toEqual([choice, []]);
      }
    }
  });

  it('edited further on one of them is a question of the edit, and not of what it replaced', () => {
    const further = edited(here, fresh('further'), at(12));
    expect(texts(otherVersions(joinVersions(further, there)))).toEqual(['there']);
    expect(texts(otherVersions(joinVersions(there, further)))).toEqual(['there']);
  });

  it('of one content at two times are one, at the later', () => {
    const joined = joinVersions(named('one', 8), named('one', 11));
    expect(joined).toEqual(named('one', 11));
    expect(joinVersions(named('one', 11), named('one', 8))).toEqual(joined);
    expect([sameVersion(named('one', 8), named('one', 11)), sameVersion(here, there)]).toEqual([true, false]);
    // No time is before all.
    expect(joinVersions(named('one', 8), fresh('two')).text).toBe('one');
  });

  it('of which a file says that all were replaced still show one', () => {
    const record = edited(named('one', 8), fresh('two'), at(9));
    const [past] = Object.values(record.past ?? {});
    expect(past).toBe(at(8));
    const late = Object.fromEntries(
      Object.keys(edited(record, fresh('three'), at(10)).past ?? {}).map((key) => [key, at(20)]),
    );
    const all = joinVersions({ ...record, past: late }, record);
    expect(all.text).toBe('two');
    expect(texts(otherVersions(all))).toEqual(['one']);
  });

  it('are joined as sets are: in any order, as often as you like, and nothing is lost', () => {
    fc.assert(
      fc.property(records, records, records, (a, b, c) => {
        const both = joinVersions(a, b);
        expect(canonical(joinVersions(b, a))).toBe(canonical(both));
        expect(canonical(joinVersions(both, b))).toBe(canonical(both));
        expect(canonical(joinVersions(both, c))).toBe(canonical(joinVersions(a, joinVersions(b, c))));
        expect(contents(both)).toEqual(new Set([...contents(a), ...contents(b)]));
        // Each content once, and what is asked about is kept.
        expect(contents(both).size).toBe(1 + keptVersions(both).length);
        for (const { text } of otherVersions(both)) expect(texts(keptVersions(both))).toContain(text);
      }),
    );
  });

  it('joined with itself a record is what it was', () => {
    fc.assert(
      fc.property(records, (record) => {
        expect(canonical(joinVersions(record, record))).toBe(canonical(record));
        expect(otherVersions(record)).toEqual([]);
      }),
    );
  });
});
