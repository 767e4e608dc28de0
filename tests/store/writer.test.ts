import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { STORES } from '../../app/store/schema.ts';
import { InputError } from '../../core/input-error.ts';
import { open } from './opened.ts';
import { car, draft, freshName, frozenRecords, oneText, reading } from './records.ts';

// Here each call of the browser's database is counted: the log is `torn-log.spec.ts`'s.
vi.mock('../../app/store/fresh-log.ts', () => ({ freshLog: async () => undefined }));

afterEach(() => {
  vi.restoreAllMocks();
});

const noRoom = () => new DOMException('no room', 'QuotaExceededError');

describe('writing', () => {
  it('resolves when the record is on the disk', async () => {
    const name = freshName();
    const store = open(name);
    await store.put('cars', car);
    expect(store.saveState.value).toBe('saved');
    expect((await open(name).load()).cars).toEqual([car]);
  });

  it('asks for strict durability in every transaction that writes', async () => {
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const store = open();
    await store.put('cars', car);
    await store.putAll([
      ['readings', reading],
      ['drafts', draft('a', '1')],
    ]);
    await store.remove('drafts', 'a');
    await store.restore(await oneText(frozenRecords));
    await store.undoRestore();
    const writing = transaction.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writing.length).toBeGreaterThanOrEqual(4);
    for (const call of writing) expect(call[2]).toEqual({ durability: 'strict' });
  });

  it('is not done before the transaction is complete', async () => {
    const store = open();
    await store.load();
    let complete = false;
    const begin = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
      const transaction = begin.apply(this, args);
      transaction.addEventListener('complete', () => {
        complete = true;
      });
      return transaction;
    });
    const put = store.put('cars', car);
    expect(store.saveState.value).toBe('saving');
    await put;
    expect(complete).toBe(true);
  });

  it('writes in the order in which the changes came', async () => {
    const store = open();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put');
    const texts = ['-', '-1', '-1.', '-1.2', '-1.25'];
    await Promise.all(texts.map((text) => store.put('drafts', draft('reading:1', text))));
    const drafts = put.mock.calls.flatMap(([record]) =>
      'texts' in record ? [record as ReturnType<typeof draft>] : [],
    );
    expect(drafts.map((record) => record.texts['LF.camber'])).toEqual(texts);
    expect((await store.load()).drafts).toEqual([draft('reading:1', '-1.25')]);
  });

  it('removes after it has put, in the order asked for', async () => {
    const store = open();
    void store.put('drafts', draft('a', '1'));
    void store.remove('drafts', 'a');
    await store.put('drafts', draft('b', '2'));
    expect((await store.load()).drafts).toEqual([draft('b', '2')]);
  });

  it('keeps a record once, however often it is put', async () => {
    const store = open();
    await store.put('readings', reading);
    await store.put('readings', reading);
    expect((await store.load()).readings).toEqual([reading]);
  });

  it('writes all of a group or none', async () => {
    const name = freshName();
    const store = open(name);
    await store.load();
    const original = IDBObjectStore.prototype.put;
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, record) {
      if (this.name === 'readings') throw noRoom();
      return original.call(this, record);
    });
    void store.putAll([
      ['cars', car],
      ['readings', reading],
    ]);
    await vi.waitFor(() => expect(store.saveState.value).toBe('not-saved'));
    // The car's own put went well: it is the reading's that takes it back.
    expect(put.mock.results.map(({ type }) => type)).toEqual(['return', 'throw']);
    expect((await open(name).load()).cars).toEqual([]);
    put.mockRestore();
    store.retry();
    await vi.waitFor(() => expect(store.saveState.value).toBe('saved'));
    const { cars, readings } = await open(name).load();
    expect([cars, readings]).toEqual([[car], [reading]]);
  });

  it('writes nothing before the first load has ended', async () => {
    const name = freshName();
    const first = open(name);
    await first.put('cars', car);
    const store = open(name);
    const order: string[] = [];
    const begin = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
      const transaction = begin.apply(this, args);
      order.push(`${args[1]} begins`);
      transaction.addEventListener('complete', () => order.push(`${args[1]} ends`));
      return transaction;
    });
    await store.put('drafts', draft('a', '1'));
    expect(order).toEqual(['readonly begins', 'readonly ends', 'readwrite begins', 'readwrite ends']);
  });

  it('keeps what was handed over, whatever becomes of the object afterwards', async () => {
    const store = open();
    const mine = { id: 'units', value: { angle: 'degrees' } };
    const put = store.put('preferences', mine);
    mine.value.angle = 'changed';
    await put;
    expect((await store.load()).preferences).toEqual([{ id: 'units', value: { angle: 'degrees' } }]);
  });

  it.each([
    ['', '""'],
    [undefined, 'nothing'],
    [7, '7'],
  ])('refuses the id %j and goes on', async (id, shown) => {
    const store = open();
    const bad = { ...draft('', '1'), id: id as string };
    await expect(store.put('drafts', bad)).rejects.toThrow(InputError);
    await expect(store.put('drafts', bad)).rejects.toThrow(`drafts.id: ${shown} is not allowed`);
    await store.put('drafts', draft('good', '2'));
    expect((await store.load()).drafts).toEqual([draft('good', '2')]);
    expect(store.saveState.value).toBe('saved');
  });

  it('refuses a kind of record that there is not, by its name, and goes on', async () => {
    const store = open();
    const refused = await store.put('toString' as 'drafts', draft('a', '1')).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(InputError);
    expect(refused).toMatchObject({ field: 'store', rule: { is: 'choice', of: STORES } });
    await store.put('drafts', draft('good', '2'));
    expect(await store.load()).toMatchObject({ drafts: [draft('good', '2')] });
  });

  it('refuses what a database cannot hold and goes on', async () => {
    const store = open();
    await expect(store.put('preferences', { id: 'units', value: () => 1 })).rejects.toThrow();
    await store.put('preferences', { id: 'units', value: 1 });
    expect((await store.load()).preferences).toEqual([{ id: 'units', value: 1 }]);
  });

  it('keeps hostile text as the text it is', async () => {
    const store = open();
    const label = '<img src=x onerror=alert(1)> =1+1 \u202e __proto__';
    const hostile = { ...car, car: { ...car.car, label } };
    await store.put('cars', hostile);
    const proto = JSON.parse('{"id":"p","value":{"__proto__":{"polluted":true}}}');
    await store.put('preferences', proto);
    expect((await store.load()).cars[0]?.car.label).toBe(label);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});
