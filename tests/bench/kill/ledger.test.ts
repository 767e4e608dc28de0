/** The ledger of `npm run bench:kill`: what it calls lost, so that the bench can fail. */
import { describe, expect, it } from 'vitest';
import { Ledger } from './ledger.ts';
import type { Noted, Screen } from './notes.ts';

const screen: Screen = { hash: '#/', title: 'A', step: '', cells: [], active: '', made: 0 };
const draft = (text: string, minute: number) =>
  JSON.stringify({ id: 'a', texts: { text }, changed: `2026-01-01T00:0${minute}:00.000Z` });
const found = (text?: string) => new Map(text ? [['drafts a', text]] : []);
const asked = (text?: string, bulk = false): Noted => ({
  kind: 'asked',
  bulk,
  changes: [text ? ['drafts', 'a', text] : ['drafts', 'a']],
});
const shown = (state: string, said = ''): Noted => ({ kind: 'screen', state, said, screen });

function noted(...notes: Noted[]): Ledger {
  const ledger = new Ledger();
  for (const note of notes) ledger.note(note);
  return ledger;
}

describe('what a screen called saved', () => {
  const ledger = noted(asked(draft('1', 1)), shown('saving'), shown('saved'));
  it('is kept as it was, or as something newer', () => {
    expect(ledger.lost(found(draft('1', 1)))).toEqual([]);
    expect(ledger.lost(found(draft('12', 2)))).toEqual([]);
    expect(ledger.lost(found(draft('12', 1))), 'keys of one millisecond').toEqual([]);
    expect(ledger.claims).toBe(1);
  });
  it('is lost where it is gone, or older', () => {
    expect(ledger.lost(found())).toEqual([expect.stringMatching(/^drafts a of/)]);
    expect(ledger.lost(found(draft('', 0)))).toEqual([expect.stringMatching(/^drafts a of/)]);
  });
  it('and what was asked for since may both be there, and nothing else', () => {
    const ledger = noted(asked(draft('1', 1)), shown('saved'), asked(draft('12', 2)), asked(), shown('saving'));
    for (const text of [draft('1', 1), draft('12', 2), undefined]) expect(ledger.lost(found(text))).toEqual([]);
    expect(ledger.lost(found(draft('', 0)))).toEqual([expect.stringMatching(/^drafts a of/)]);
    expect(ledger.screens).toHaveLength(2);
  });
  it('thrown away is not to come back', () => {
    const ledger = noted(asked(draft('1', 1)), shown('saved'), asked(), shown('saved'));
    expect(ledger.lost(found())).toEqual([]);
    expect(ledger.lost(found(draft('1', 1)))).toEqual([expect.stringMatching(/^drafts a of/)]);
  });
  it('is nothing that the start after the kill shows, until it begins anew', () => {
    const ledger = noted(asked(draft('1', 1)), shown('saved'), asked(draft('12', 2)), shown('saving'));
    ledger.end();
    ledger.note(shown('saved'));
    expect(ledger.lost(found(draft('1', 1)))).toEqual([]);
    ledger.begin(found(draft('1', 1)));
    for (const note of [asked(draft('12', 2)), shown('saved')]) ledger.note(note);
    expect(ledger.lost(found(draft('1', 1)))).toHaveLength(1);
  });
  it('is nothing yet while it is only asked for', () => {
    expect(noted(asked(draft('1', 1)), shown('saving'), shown('not saved')).lost(found())).toEqual([]);
  });
});

describe('a restore', () => {
  it('is called saved when that is said, whatever the save state says meanwhile', () => {
    const ledger = noted(asked(draft('1', 1), true), shown('saved'));
    expect(ledger.lost(found())).toEqual([]);
    expect(ledger.bulk(found())).toEqual({ there: 0, all: 1 });
    ledger.note(shown('saved', 'Restored.'));
    expect(ledger.lost(found())).toEqual([expect.stringMatching(/^drafts a of/)]);
    expect(ledger.bulk(found())).toEqual({ there: 0, all: 0 });
  });
});
