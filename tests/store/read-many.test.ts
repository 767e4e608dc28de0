/** Records by their ids, whether they lie together or far apart; and a text too long to be read as one. */
import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { describe, expect, it, vi } from 'vitest';
import { readBackup } from '../../app/store/read-backup.ts';
import { readMany } from '../../app/store/read-many.ts';
import type { Transaction } from '../../app/store/schema.ts';
import { draft, freshName, frozenRecords, oneText } from './records.ts';

describe('of a thousand records', () => {
  const idOf = (n: number): string => `draft-${String(n).padStart(4, '0')}`;
  const read = async (ids: readonly string[]) => {
    const database = await openDB(freshName(), 1, {
      upgrade: (made) => void made.createObjectStore('drafts', { keyPath: 'id' }),
    });
    const filling = database.transaction('drafts', 'readwrite');
    for (let n = 0; n < 1000; n++) void filling.store.put(draft(idOf(n), `${n}`));
    await filling.done;
    const getAll = vi.spyOn(IDBObjectStore.prototype, 'getAll');
    const get = vi.spyOn(IDBObjectStore.prototype, 'get');
    const transaction = database.transaction('drafts', 'readonly') as unknown as Transaction<'readonly'>;
    const found = await readMany(transaction, 'drafts', ids);
    database.close();
    const requests = getAll.mock.calls.length + get.mock.calls.length;
    vi.restoreAllMocks();
    return { found, requests };
  };
  const some = (count: number, every: number): string[] => Array.from({ length: count }, (_, i) => idOf(i * every));

  it.each([1, 2, 3, 9])('each of forty is found, %i places apart', async (every) => {
    const ids = [...some(40, every), 'draft-none'].reverse();
    const { found } = await read(ids);
    for (const [i, id] of some(40, every).entries()) expect(found.get(id)).toEqual(draft(id, `${i * every}`));
    expect(found.has('draft-none')).toBe(false);
  });

  it('those that lie together are one request', async () => {
    expect((await read(some(40, 1))).requests).toBe(1);
    expect((await read(some(40, 2))).requests).toBe(1);
  });

  it('none is no request', async () => {
    const { found, requests } = await read([]);
    expect([found.size, requests]).toEqual([0, 0]);
  });
});

describe('a backup of one text', () => {
  const read = async (bytes: number): Promise<number> => {
    const file = new Blob([await oneText(frozenRecords)]);
    Object.defineProperty(file, 'size', { value: bytes });
    let records = 0;
    for await (const piece of readBackup(file)) {
      for (const list of Object.values(piece.records)) records += list.length;
    }
    return records;
  };

  it('of four bytes for each of 500,000,000 characters is read, and one with a byte more is not', async () => {
    const all = Object.values(frozenRecords).reduce((sum, list) => sum + list.length, 0);
    expect(await read(2_000_000_000)).toBe(all);
    await expect(read(2_000_000_001)).rejects.toMatchObject({
      ...{ name: 'InputError', field: 'backup' },
      rule: { is: 'text', least: 0, most: 500_000_000 },
    });
  });
});
