import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { CANARY, UNDO } from '../../app/store/schema.ts';
import type { Store } from '../../app/store/store.ts';
import { InputError } from '../../core/input-error.ts';
import { open } from './opened.ts';
import { car, draft, freshName, frozenRecords, inOrder, oneText, reading, storesOf } from './records.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** A store that holds the frozen records. */
async function filled(name = freshName()): Promise<Store> {
  const store = open(name);
  await store.putAll(
    Object.entries(frozenRecords).flatMap(([name, list]) => list.map((record: unknown) => [name, record] as never)),
  );
  return store;
}

/** Every store of the database with its raw records, read without the app's code. */
async function raw(name: string): Promise<Record<string, { id: string }[]>> {
  const database = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
  });
  const names = [...database.objectStoreNames];
  const transaction = database.transaction(names);
  const lists = names.map(
    (store) =>
      new Promise<[string, { id: string }[]]>((resolve) => {
        const request = transaction.objectStore(store).getAll();
        request.onsuccess = () => resolve([store, request.result]);
      }),
  );
  const all = Object.fromEntries(await Promise.all(lists));
  database.close();
  return all;
}

interface BackupData {
  version?: number;
  checksum: string;
  counts: Record<string, number>;
  stores: Record<string, unknown>;
}
const edited = (text: string, edit: (data: BackupData) => void): string => {
  const data = JSON.parse(text);
  edit(data);
  return JSON.stringify(data);
};

describe('a backup', () => {
  it('holds every record of every store that the database has', async () => {
    const name = freshName();
    const store = await filled(name);
    const stores = await storesOf(await store.exportAll());
    const database = await raw(name);
    expect(Object.keys(database).length).toBeGreaterThanOrEqual(6);
    expect(Object.keys(stores).sort()).toEqual(Object.keys(database).sort());
    // Which database this is, is no record: another phone's is another.
    database.preferences = database.preferences?.filter(({ id }) => id !== CANARY) ?? [];
    for (const [name, records] of Object.entries(database)) {
      expect(records.length, `the test has records in ${name}`).toBeGreaterThan(0);
      expect(inOrder(stores)).toMatchObject({ [name]: inOrder({ [name]: records } as never)[name as never] });
    }
  });

  it('restores into an empty phone, all equal', async () => {
    const from = await filled();
    const text = await from.exportAll();
    const to = open();
    const report = await to.restore(text);
    expect(report.changes).toEqual({ added: 13, updated: 0, same: 0, kept: 0 });
    expect(inOrder(await to.load())).toEqual(inOrder(frozenRecords));
    expect(inOrder(await to.load())).toEqual(inOrder(await from.load()));
  });

  it('holds what has not been written yet', async () => {
    const store = open();
    void store.put('cars', car);
    expect((await storesOf(await store.exportAll())).cars).toEqual([car]);
  });

  it('can be made of what is on the screen when the database is out of reach', async () => {
    const store = open();
    await store.load();
    const { transaction } = IDBDatabase.prototype;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
      // The empty database that begins the log is made by the stand-in's own upgrade, at its own time: not this one.
      if (this.name.endsWith('-log')) return transaction.apply(this, args);
      throw new DOMException('gone', 'InvalidStateError');
    });
    await expect(store.exportAll()).rejects.toThrow('InvalidStateError');
    expect(store.saveState.value, 'nothing is missing').toBe('saved');
    void store.put('drafts', draft('a', '1'));
    const file = await store.exportAll({ ...frozenRecords, drafts: [] });
    expect(await storesOf(file)).toEqual({ ...frozenRecords, drafts: [draft('a', '1')] });
  });

  it('brings hostile text back as the text it is', async () => {
    const label = '<img src=x onerror=alert(1)>"\'; =HYPERLINK("x") \u202e\u0000';
    const from = open();
    await from.put('cars', { ...car, car: { ...car.car, label } });
    const to = open();
    await to.restore(await from.exportAll());
    expect((await to.load()).cars[0]?.car.label).toBe(label);
  });
});

describe('restoring', () => {
  it('shows what it would do, and touches nothing', async () => {
    const text = await (await filled()).exportAll();
    const name = freshName();
    const to = open(name);
    await to.put('cars', car);
    const before = await raw(name);
    const preview = await to.inspect(text);
    expect(preview.records).toEqual({ cars: 1, visits: 2, readings: 3, moves: 3, drafts: 1, preferences: 3 });
    expect(preview.changes).toEqual({ added: 12, updated: 0, same: 1, kept: 0 });
    expect(await raw(name)).toEqual(before);
  });

  it('twice changes nothing, and the undo still leads to before the first', async () => {
    const text = await (await filled()).exportAll();
    const name = freshName();
    const to = open(name);
    await to.restore(text);
    const once = await raw(name);
    const report = await to.restore(text);
    expect(report.changes).toEqual({ added: 0, updated: 0, same: 13, kept: 0 });
    expect(await raw(name)).toEqual(once);
    expect(await to.undoRestore()).toBe(true);
    expect((await to.load()).cars).toEqual([]);
  });

  it('deletes nothing that the backup lacks', async () => {
    const text = await (await filled()).exportAll();
    const to = open();
    const mine = { ...reading, id: to.newId() };
    await to.put('readings', mine);
    await to.restore(text);
    expect((await to.load()).readings).toContainEqual(mine);
    expect((await to.load()).readings).toHaveLength(4);
  });

  it('does not reopen a visit that was closed since', async () => {
    const text = await (await filled()).exportAll();
    const open2 = frozenRecords.visits.find(({ closed }) => !closed);
    const closed = { ...open2, closed: '2025-06-11T15:00:00.000Z' } as (typeof frozenRecords.visits)[number];
    const to = open();
    await to.put('visits', closed);
    await to.restore(text);
    expect((await to.load()).visits).toContainEqual(closed);
  });

  it('can be undone, and the undo undone', async () => {
    const text = await (await filled()).exportAll();
    const to = open();
    await to.putAll([
      ['drafts', draft('mine', '1')],
      ['preferences', { id: 'units', value: 'mine' }],
    ]);
    const before = inOrder(await to.load());
    expect(await to.undoes()).toBeUndefined();
    await to.restore(text);
    const after = inOrder(await to.load());
    expect(await to.undoes()).toBe('restore');
    expect(await to.undoRestore()).toBe(true);
    expect(inOrder(await to.load())).toEqual(before);
    expect(await to.undoRestore()).toBe(true);
    expect(inOrder(await to.load())).toEqual(after);
  });

  it('has nothing to undo on a phone that never restored', async () => {
    const store = await filled();
    const before = inOrder(await store.load());
    expect(await store.undoRestore()).toBe(false);
    expect(inOrder(await store.load())).toEqual(before);
  });

  it('keeps the undo out of what is loaded and out of the next backup', async () => {
    const name = freshName();
    const to = open(name);
    await to.restore(await (await filled()).exportAll());
    expect(await to.undoes()).toBe('restore');
    expect((await raw(name)).preferences?.map(({ id }) => id)).not.toContain(UNDO);
    expect((await (await to.exportAll()).text()).length).toBeLessThan(8000);
  });

  it('tells the screens to load again', async () => {
    const to = open();
    const changed = vi.fn();
    to.onOutsideChange(changed);
    await to.restore(await (await filled()).exportAll());
    expect(changed).toHaveBeenCalledTimes(1);
  });
});

describe('a backup that is refused', () => {
  const refusals: readonly [string, (text: string) => string, RegExp][] = [
    ['is not JSON', (text) => text.slice(0, -20), /^backup: .* allowed: JSON/],
    ['is empty', () => '', /^backup: "" is not allowed/],
    ['is a list', () => '[]', /^backup/],
    ['is null', () => 'null', /^backup/],
    [
      'is another file',
      () => '{"format":"cornerwright","version":1}',
      /^backup\.format: "cornerwright" is not allowed/,
    ],
    [
      'is of a newer version',
      (text) => edited(text, (data) => Object.assign(data, { version: 2 })),
      /^version: 2 .*newer/,
    ],
    ['has no version', (text) => edited(text, (data) => delete data.version), /version: nothing is not allowed/],
    [
      'was edited',
      (text) => text.replace('Marl estate', 'Marl saloon'),
      /^checksum: .* is not allowed; .*damaged or was edited/,
    ],
    [
      'has another checksum',
      (text) => edited(text, (data) => Object.assign(data, { checksum: '0' })),
      /^checksum: "0"/,
    ],
    ['lacks a store', (text) => edited(text, (data) => delete data.stores.moves), /^checksum/],
    [
      'has other counts',
      (text) => edited(text, (data) => Object.assign(data.counts, { moves: 2 })),
      /^counts\.moves: 2/,
    ],
    ['is nested without end', () => `${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`, /^backup: .*levels/],
  ];

  it.each(refusals)('because it %s: nothing is touched', async (_why, spoil, message) => {
    const text = await oneText(frozenRecords);
    const name = freshName();
    const to = open(name);
    await to.put('drafts', draft('mine', '1'));
    const before = await raw(name);
    for (const attempt of [to.inspect, to.restore]) {
      const error = await attempt(spoil(text)).catch((caught: unknown) => caught);
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).message).toMatch(message);
    }
    expect(await raw(name)).toEqual(before);
    expect(await to.undoes()).toBeUndefined();
  });
});
