/** What is in memory written back into a database that was cleared: what is absent, in pieces, and its count at the end. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type Connection, connect } from '../../app/store/connection.ts';
import { putBack } from '../../app/store/put-back.ts';
import { CANARY } from '../../app/store/schema.ts';
import { EMPTY } from './histories.ts';
import { car, draft, freshName, frozenRecords } from './records.ts';

let connection: Connection;
beforeEach(() => {
  connection = connect(freshName(), { blocked: () => undefined, blocking: () => undefined, cut: () => undefined });
});
afterEach(() => connection.close());

const mark = () => ({ database: 'before', writes: 7 });
const put = (store: 'drafts' | 'preferences', record: { readonly id: string }) =>
  connection.withStore([store], 'readwrite', async (transaction) => {
    await transaction.objectStore(store).put(record as never);
  });
const all = (store: 'cars' | 'drafts' | 'preferences') =>
  connection.withStore([store], 'readonly', (transaction) => transaction.objectStore(store).getAll());

it('into an empty database all of it, which goes on counting from where it was', async () => {
  const [written, now] = await putBack(connection, frozenRecords, mark);
  expect(written).toBe(Object.values(frozenRecords).flat().length);
  expect(now).toEqual({ database: 'before', writes: 8 });
  expect(await all('cars')).toEqual([car]);
  expect(await all('preferences')).toContainEqual({ id: CANARY, value: now });
});

it('what another tab has written since stays as it is there, and its count goes on', async () => {
  await put('drafts', draft('a', 'typed since'));
  await put('preferences', { id: CANARY, value: { database: 'since', writes: 3 } } as never);
  const drafts = [draft('a', 'before'), draft('b', 'before')];
  const [written, now] = await putBack(connection, { ...EMPTY, drafts }, mark);
  expect([written, now]).toEqual([1, { database: 'since', writes: 4 }]);
  expect(await all('drafts')).toEqual([draft('a', 'typed since'), draft('b', 'before')]);
  expect(await all('preferences')).toEqual([{ id: CANARY, value: now }]);
});

it('no more than 500 records are one transaction, and the count comes last: cut off, it is found again', async () => {
  const counts: number[] = [];
  const counted = {
    ...connection,
    async withStore(...[names, mode, work]: Parameters<Connection['withStore']>) {
      const put = vi.spyOn(IDBObjectStore.prototype, 'put');
      const done = await connection.withStore(names, mode, work);
      counts.push(put.mock.calls.length);
      put.mockRestore();
      return done;
    },
  } as Connection;
  const drafts = Array.from({ length: 501 }, (_, i) => draft(`d${i}`, '1'));
  expect((await putBack(counted, { ...EMPTY, drafts }, mark))[0]).toBe(501);
  expect(counts).toEqual([500, 1, 1]);
});
