/** Which failures of the database are tried again on a fresh connection, and what the person who holds the phone is told. */
import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type Connection, connect } from '../../app/store/connection.ts';
import { explain, mayBeDeadConnection, StoreError } from '../../app/store/failure.ts';
import { asked } from './app.ts';
import { freshName } from './records.ts';

const opened: Connection[] = [];
function connection(name = freshName()): Connection {
  const none = () => undefined;
  const one = connect(name, { blocked: none, blocking: none, cut: none });
  opened.push(one);
  return one;
}
afterEach(() => {
  vi.restoreAllMocks();
  for (const one of opened.splice(0)) one.close();
});
/** How often it is tried. */
async function tries(error: unknown): Promise<number> {
  const work = vi.fn(async () => {
    throw error;
  });
  await expect(connection().withStore(['cars'], 'readonly', work)).rejects.toBeInstanceOf(StoreError);
  return work.mock.calls.length;
}

describe('work that fails', () => {
  // What Indexed DB 3.0 says of a request or a key that is wrong, or of a disk that is full: no connection mends it.
  it.each(['QuotaExceededError', 'VersionError', 'ConstraintError', 'DataError', 'DataCloneError'])(
    'of %s is tried once',
    async (name) => {
      expect(await tries(new DOMException('so', name))).toBe(1);
    },
  );

  it.each(['InvalidStateError', 'UnknownError', 'AbortError', 'TimeoutError'])('of %s is tried again', async (name) => {
    expect(await tries(new DOMException('so', name))).toBe(2);
  });

  it('of anything else is tried again, and what was said in words is not', async () => {
    expect(await tries(new Error('so'))).toBe(2);
    expect(await tries('so')).toBe(2);
    expect(await tries(new StoreError('In words.'))).toBe(1);
    expect(mayBeDeadConnection(new StoreError('In words.'))).toBe(false);
  });
});

describe('what is told', () => {
  it.each([
    ['QuotaExceededError', 'no room left'],
    ['VersionError', 'newer Cornerwright'],
    ['DataError', 'could not reach its records (DataError: so)'],
  ])('of %s', (name, words) => {
    const cause = new DOMException('so', name);
    const told = explain(cause);
    expect(told).toBeInstanceOf(StoreError);
    expect(told.message).toContain(words);
    expect(told.cause).toBe(cause);
  });

  it('of what has no message, of what is no error, and of what is in words already', () => {
    expect(explain(new DOMException('', 'UnknownError')).message).toContain('(UnknownError)');
    expect(explain('odd').message).toContain('(Error)');
    const own = new StoreError('In words.');
    expect(explain(own)).toBe(own);
  });
});

it('work to which the database says nothing is tried once more after 30 s, and given up after 30 more', async () => {
  const one = connection();
  const read = (work: () => Promise<unknown>) => one.withStore(['cars'], 'readonly', work);
  await read(async () => undefined);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  try {
    const work = vi.fn(() => new Promise(() => undefined));
    const ended = vi.fn();
    const waiting = read(work).catch(ended);
    await vi.advanceTimersByTimeAsync(29_999);
    expect(work).toHaveBeenCalledTimes(1);
    await vi.advanceTimersByTimeAsync(1);
    await vi.waitUntil(() => work.mock.calls.length === 2);
    expect(ended).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(30_000);
    await waiting;
    expect(ended.mock.calls).toMatchObject([
      [{ name: 'StoreError', message: expect.stringContaining('TimeoutError') }],
    ]);
    // What was answered is waited for no longer.
    expect(await read(async () => 'answer')).toBe('answer');
    expect(vi.getTimerCount()).toBe(0);
  } finally {
    vi.useRealTimers();
  }
});

/** A database that this app is too old for. */
async function newer(name: string): Promise<void> {
  (await asked(indexedDB.open(name, 99))).close();
}

it('a database that was refused is opened anew once it is another one', async () => {
  const name = freshName();
  await newer(name);
  const one = connection(name);
  const read = () => one.withStore(['cars'], 'readonly', (transaction) => transaction.objectStore('cars').getAll());
  await expect(read()).rejects.toThrow('newer Cornerwright');
  await asked(indexedDB.deleteDatabase(name));
  expect(await read()).toEqual([]);
});

it('an opening that fails late takes nothing from the one that was begun after it', async () => {
  const [name, other] = [freshName(), freshName()];
  await newer(other);
  const one = connection(name);
  const read = () => one.withStore(['cars'], 'readonly', (transaction) => transaction.objectStore('cars').getAll());
  const { open } = IDBFactory.prototype;
  const opening = vi.spyOn(IDBFactory.prototype, 'open').mockImplementationOnce(function (
    this: IDBFactory,
    _,
    version,
  ) {
    return open.call(this, other, version);
  });
  const first = read();
  one.close();
  const second = read();
  await expect(first).rejects.toThrow('newer Cornerwright');
  expect([await second, await read()]).toEqual([[], []]);
  expect(opening).toHaveBeenCalledTimes(2);
});

it('a database that would not open is opened anew the next time', async () => {
  const one = connection();
  const opening = vi.spyOn(indexedDB, 'open').mockImplementationOnce(() => {
    throw new DOMException('newer', 'VersionError');
  });
  const read = () => one.withStore(['cars'], 'readonly', (transaction) => transaction.objectStore('cars').getAll());
  await expect(read()).rejects.toThrow('newer Cornerwright');
  expect(await read()).toEqual([]);
  expect(opening).toHaveBeenCalledTimes(2);
});
