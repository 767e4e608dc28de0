/** One piece of a restore: what it writes over is kept first, whoever else writes meanwhile, and it is read back. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type Canary, createCanary } from '../../app/store/canary.ts';
import { type Connection, connect } from '../../app/store/connection.ts';
import { mergePiece } from '../../app/store/merge.ts';
import { outsideOf } from '../../app/store/outside.ts';
import { type Plan, writePiece } from '../../app/store/piece-writer.ts';
import { CANARY, type Transaction } from '../../app/store/schema.ts';
import type { Step } from '../../app/store/undo.ts';
import type { DraftRecord } from '../../core/records/stored.ts';
import { EMPTY } from './histories.ts';
import { draft, freshName } from './records.ts';

let connection: Connection;
let canary: Canary;
beforeEach(() => {
  const name = freshName();
  connection = connect(name, { blocked: () => undefined, blocking: () => undefined, cut: () => undefined });
  canary = createCanary(outsideOf(name));
});
afterEach(() => {
  vi.restoreAllMocks();
  connection.close();
});

const put = (record: DraftRecord) =>
  connection.withStore(['drafts', 'preferences'], 'readwrite', async (transaction) => {
    await transaction.objectStore('drafts').put(record);
  });
const found = (id: string) =>
  connection.withStore(['drafts'], 'readonly', (transaction) => transaction.objectStore('drafts').get(id));
const bring =
  (...drafts: DraftRecord[]): Plan =>
  async (transaction) =>
    (await mergePiece(transaction, { ...EMPTY, drafts })).changes;

it('keeps what it writes over before it does, and nothing of what stays as it is', async () => {
  await put(draft('same', '1'));
  await put({ ...draft('here', '1'), changed: '2024-01-01T00:00:00.000Z' });
  const before = await found('here');
  const kept: Step[][] = [];
  const piece = bring(draft('same', '1'), draft('here', '2'), draft('fresh', '3'));
  await writePiece(connection, canary, piece, async (steps) => {
    kept.push([...steps]);
    expect(await found('here')).toEqual(before);
    expect(await found('fresh')).toBeUndefined();
  });
  const after = expect.any(String);
  expect(kept).toEqual([
    [
      { store: 'drafts', id: 'here', before, after },
      { store: 'drafts', id: 'fresh', after },
    ],
  ]);
  expect((await found('here'))?.texts).toEqual({ 'LF.camber': '2' });
  expect(await found('fresh')).toEqual(draft('fresh', '3'));
});

it('does nothing and keeps nothing where nothing differs', async () => {
  await put(draft('same', '1'));
  const keep = vi.fn();
  await writePiece(connection, canary, bring(draft('same', '1')), keep);
  expect(keep).not.toHaveBeenCalled();
  const mark = await connection.withStore(['preferences'], 'readonly', (transaction) =>
    transaction.objectStore('preferences').get(CANARY),
  );
  expect(mark).toBeUndefined();
});

it('keeps what somebody else wrote meanwhile, and joins with it', async () => {
  const kept: Step[][] = [];
  const meanwhile = { ...draft('a', 'meanwhile'), changed: '2024-01-01T00:00:00.000Z' };
  await writePiece(connection, canary, bring(draft('a', 'brought')), async (steps) => {
    if (kept.length === 0) await put(meanwhile);
    kept.push([...steps]);
  });
  expect(kept.map(([step]) => step?.before)).toEqual([undefined, meanwhile]);
  const now = await found('a');
  expect(now?.texts).toEqual({ 'LF.camber': 'brought' });
  expect(now?.versions).toMatchObject([{ texts: { 'LF.camber': 'meanwhile' } }]);
});

it.each([
  ['cleared the database', (transaction: Transaction<'readwrite'>) => transaction.objectStore('preferences').clear()],
  [
    'written',
    (transaction: Transaction<'readwrite'>) =>
      transaction.objectStore('preferences').put({ id: CANARY, value: { database: 'another', writes: 9 } }),
  ],
])('holds nothing against it where somebody has %s since', async (_, change) => {
  const since: Canary = {
    ...canary,
    async counted(mark) {
      await canary.counted(mark);
      await connection.withStore(['drafts', 'preferences'], 'readwrite', async (transaction) => {
        await Promise.all([transaction.objectStore('drafts').clear(), change(transaction)]);
      });
    },
  };
  await writePiece(connection, since, bring(draft('a', '1')), async () => undefined);
  expect(await found('a')).toBeUndefined();
});

it('says so where what was written is not there afterwards', async () => {
  const own = IDBObjectStore.prototype.put;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, record, ...rest) {
    return own.call(this, this.name === 'drafts' ? { ...record, texts: {} } : record, ...rest);
  });
  const writing = writePiece(connection, canary, bring(draft('a', '1')), async () => undefined);
  await expect(writing).rejects.toThrow('drafts a did not hold');
});
