/** Whether a visit is closed, and its checks: marks with a time, of which the latest holds and none is lost. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonical } from '../../../core/records/canonical.ts';
import { type Facts, joinFacts, marked, otherNotes, toldTwice } from '../../../core/records/visit-facts.ts';

const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;

describe('a mark', () => {
  it('is a field alone where the field says it all, as in a visit of before', () => {
    expect(marked({}, { closed: at(9) }, at(9))).toEqual({ closed: at(9) });
    const plain: Facts = { closed: at(9), checks: { tyres: 'ok' } };
    for (const joined of [joinFacts(plain, {}), joinFacts({}, plain), joinFacts(plain, plain)]) {
      expect(joined).toEqual(plain);
    }
    expect(joinFacts({}, {})).toEqual({});
  });

  it('has its time where the field does not tell it', () => {
    const ticked = marked({}, { checks: { tyres: 'ok' } }, at(9));
    expect(ticked).toEqual({ checks: { tyres: 'ok' }, marks: { 'check:tyres': [{ value: 'ok', at: at(9) }] } });
    expect(marked({}, { closed: at(9) }, at(10))).toEqual({
      closed: at(9),
      marks: { closed: [{ value: at(9), at: at(10) }] },
    });
  });

  it('stands in the place of the one that was shown; what else the visit has stays', () => {
    const visit = { id: 'v', opened: at(7), closed: at(9) };
    const reopened = marked(visit, { closed: '' }, at(10));
    expect(reopened).toEqual({ id: 'v', opened: at(7), marks: { closed: [{ value: '', at: at(10) }] } });
    const again = marked(reopened, { closed: at(11) }, at(11));
    expect(again).toEqual({ ...visit, closed: at(11) });
    expect(marked({ checks: { pins: 'ok' } }, { checks: { pins: 'loose' } }, at(8))).toEqual({
      checks: { pins: 'loose' },
      marks: { 'check:pins': [{ value: 'loose', at: at(8) }] },
    });
  });

  it('that changes nothing is none, and what is not asked for is left', () => {
    const visit: Facts = marked<Facts>({ closed: at(9) }, { checks: { tyres: 'ok' } }, at(9));
    expect(marked(visit, {}, at(12))).toEqual(visit);
    expect(marked(visit, { closed: at(9), checks: { tyres: 'ok' } }, at(12))).toEqual(visit);
    expect(marked(visit, { closed: '' }, at(12)).checks).toEqual({ tyres: 'ok' });
    expect(marked(visit, { checks: { tyres: '' } }, at(12)).closed).toBe(at(9));
  });

  it('that is written after another was seen comes after it, though the clock is behind', () => {
    const seen = marked({}, { checks: { tyres: 'ok' } }, at(12));
    const after = marked(seen, { checks: { tyres: 'worn' } }, at(9));
    for (const joined of [joinFacts(seen, after), joinFacts(after, seen)]) expect(joined.checks?.tyres).toBe('worn');
  });
});

describe('two phones’ marks', () => {
  it('of which the later holds, whether it closes or opens', () => {
    const [closed, opened, again] = [
      marked({}, { closed: at(9) }, at(9)),
      marked({ closed: at(9) }, { closed: '' }, at(10)),
      marked({}, { closed: at(11) }, at(11)),
    ];
    for (const [a, b, end] of [
      [closed, opened, undefined],
      [opened, again, at(11)],
      [closed, again, at(11)],
    ] as const) {
      expect([joinFacts(a, b).closed, joinFacts(b, a).closed]).toEqual([end, end]);
    }
  });

  it('tell what another noted and what is shown does not say', () => {
    const note = (text: string, hour: number) => marked({}, { checks: { bush: text } }, at(hour));
    const both = joinFacts(note('LF low', 9), note('RF torn', 10));
    expect(both.checks).toEqual({ bush: 'RF torn' });
    expect([otherNotes(both, 'bush'), toldTwice(both)]).toEqual([['LF low'], true]);
    // A tick, a note that went further, and another check say nothing beside it.
    for (const said of [
      joinFacts(note('ok', 9), note('RF torn', 10)),
      joinFacts(note('RF', 9), note('RF torn', 10)),
      joinFacts(note('', 9), note('RF torn', 10)),
      joinFacts(note('RF torn', 9), note('RF torn', 10)),
    ]) {
      expect([otherNotes(said, 'bush'), toldTwice(said)]).toEqual([[], false]);
    }
    expect([otherNotes(both, 'tyres'), otherNotes({}, 'tyres')]).toEqual([[], []]);
    // Unticked since, all that was noted is news.
    expect(otherNotes(joinFacts(note('LF low', 9), note('', 10)), 'bush')).toEqual(['LF low']);
  });

  it('closed at different times are told twice; closed once, or opened again, are not', () => {
    const closed = (hour: number) => marked({}, { closed: at(hour) }, at(hour));
    expect(toldTwice(joinFacts(closed(9), closed(10)))).toBe(true);
    expect(toldTwice(joinFacts(closed(9), marked(closed(9), { closed: '' }, at(10))))).toBe(false);
    expect([toldTwice(closed(9)), toldTwice({})]).toEqual([false, false]);
  });

  const change = fc.record({
    what: fc.constantFrom('closed', 'tyres', 'pins'),
    value: fc.constantFrom('', 'ok', 'LF low', 'LF lower'),
    hour: fc.integer({ min: 1, max: 20 }),
  });
  const facts = fc.array(change, { maxLength: 5 }).map((all) =>
    all.reduce<Facts>((visit, { what, value, hour }) => {
      if (what !== 'closed') return marked(visit, { checks: { [what]: value } }, at(hour));
      return marked(visit, { closed: value && at(hour) }, at(hour));
    }, {}),
  );
  /** Every value by what it marks, of the fields too. */
  const values = ({ closed, checks = {}, marks = {} }: Facts): Set<string> =>
    new Set([
      ...(closed ? [`closed ${closed}`] : []),
      ...Object.entries(checks).map(([name, value]) => `check:${name} ${value}`),
      ...Object.entries(marks).flatMap(([key, list]) => list.map(({ value }) => `${key} ${value}`)),
    ]);

  it('are joined as sets are: in any order, as often as you like, and none is lost', () => {
    fc.assert(
      fc.property(facts, facts, facts, (a, b, c) => {
        const both = joinFacts(a, b);
        expect(canonical(joinFacts(b, a))).toBe(canonical(both));
        expect(canonical(joinFacts(both, b))).toBe(canonical(both));
        expect(canonical(joinFacts(a, {}))).toBe(canonical(a));
        expect(canonical(joinFacts(both, c))).toBe(canonical(joinFacts(a, joinFacts(b, c))));
        const [all, had] = [values(both), [...values(a), ...values(b)]];
        for (const value of had) expect(all).toContain(value);
        for (const value of all) expect(had).toContain(value);
      }),
    );
  });
});
