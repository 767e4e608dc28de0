/** That each start makes and deletes a database before it writes; what that is good for is shown by `torn-log.spec.ts`. */
import 'fake-indexeddb/auto';
import { afterEach, expect, it, vi } from 'vitest';
import { freshLog } from '../../app/store/fresh-log.ts';
import { asked } from './app.ts';
import { closeAll, open } from './opened.ts';
import { draft, freshName } from './records.ts';

afterEach(() => {
  vi.restoreAllMocks();
  closeAll();
});

/** What is asked of databases whose name begins with this. */
function watch(name: string): string[] {
  const asked: string[] = [];
  const { open: opens, deleteDatabase } = IDBFactory.prototype;
  const { put } = IDBObjectStore.prototype;
  const note = (what: string, of: string) => of.startsWith(name) && asked.push(`${what} ${of.slice(name.length)}`);
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, of, version) {
    note('open', of);
    return opens.call(this, of, version);
  });
  vi.spyOn(IDBFactory.prototype, 'deleteDatabase').mockImplementation(function (this: IDBFactory, of) {
    note('delete', of);
    return deleteDatabase.call(this, of);
  });
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, record, ...key) {
    note('put', this.transaction.db.name);
    return put.call(this, record, ...key);
  });
  return asked;
}

it('comes before the first write, once a start', async () => {
  const name = freshName();
  const asked = watch(name);
  const store = open(name);
  await store.put('drafts', draft('a', '1'));
  await store.put('drafts', draft('a', '2'));
  // A record and the count of writes.
  expect(asked).toEqual(['open ', 'open -log', 'delete -log', 'put ', 'put ', 'put ', 'put ']);
  expect((await indexedDB.databases()).map((one) => one.name)).not.toContain(`${name}-log`);
});

it('comes before a restore, too', async () => {
  const backup = await (async () => {
    const store = open();
    await store.put('drafts', draft('a', '1'));
    return store.exportAll();
  })();
  const name = freshName();
  const asked = watch(name);
  await open(name).restore(backup);
  expect(asked.indexOf('delete -log')).toBeGreaterThan(0);
  expect(asked.indexOf('delete -log')).toBeLessThan(asked.indexOf('put '));
});

it('is waited for two seconds where the browser does not answer, and no longer', async () => {
  const name = freshName();
  // Nobody deletes a database that another has open.
  const holder = await asked(indexedDB.open(`${name}-log`, 1));
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  try {
    const ended = vi.fn();
    void freshLog(name).then(ended);
    await vi.advanceTimersByTimeAsync(1_999);
    expect(ended).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(ended).toHaveBeenCalledTimes(1);
  } finally {
    vi.useRealTimers();
    holder.close();
  }
});

it('hinders nothing where the browser does not give it', async () => {
  const name = freshName();
  const { open: opens } = IDBFactory.prototype;
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, of, version) {
    if (of.endsWith('-log')) throw new DOMException('no room', 'QuotaExceededError');
    return opens.call(this, of, version);
  });
  const store = open(name);
  await store.put('drafts', draft('a', '1'));
  expect(store.saveState.value).toBe('saved');
});
