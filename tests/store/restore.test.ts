/** What a restore says that it did: by the last look before it wrote, whoever else writes meanwhile. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Connection, connect } from '../../app/store/connection.ts';
import { createRestoring } from '../../app/store/restore.ts';
import type { DraftRecord } from '../../core/records/stored.ts';
import { groundOn } from './ground.ts';
import { EMPTY } from './histories.ts';
import { draft, freshName, oneText } from './records.ts';

let connection: Connection;
beforeEach(() => {
  connection = connect(freshName(), { blocked: () => undefined, blocking: () => undefined, cut: () => undefined });
});
afterEach(() => connection.close());

const put = (record: DraftRecord) =>
  connection.withStore(['drafts'], 'readwrite', async (transaction) => {
    await transaction.objectStore('drafts').put(record);
  });
const brought = draft('a', 'brought');
const file = new Blob([await oneText({ ...EMPTY, drafts: [brought] })]);

it.each([
  ['nobody', undefined, { added: 1, updated: 0, same: 0, kept: 0 }],
  [
    'another, which is older',
    { ...draft('a', 'older'), changed: '2024-01-01T00:00:00.000Z' },
    { added: 0, updated: 1 },
  ],
  // As where the connection died before it could say that the record was written.
  ['this very record', brought, { added: 1, updated: 0, same: 0, kept: 0 }],
] as const)('where meanwhile %s wrote', async (_, meanwhile, counts) => {
  let isFirst = true;
  const { ground, told, way } = groundOn(connection, (own) => ({
    async keepPiece(...piece) {
      await own.keepPiece(...piece);
      if (meanwhile && isFirst) await put(meanwhile);
      isFirst = false;
    },
  }));
  const { changes } = await createRestoring(ground).restore(file);
  expect(changes).toMatchObject(counts);
  expect(told.at(-1)).toBe('1 of 1');
  expect(await way.underWay()).toBeUndefined();
  expect((await way.last())?.kind).toBe('restore');
});
