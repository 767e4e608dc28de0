/** The copy of all records that is kept beside the database before a restore, and what is this phone's own. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { besideInDatabase } from '../../app/store/beside-database.ts';
import type { Store } from '../../app/store/store.ts';
import { clear, entriesOf, onDisk, standIn } from './app.ts';
import { open } from './opened.ts';
import { draft, freshName, frozenRecords, inOrder, oneText, storesOf } from './records.ts';

beforeEach(() => {
  standIn();
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const none = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const file = await oneText({ ...none, drafts: [draft('theirs', '1')] });

/** A phone with records that has restored something, then lost its database. */
async function lost(name: string): Promise<Store> {
  const first = open(name);
  await first.putAll(entriesOf(frozenRecords));
  await first.restore(file);
  first.close();
  await clear(name);
  const store = open(name);
  await store.load();
  return store;
}

describe('the copy before a restore', () => {
  it('is put back where the browser has lost the records: all but what came after it', async () => {
    const name = freshName();
    const store = await lost(name);
    expect(store.loss.value?.kind).toBe('gone');
    const made = await store.copyMade();
    expect(made).toMatch(/^\d{4}-\d\d-\d\dT/);
    await store.putBackCopy();
    expect(await onDisk(name)).toEqual(inOrder(frozenRecords));
    expect(store.loss.value).toBeUndefined();
    expect(await store.copyMade()).toBe(made);
    // It is a restore like any other.
    await store.undoRestore();
    expect(await onDisk(name)).toEqual(none);
  });

  it('joins what was written since the loss', async () => {
    const name = freshName();
    const store = await lost(name);
    await store.put('drafts', draft('since', '2'));
    await store.putBackCopy();
    const { drafts, ...rest } = await onDisk(name);
    expect(drafts).toEqual([draft('since', '2'), ...frozenRecords.drafts].sort((a, b) => (a.id < b.id ? -1 : 1)));
    expect({ ...rest, drafts: [] }).toEqual(inOrder({ ...frozenRecords, drafts: [] }));
  });

  it('is not replaced by one of what is left, as long as the loss has not been seen', async () => {
    const name = freshName();
    const store = await lost(name);
    const made = await store.copyMade();
    await store.put('drafts', draft('since', '2'));
    await store.restore(await oneText({ ...none, drafts: [draft('another', '1')] }));
    expect(await store.copyMade()).toBe(made);
    store.lossSeen();
    await store.restore(await oneText({ ...none, drafts: [draft('one more', '1')] }));
    expect(await store.copyMade()).not.toBe(made);
  });

  it('is none of an empty phone', async () => {
    const store = open(freshName());
    await store.restore(file);
    expect(await store.copyMade()).toBeUndefined();
  });
});

describe('when a phone last saved to a file', () => {
  const told = { id: 'backup', value: { at: '2026-01-02T08:00:00.000Z' } };
  it('is its own: another phone’s backup neither brings it in nor takes it out', async () => {
    const store = open(freshName());
    await store.put('preferences', told);
    expect((await storesOf(await store.exportAll())).preferences).toEqual([]);
    const theirs = { id: 'backup', value: { at: '2026-02-02T08:00:00.000Z' } };
    const other = await oneText({ ...none, preferences: [theirs, { id: 'theme', value: 'dark' }] });
    expect((await store.inspect(other)).records.preferences).toBe(1);
    await store.restore(other);
    expect((await store.load()).preferences).toEqual([told, { id: 'theme', value: 'dark' }]);
  });
});

describe('the copy of a day', () => {
  const aDayLater = () => vi.setSystemTime(Date.now() + 21 * 3_600_000);
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['Date'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it('is put back where the browser has lost the records, without a restore before', async () => {
    const name = freshName();
    const first = open(name);
    await first.putAll(entriesOf(frozenRecords));
    await first.keepDaily();
    first.close();
    await clear(name);
    const store = open(name);
    await store.load();
    expect(store.loss.value?.kind).toBe('gone');
    await store.putBackCopy();
    expect(await onDisk(name)).toEqual(inOrder(frozenRecords));
  });

  it('is made anew a day later, and only where something was written', async () => {
    const store = open(freshName());
    await store.put('drafts', draft('a', '1'));
    await store.keepDaily();
    const made = await store.copyMade();
    await store.put('drafts', draft('a', '2'));
    await store.keepDaily();
    expect(await store.copyMade(), 'not within a day').toBe(made);
    aDayLater();
    await store.keepDaily();
    const next = await store.copyMade();
    expect(next).not.toBe(made);
    aDayLater();
    await store.keepDaily();
    expect(await store.copyMade(), 'nothing was written').toBe(next);
  });

  it('is none of what a loss has left, until that is seen; and then what was lost still stands beside it', async () => {
    const name = freshName();
    const first = open(name);
    await first.putAll(entriesOf(frozenRecords));
    await first.keepDaily();
    first.close();
    await clear(name);
    const store = open(name);
    await store.put('drafts', draft('since', '1'));
    const made = await store.copyMade();
    aDayLater();
    await store.keepDaily();
    expect(await store.copyMade()).toBe(made);
    store.lossSeen();
    await store.keepDaily();
    expect(await store.copyMade()).not.toBe(made);
    expect((await copiesOf(name)).some((text) => text.includes(frozenRecords.cars[0]?.id ?? '?'))).toBe(true);
  });
});

/** The copies that are kept, as text: here in a second database. */
async function copiesOf(name: string): Promise<readonly string[]> {
  const beside = await besideInDatabase(`${name}-beside`);
  const names = (await beside.names()).filter((one) => one.startsWith('snapshot-'));
  const files = await Promise.all(names.map((one) => beside.read(one)));
  beside.close();
  return Promise.all(files.map((file) => file?.text() ?? ''));
}
