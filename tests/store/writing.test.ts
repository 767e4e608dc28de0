/** The writer by itself: what it asks of the database and when, with time and faults in the test's hand. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Canary, ClearedError } from '../../app/store/canary.ts';
import type { Connection } from '../../app/store/connection.ts';
import type { Transaction } from '../../app/store/schema.ts';
import { type Change, createWriter } from '../../app/store/writer.ts';
import { fakeLocks } from './locks.ts';
import { draft } from './records.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const change = (id: string): Change => ({ store: 'drafts', id, record: draft(id, '1') });
/** All that is due by now, and what follows from it. */
const settled = () => vi.advanceTimersByTimeAsync(0);

function phone(ready: () => Promise<unknown> = async () => undefined) {
  /** The ids that each transaction asked for. */
  const tried: string[][] = [];
  const is = { fault: undefined as Error | undefined, slow: undefined as Promise<void> | undefined };
  const connection = {
    async withStore<T>(_: unknown, __: unknown, work: (transaction: Transaction<'readwrite'>) => Promise<T>) {
      const ids: string[] = [];
      tried.push(ids);
      const store = { put: async ({ id }: { id: string }) => ids.push(id), delete: async (id: string) => ids.push(id) };
      const done = await work({ objectStore: () => store, commit: () => undefined } as never);
      await is.slow;
      if (is.fault) throw is.fault;
      return done;
    },
  };
  const found = { mark: undefined, isEmpty: false };
  const canary = {
    ...{ find: async () => found, counted: async () => undefined, uncounted: () => undefined },
    count: async () => ({ mark: { database: 'd', writes: 1 }, put: async () => undefined }),
  };
  const mend = vi.fn<(seen: ClearedError | undefined) => Promise<void>>(async () => undefined);
  const written: string[][] = [];
  const writer = createWriter({
    connection: connection as unknown as Connection,
    canary: canary as unknown as Canary,
    ...{ mend, ready },
    written: (changes) => written.push(changes.map(({ id }) => id)),
  });
  /** What was said, and whether it was true. */
  const states: string[] = [];
  writer.state.subscribe((state) => {
    states.push(state === 'saved' && writer.waiting().length > 0 ? 'not true' : state);
  });
  return { writer, tried, written, states, is, mend };
}
/** One that has not written what it was given, as the phone has no room; its next try is a second away. */
async function full(...ids: string[]) {
  const all = phone();
  all.is.fault = new DOMException('so', 'QuotaExceededError');
  for (const id of ids) void all.writer.write([change(id)]);
  await settled();
  expect(all.writer.state.value).toBe('not-saved');
  return all;
}

describe('what cannot be written', () => {
  it('is tried again after 1 s, each time after twice as long, up to 30 s; from 1 s again once it could be', async () => {
    const { writer, tried, is } = await full('a');
    for (const pause of [1, 2, 4, 8, 16, 30, 30]) {
      const before = tried.length;
      await vi.advanceTimersByTimeAsync(pause * 1000 - 1);
      expect(tried.length, `not before ${pause} s`).toBe(before);
      await vi.advanceTimersByTimeAsync(1);
      expect(tried.length, `after ${pause} s`).toBe(before + 1);
    }
    const fault = is.fault;
    is.fault = undefined;
    await vi.advanceTimersByTimeAsync(30_000);
    expect([writer.state.value, writer.message.value]).toEqual(['saved', '']);
    is.fault = fault;
    void writer.write([change('b')]);
    await settled();
    const before = tried.length;
    await vi.advanceTimersByTimeAsync(1000);
    expect(tried.length).toBe(before + 1);
  });

  it('is said until it is written, with what comes meanwhile, and then in one transaction, in its order', async () => {
    const { writer, tried, states, written, is } = await full('a');
    expect(writer.message.value).toContain('no room left');
    void writer.write([change('b'), { store: 'drafts', id: 'a' }]);
    await settled();
    expect(writer.state.value).toBe('not-saved');
    expect(writer.waiting().map(({ id }) => id)).toEqual(['a', 'b', 'a']);
    expect(writer.overlay({ drafts: [draft('c', '1')] } as never).drafts.map(({ id }) => id)).toEqual(['c', 'b']);
    is.fault = undefined;
    writer.retry();
    await settled();
    expect(tried.at(-1)).toEqual(['a', 'b', 'a']);
    expect(written).toEqual([['a', 'b', 'a']]);
    expect(states).toEqual(['saved', 'saving', 'not-saved', 'saved']);
  });

  it('is not tried any more by one that has stopped', async () => {
    const { writer, tried } = await full('a');
    writer.stop();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(tried).toHaveLength(1);
  });

  it('as the page is left is said and thrown, and tried no sooner for it', async () => {
    const { writer, tried, mend } = await full('a');
    await expect(writer.flush()).rejects.toThrow('so');
    expect(writer.state.value).toBe('not-saved');
    await settled();
    expect(tried).toHaveLength(2);
    await vi.advanceTimersByTimeAsync(1999);
    expect(tried).toHaveLength(2);
    await vi.advanceTimersByTimeAsync(1);
    expect(tried).toHaveLength(3);
    expect(mend).not.toHaveBeenCalled();
  });
});

describe('writes', () => {
  it('that come in one turn are one transaction; those that come while it is written are the next', async () => {
    const { writer, tried, written, states, is } = phone();
    let go = (): void => undefined;
    is.slow = new Promise((done) => {
      go = done;
    });
    const ended: string[] = [];
    for (const id of ['a', 'b']) void writer.write([change(id)]).then(() => ended.push(id));
    await settled();
    void writer.write([change('c')]).then(() => ended.push('c'));
    await settled();
    expect([tried, ended]).toEqual([[['a', 'b']], []]);
    is.slow = undefined;
    go();
    await settled();
    expect(tried).toEqual([['a', 'b'], ['c']]);
    expect(ended).toEqual(['a', 'b', 'c']);
    expect(written).toEqual([['a', 'b'], ['c']]);
    expect(states).toEqual(['saved', 'saving', 'saved']);
  });

  it('of nothing are done, and no transaction', async () => {
    const { writer, tried, states } = phone();
    await writer.write([]);
    await writer.flush();
    expect([tried, states]).toEqual([[], ['saved']]);
  });

  it('are one tab’s at a time; as the page is left none waits for another tab', async () => {
    const locks = fakeLocks();
    vi.stubGlobal('navigator', { locks });
    let letGo = (): void => undefined;
    void locks.request('cornerwright-writer', () => new Promise<void>((done) => (letGo = done)));
    const { writer, tried } = phone();
    void writer.write([change('a')]);
    await settled();
    expect(tried).toEqual([]);
    await writer.flush();
    expect(tried).toEqual([['a']]);
    void writer.write([change('b')]);
    letGo();
    await settled();
    expect(tried.flat()).toEqual(['a', 'b']);
  });
});

describe('before the records have been loaded', () => {
  it('nothing is written, as the page is left neither', async () => {
    let load = (): void => undefined;
    const loading = new Promise<void>((done) => {
      load = done;
    });
    const { writer, tried } = phone(() => loading);
    void writer.write([change('a')]);
    const left = writer.flush();
    await settled();
    expect(tried).toEqual([]);
    load();
    await left;
    expect(tried.length).toBeGreaterThan(0);
    expect(new Set(tried.flat())).toEqual(new Set(['a']));
  });

  it('or where that failed, a page that is left waits for it once: after that it writes at once', async () => {
    const ready = vi.fn<() => Promise<void>>(async () => undefined);
    ready.mockRejectedValueOnce(new DOMException('so', 'UnknownError'));
    const { writer, tried } = phone(ready);
    void writer.write([change('a')]);
    await settled();
    expect([writer.state.value, tried]).toEqual(['not-saved', []]);
    await writer.flush();
    expect(tried).toEqual([['a']]);
    void writer.write([change('b')]);
    void writer.flush();
    expect(tried, 'before anything is awaited').toHaveLength(2);
    await settled();
  });

  it('and after, a page that is left has asked for everything before its handler ends', async () => {
    const { writer, tried, written } = phone();
    await writer.write([change('a')]);
    void writer.write([change('b')]);
    void writer.flush();
    expect(tried).toHaveLength(2);
    expect(tried[1]).toEqual(['b']);
    await settled();
    // Written by both ways, told once.
    expect(written).toEqual([['a'], ['b']]);
  });
});

describe('a database that may not be the one that was written to', () => {
  it('is looked at, and all is well: nothing was lost and nothing is said', async () => {
    const { writer, mend, states } = phone();
    writer.doubt();
    await settled();
    expect(mend.mock.calls).toEqual([[undefined]]);
    expect(states).toEqual(['saved']);
  });

  it('for certain is said at once, and is saved only when it is mended and what waits is written', async () => {
    const { writer, mend, states, tried } = phone();
    await writer.write([change('a')]);
    let mended = (): void => undefined;
    mend.mockImplementation(() => new Promise<void>((done) => (mended = done)));
    writer.doubt(new ClearedError());
    expect([writer.state.value, writer.message.value]).toEqual(['not-saved', new ClearedError().message]);
    void writer.write([change('b')]);
    await settled();
    expect(tried).toEqual([['a']]);
    // What a page that is left writes meanwhile is on the disk; what was lost is not.
    await writer.flush();
    expect(writer.state.value).toBe('not-saved');
    void writer.write([change('c')]);
    mended();
    await settled();
    expect(mend.mock.calls[0]?.[0]).toBeInstanceOf(ClearedError);
    expect(tried).toEqual([['a'], ['b'], ['c']]);
    expect(states).toEqual(['saved', 'saving', 'saved', 'not-saved', 'saved']);
    mend.mockReset();
    writer.doubt();
    await settled();
    expect(mend.mock.calls, 'what was seen is mended').toEqual([[undefined]]);
  });

  it('as a page is left is mended at once: no new try has to come', async () => {
    const { writer, mend, is, tried } = await full('a');
    is.fault = new ClearedError();
    mend.mockImplementation(async () => {
      is.fault = undefined;
    });
    await expect(writer.flush()).rejects.toThrow(ClearedError);
    await settled();
    expect(mend.mock.calls[0]?.[0]).toBeInstanceOf(ClearedError);
    expect(tried.at(-1)).toEqual(['a']);
    expect(writer.state.value).toBe('saved');
  });

  it('is mended once more where it is doubted while it is mended', async () => {
    const { writer, mend } = phone();
    mend.mockImplementationOnce(async () => writer.doubt());
    writer.doubt();
    await settled();
    expect(mend).toHaveBeenCalledTimes(2);
    expect(writer.state.value).toBe('saved');
  });

  it('by a write is mended before that is written again; a write that fails otherwise is not mended', async () => {
    const { writer, mend, is, tried } = phone();
    is.fault = new ClearedError();
    mend.mockImplementation(async () => {
      is.fault = undefined;
    });
    await writer.write([change('a')]);
    expect(tried).toEqual([['a'], ['a']]);
    expect(mend.mock.calls[0]?.[0]).toBeInstanceOf(ClearedError);
    expect(mend).toHaveBeenCalledTimes(1);
    is.fault = new DOMException('so', 'UnknownError');
    void writer.write([change('b')]);
    await settled();
    expect(mend).toHaveBeenCalledTimes(1);
  });
});
