/** Everything as a file: all of it once, in pieces of their size, and what waits to be written as it will be. */
import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it } from 'vitest';
import { type Connection, connect } from '../../app/store/connection.ts';
import { databaseSlices, exportFile, memorySlices } from '../../app/store/export.ts';
import { readBackup } from '../../app/store/read-backup.ts';
import { type Everything, STORES } from '../../app/store/schema.ts';
import type { Change } from '../../app/store/writer.ts';
import { PIECE } from '../../core/records/backup-lines.ts';
import { backupLines, whole } from '../tools/backup-text.ts';
import { entriesOf } from './app.ts';
import { draft, freshName, frozenRecords, inOrder, storesOf } from './records.ts';

const MADE = '2026-01-02T08:00:00.000Z';
const NONE: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const textOf = async (all: Everything): Promise<string> => (await exportFile(memorySlices(all), MADE)).text();
/** How many records stand between one checksum and the next. */
const piecesIn = (text: string): number[] =>
  text
    .split(/^\{.*\}\n/m)
    .map((piece) => piece.split('\n').length - 1)
    .filter((count) => count > 0);

describe('a file of what the screens hold', () => {
  it('is the one that is made of all records at once', async () => {
    const drafts = Array.from({ length: PIECE.records + 3 }, (_, i) => draft(`d${i}`, '1'));
    for (const all of [NONE, { ...NONE, drafts }, { ...NONE, drafts: drafts.slice(3) }]) {
      expect(await textOf(all)).toBe(`${(await backupLines(all, MADE, PIECE.records)).join('\n')}\n`);
    }
    expect(await storesOf(await exportFile(memorySlices(frozenRecords), MADE))).toEqual(frozenRecords);
  });

  it('says of what kind it is', async () => {
    expect((await exportFile(memorySlices(NONE), MADE)).type).toBe('application/json');
  });

  it('has its pieces full at so many records', async () => {
    const drafts = Array.from({ length: 2 * PIECE.records + 1 }, (_, i) => draft(`d${i}`, '1'));
    expect(piecesIn(await textOf({ ...NONE, drafts }))).toEqual([PIECE.records, PIECE.records, 1]);
    expect(piecesIn(await textOf({ ...NONE, drafts: drafts.slice(0, PIECE.records) }))).toEqual([PIECE.records]);
  });

  it('has its pieces full at so many characters as well, counted anew in each', async () => {
    const third = 'x'.repeat(PIECE.characters / 3);
    const drafts = Array.from({ length: 7 }, (_, i) => draft(`d${i}`, third));
    expect(piecesIn(await textOf({ ...NONE, drafts }))).toEqual([3, 3, 1]);
  });

  it('leaves out what is this phone’s own among the preferences, and of no other store', async () => {
    const own = ['undo-restore', 'canary', 'backup', 'technician'];
    const preferences = [...own, 'theme'].map((id) => ({ id, value: 'dark' }));
    const drafts = own.map((id) => draft(id, '1'));
    const text = await textOf({ ...NONE, preferences, drafts });
    expect(await storesOf(new Blob([text]))).toEqual({ ...NONE, drafts, preferences: [preferences[4]] });
    expect(JSON.parse(text.trim().split('\n').at(-1) ?? '').counts).toMatchObject({ drafts: 4, preferences: 1 });
  });
});

describe('a file of what the database holds', () => {
  const connections: Connection[] = [];
  afterEach(() => {
    for (const connection of connections.splice(0)) connection.close();
  });
  async function holding(all: Everything): Promise<Connection> {
    const none = () => undefined;
    const connection = connect(freshName(), { blocked: none, blocking: none, cut: none });
    connections.push(connection);
    await connection.withStore(STORES, 'readwrite', async (transaction) => {
      for (const [store, record] of entriesOf(all)) await transaction.objectStore(store).put(record as never);
    });
    return connection;
  }
  async function fileOf(connection: Connection, waiting: readonly Change[]): Promise<Everything> {
    const file = await exportFile(
      databaseSlices(connection, async () => undefined, waiting),
      MADE,
    );
    const { records, aside } = await whole(readBackup(file));
    expect(aside).toEqual([]);
    return records;
  }

  it('has all of it', async () => {
    expect(await fileOf(await holding(frozenRecords), [])).toEqual(inOrder(frozenRecords));
  });

  it('has what waits in place of what is there, what is new, and not what waits to be removed', async () => {
    const [a, b, c] = ['a', 'b', 'c'].map((id) => draft(id, 'old'));
    const connection = await holding({ ...NONE, drafts: [a, b, c] as never, preferences: [{ id: 'a', value: 1 }] });
    const waiting: Change[] = [
      { store: 'drafts', id: 'b', record: draft('b', 'first') },
      { store: 'drafts', id: 'b', record: draft('b', 'last') },
      { store: 'drafts', id: 'c' },
      { store: 'drafts', id: 'd', record: draft('d', 'new') },
      { store: 'cars', id: frozenRecords.cars[0]?.id ?? '', record: frozenRecords.cars[0] as never },
    ];
    expect(inOrder(await fileOf(connection, waiting))).toEqual({
      ...NONE,
      cars: [frozenRecords.cars[0]],
      drafts: [a, draft('b', 'last'), draft('d', 'new')],
      preferences: [{ id: 'a', value: 1 }],
    });
  });
});
