/** Backups that are well formed and mean harm. */
import 'fake-indexeddb/auto';
import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { UNDO } from '../../app/store/schema.ts';
import { createStore } from '../../app/store/store.ts';
import { makeBackup } from '../../core/records/envelope.ts';
import { car, freshName } from './records.ts';

it('takes nothing in that goes by the name of the undo: it would empty the phone at the next one', async () => {
  const records = { cars: [], visits: [], readings: [], moves: [], drafts: [] };
  const before = { at: '2026-01-01T08:00:00Z', records: { ...records, preferences: [] } };
  const preferences = [
    { id: UNDO, value: before },
    { id: 'units', value: { angle: 'degrees' } },
  ];
  const digest = async (text: string) => createHash('sha256').update(text).digest('hex');
  const hostile = JSON.stringify(await makeBackup({ ...records, preferences }, '2026-01-02T08:00:00Z', digest));
  const store = createStore(freshName());
  await store.put('cars', car);
  expect((await store.inspect(hostile)).records.preferences).toBe(1);
  await store.restore(hostile);
  expect((await store.load()).preferences.map(({ id }) => id)).toEqual(['units']);
  // The undo is the store's own: it leads to before this restore, where the car is.
  expect(await store.undoRestore()).toBe(true);
  const { cars, preferences: left } = await store.load();
  expect([cars, left]).toEqual([[car], []]);
  store.close();
});
