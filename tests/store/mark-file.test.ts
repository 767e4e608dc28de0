/** The count of writes in a file beside the database: what localStorage, which comes late to the disk, does not know yet. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { markFile } from '../../app/store/mark-file.ts';
import type { Mark } from '../../app/store/outside.ts';
import { CANARY } from '../../app/store/schema.ts';
import { clear, standIn } from './app.ts';
import { closeAll, open } from './opened.ts';
import { draft, freshName } from './records.ts';

/** The page's own files, as far as they are asked for here: what is written counts once it is closed. */
const files = new Map<string, string>();
let slow: Promise<void> | undefined;
class FileHandle {
  constructor(readonly name: string) {}
  async createWritable() {
    let text = '';
    return {
      write: async (more: string) => {
        text += more;
      },
      close: async () => {
        await slow;
        files.set(this.name, text);
      },
    };
  }
  async getFile() {
    return { text: async () => files.get(this.name) ?? '' };
  }
}
const root = { getFileHandle: async (name: string) => new FileHandle(name) };

let local: Map<string, string>;
beforeEach(() => {
  files.clear();
  slow = undefined;
  local = standIn();
  vi.stubGlobal('FileSystemFileHandle', FileHandle);
  vi.stubGlobal('navigator', { storage: { getDirectory: async () => root, persist: async () => true } });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  closeAll();
});

const isMark = (value: unknown): value is Mark => typeof value === 'object' && value !== null && 'writes' in value;
const mark = (writes: number): Mark => ({ database: 'a', writes });

describe('the file', () => {
  it('gives back what was kept last, and nothing of what was never kept or is no count', async () => {
    const kept = markFile('m', isMark);
    expect(await kept.read()).toBeUndefined();
    await kept.keep(mark(1));
    await kept.keep(mark(2));
    expect(await markFile('m', isMark).read()).toEqual(mark(2));
    await kept.keep(undefined);
    expect(await kept.read()).toBeUndefined();
    files.set('m', '{"wri');
    expect(await kept.read()).toBeUndefined();
  });
  it('of counts that wait writes the newest, and ends for each when it is kept', async () => {
    const kept = markFile('m', isMark);
    let go = (): void => undefined;
    slow = new Promise((done) => {
      go = done;
    });
    const ended: number[] = [];
    const all = [1, 2, 3].map((n) => kept.keep(mark(n)).then(() => ended.push(n)));
    await new Promise((done) => setTimeout(done, 5));
    expect([ended, files.get('m')]).toEqual([[], undefined]);
    go();
    await Promise.all(all);
    expect(JSON.parse(files.get('m') ?? '')).toEqual(mark(3));
  });
});

it.each([
  ['no files', undefined],
  ['files that no page can write to', class {}],
])('in a browser that has %s nothing is asked for, and nothing waited for', async (_, handle) => {
  vi.stubGlobal('FileSystemFileHandle', handle);
  const getDirectory = vi.fn(async () => root);
  vi.stubGlobal('navigator', { storage: { getDirectory } });
  const kept = markFile('m', isMark);
  await kept.keep(mark(1));
  expect(await kept.read()).toBeUndefined();
  expect([getDirectory.mock.calls, files.size]).toEqual([[], 0]);
});

it('a file is made where there is none, once; one that cannot be had is a check less and no failure', async () => {
  const getFileHandle = vi.fn(async (name: string, { create = false } = {}) => {
    if (!create) throw new DOMException('not there', 'NotFoundError');
    return new FileHandle(name);
  });
  vi.stubGlobal('navigator', { storage: { getDirectory: async () => ({ getFileHandle }) } });
  const kept = markFile('m', isMark);
  await kept.keep(mark(1));
  await kept.keep(mark(2));
  expect(await kept.read()).toEqual(mark(2));
  expect(getFileHandle).toHaveBeenCalledTimes(1);
  vi.stubGlobal('navigator', {
    storage: { getDirectory: () => Promise.reject(new DOMException('no', 'SecurityError')) },
  });
  const none = markFile('n', isMark);
  await none.keep(mark(1));
  expect(await none.read()).toBeUndefined();
});

it('a file that does not come to its end holds up no write for longer than a second', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  try {
    slow = new Promise(() => undefined);
    const ended = vi.fn();
    void markFile('m', isMark).keep(mark(1)).then(ended);
    await vi.advanceTimersByTimeAsync(900);
    expect(ended).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(200);
    expect(ended).toHaveBeenCalledTimes(1);
  } finally {
    vi.useRealTimers();
  }
});

describe('a start', () => {
  const saved = async (name: string, ...texts: string[]) => {
    const store = open(name);
    for (const text of texts) await store.put('drafts', draft('a', text));
    store.close();
  };
  /** As localStorage is when its last seconds are lost. */
  const forgetLocal = () => local.clear();

  it('says what is missing of what was saved in the last seconds', async () => {
    const name = freshName();
    await saved(name, '1', '2', '3');
    await setCount(name, (value) => ({ ...value, writes: value.writes - 2 }));
    forgetLocal();
    const store = open(name);
    await store.load();
    await vi.waitFor(() => expect(store.loss.value).toEqual({ kind: 'behind', writes: 2 }));
    store.lossSeen();
    store.close();
    const next = open(name);
    await next.put('drafts', draft('a', '4'));
    expect(next.loss.value, 'said once').toBeUndefined();
  });
  it('that could not look is begun anew with the next write: nothing is written before it has looked', async () => {
    const name = freshName();
    await saved(name, '1', '2');
    await setCount(name, (value) => ({ ...value, writes: value.writes - 1 }));
    forgetLocal();
    const store = open(name);
    await store.load();
    const { transaction } = IDBDatabase.prototype;
    const broken = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (
      this: IDBDatabase,
      ...args
    ) {
      if (this.name === name && args[1] === 'readonly') throw new DOMException('not now', 'DataError');
      return transaction.apply(this, args);
    });
    const written = store.put('drafts', draft('b', '1'));
    await vi.waitFor(() => expect(store.saveMessage.value).toContain('DataError'), { interval: 2 });
    expect(store.loss.value).toBeUndefined();
    broken.mockRestore();
    store.retry();
    await written;
    expect(store.loss.value).toEqual({ kind: 'behind', writes: 1 });
  });
  it('says that all is gone, once', async () => {
    const name = freshName();
    await saved(name, '1');
    await clear(name);
    forgetLocal();
    const store = open(name);
    await store.load();
    await vi.waitFor(() => expect(store.loss.value).toEqual({ kind: 'gone' }));
    store.lossSeen();
    store.close();
    const next = open(name);
    await next.put('drafts', draft('a', '4'));
    expect(next.loss.value).toBeUndefined();
  });
  it('says nothing where all is there', async () => {
    const name = freshName();
    await saved(name, '1', '2');
    const store = open(name);
    await store.put('drafts', draft('a', '3'));
    expect(store.loss.value).toBeUndefined();
    expect(JSON.parse(files.get(`${name}-writes`) ?? '')).toMatchObject({ writes: 3 });
  });
});

async function setCount(name: string, change: (value: Mark) => Mark): Promise<void> {
  const database = await new Promise<IDBDatabase>((done) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => done(request.result);
  });
  const store = database.transaction('preferences', 'readwrite').objectStore('preferences');
  await new Promise((done) => {
    const request = store.get(CANARY);
    request.onsuccess = () => {
      store.put({ id: CANARY, value: change(request.result.value) }).onsuccess = done;
    };
  });
  database.close();
}
