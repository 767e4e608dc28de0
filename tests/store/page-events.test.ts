/** What a store does as its page is hidden, shown and left, and what the first real work asks of the browser. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { clear, onDisk, standIn } from './app.ts';
import { open } from './opened.ts';
import { car, draft, freshName, frozenRecords, reading } from './records.ts';

/** The page, which Node has not. */
class Page extends EventTarget {
  visibilityState: 'visible' | 'hidden' = 'visible';
  readonly window = new EventTarget();
  is(state: 'visible' | 'hidden'): void {
    this.visibilityState = state;
    this.dispatchEvent(new Event('visibilitychange'));
  }
  leave(): void {
    this.window.dispatchEvent(new Event('pagehide'));
  }
}

let page: Page;
let outside: Map<string, string>;
beforeEach(() => {
  page = new Page();
  outside = standIn();
  vi.stubGlobal('document', page);
  vi.stubGlobal('addEventListener', page.window.addEventListener.bind(page.window));
  vi.stubGlobal('removeEventListener', page.window.removeEventListener.bind(page.window));
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** Until this is called, no transaction of the records begins to write. */
function noRoom(name: string): () => void {
  const { put } = IDBObjectStore.prototype;
  const spy = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    if (this.transaction.db.name === name) throw new DOMException('no room', 'QuotaExceededError');
    return put.apply(this, args);
  });
  return () => spy.mockRestore();
}

/** A store whose record could not be written, on a phone that has room again; a new try of its own is a second away. */
async function waiting(name: string) {
  const store = open(name);
  await store.load();
  const room = noRoom(name);
  void store.put('drafts', draft('a', '1'));
  await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'));
  room();
  return store;
}

describe('what waits to be written', () => {
  it.each([
    ['is hidden', () => page.is('hidden')],
    ['is left', () => page.leave()],
    ['is shown again', () => page.is('visible')],
  ])('is written as the page %s', async (_, happens) => {
    const name = freshName();
    const store = await waiting(name);
    happens();
    await vi.waitFor(() => expect(store.saveState.value).toBe('saved'), { timeout: 700, interval: 5 });
    expect((await onDisk(name)).drafts).toEqual([draft('a', '1')]);
  });

  it('is the next page’s no more once the store is closed', async () => {
    const name = freshName();
    const store = await waiting(name);
    store.close();
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    page.is('hidden');
    page.leave();
    page.is('visible');
    await new Promise((done) => setTimeout(done, 1200));
    expect(transaction).not.toHaveBeenCalled();
    expect((await onDisk(name)).drafts).toEqual([]);
  });

  it('that cannot be written as the page is left is no error of the page', async () => {
    const name = freshName();
    const store = await waiting(name);
    const unhandled = vi.fn();
    process.on('unhandledRejection', unhandled);
    const room = noRoom(name);
    page.is('hidden');
    page.leave();
    await new Promise((done) => setTimeout(done, 50));
    process.off('unhandledRejection', unhandled);
    room();
    expect(unhandled).not.toHaveBeenCalled();
    expect(store.saveState.value).toBe('not-saved');
  });
});

describe('a page that is shown again', () => {
  it('looks whether the browser has cleared the records meanwhile, and writes back what the screens hold', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    await store.put('cars', car);
    store.remember(() => ({ ...frozenRecords, cars: [car] }));
    page.is('hidden');
    await clear(name);
    page.is('visible');
    await vi.waitFor(() => expect(store.loss.value?.kind).toBe('put-back'));
    expect((await onDisk(name)).cars).toEqual([car]);
  });

  it('looks at nothing that it has not read yet', async () => {
    open(freshName());
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    page.is('visible');
    await new Promise((done) => setTimeout(done, 50));
    expect(transaction).not.toHaveBeenCalled();
  });
});

describe('the browser is asked to keep the records', () => {
  const persist = vi.fn(async () => true);
  beforeEach(() => {
    persist.mockClear();
    vi.stubGlobal('navigator', { storage: { persisted: async () => false, persist } });
  });

  it('at the first real work, once', async () => {
    const store = open();
    await store.put('cars', car);
    await store.put('readings', reading);
    expect(persist).toHaveBeenCalledTimes(1);
  });

  it('not for what is half typed, for a setting, for what is thrown away, or for the made-up car', async () => {
    const store = open();
    await store.put('drafts', draft('a', '1'));
    await store.remove('drafts', 'a');
    await store.put('preferences', { id: 'theme', value: 'dark' });
    await store.put('cars', { ...car, practice: true });
    expect(persist).not.toHaveBeenCalled();
    // Among others is enough.
    await store.putAll([
      ['drafts', draft('b', '1')],
      ['cars', { ...car, id: 'real' }],
    ]);
    expect(persist).toHaveBeenCalledTimes(1);
  });
});

it('when all was last saved to a file is known outside the database, and nothing else by that name', async () => {
  const name = freshName();
  const store = open(name);
  const kept = () => outside.get(`${name}-backup`);
  await store.put('preferences', { id: 'backup', value: 'odd' });
  await store.put('preferences', { id: 'backup', value: null });
  await store.put('preferences', { id: 'theme', value: { at: '2026-01-01T08:00:00.000Z' } });
  await store.put('drafts', { ...draft('backup', '1'), value: { at: '2026-01-01T08:00:00.000Z' } } as never);
  expect(kept()).toBeUndefined();
  await store.put('preferences', { id: 'backup', value: { at: '2026-01-02T08:00:00.000Z' } });
  expect(kept()).toBe('"2026-01-02T08:00:00.000Z"');
});

it('who no longer listens is told nothing of changes behind the screens', async () => {
  const store = open();
  const [one, other] = [vi.fn(), vi.fn()];
  const end = store.onOutsideChange(one);
  store.onOutsideChange(other);
  end();
  await store.restore(await store.exportAll());
  expect([one, other].map((listener) => listener.mock.calls.length)).toEqual([0, 1]);
});
