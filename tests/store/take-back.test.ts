/** The undo of a restore by itself: what is changed while it is at it, and how it tells how far it is. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Connection, connect } from '../../app/store/connection.ts';
import { createTakingBack } from '../../app/store/take-back.ts';
import { markOf, type Step } from '../../app/store/undo.ts';
import { PIECE } from '../../core/records/backup-lines.ts';
import type { DraftRecord } from '../../core/records/stored.ts';
import { groundOn, NOW } from './ground.ts';
import { draft, freshName } from './records.ts';

const BROUGHT_AT = '2026-03-01T08:00:00.000Z';
let connection: Connection;
beforeEach(() => {
  connection = connect(freshName(), { blocked: () => undefined, blocking: () => undefined, cut: () => undefined });
});
afterEach(() => connection.close());

const put = (...records: DraftRecord[]) =>
  connection.withStore(['drafts'], 'readwrite', async (transaction) => {
    await Promise.all(records.map((record) => transaction.objectStore('drafts').put(record)));
  });
const here = () =>
  connection.withStore(['drafts'], 'readonly', (transaction) => transaction.objectStore('drafts').getAll());

/** A phone to which a restore brought these. @param begun called when the undo has its flag, before it writes */
async function restored(drafts: readonly DraftRecord[], begun: () => Promise<void> = async () => undefined) {
  await put(...drafts);
  const { ground, way, told } = groundOn(connection, (own) => ({
    async begin(what) {
      await own.begin(what);
      await begun();
    },
  }));
  const steps = drafts.map((record): Step => ({ store: 'drafts', id: record.id, after: markOf(record) }));
  await way.keepPiece(BROUGHT_AT, 1, drafts.length, steps);
  await way.end({ at: BROUGHT_AT, kind: 'restore' });
  return { undoing: createTakingBack(ground), way, told };
}

it('what somebody changes while it begins stays as it is, what somebody took away is gone, the rest is taken back', async () => {
  const [a, b, c] = ['a', 'b', 'c'].map((id) => draft(id, '1')) as [DraftRecord, DraftRecord, DraftRecord];
  const changed = draft('b', 'typed meanwhile');
  const { undoing, way } = await restored([a, b, c], async () => {
    await put(changed);
    await connection.withStore(['drafts'], 'readwrite', (transaction) => transaction.objectStore('drafts').delete('c'));
  });
  expect((await undoing.inspect())?.goes.map(([, { id }]) => id)).toEqual(['a', 'b', 'c']);
  expect(await undoing.undo()).toBe(true);
  expect(await here()).toEqual([changed]);
  // What it did not do is not for its own undo to take back.
  expect(await way.steps(NOW)).toEqual([{ store: 'drafts', id: 'a', before: a }]);
  expect(await undoing.what()).toBe('undo');
  await undoing.undo();
  expect(await here()).toEqual([a, changed]);
});

it('tells how far it is once a piece, and of nothing to do nothing', async () => {
  const drafts = Array.from({ length: PIECE.records }, (_, i) => draft(`d${i}`, '1'));
  const { undoing, told } = await restored(drafts);
  expect(await undoing.undo()).toBe(true);
  expect(told).toEqual([`${PIECE.records} of ${PIECE.records}`]);
  expect(await here()).toEqual([]);
});

it('there is nothing to take back where nothing was restored', async () => {
  const nothing = createTakingBack(groundOn(connection).ground);
  expect([await nothing.inspect(), await nothing.undo(), await nothing.what()]).toEqual([undefined, false, undefined]);
  const { undoing, told } = await restored([]);
  expect(await undoing.undo(), 'a restore of nothing is one').toBe(true);
  expect(told).toEqual([]);
});
