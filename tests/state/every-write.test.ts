/**
 * Every write that the app makes under every fault of storage: "saved" is never said of what is not on the disk, nothing is
 * written by half, what was typed stays in memory, and all is on the disk once the fault is over.
 */
import 'fake-indexeddb/auto';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { loadRecords, records, reloadRecords } from '../../app/state/records.ts';
import { store } from '../../app/store/index.ts';
import { DATABASE, isInternal } from '../../app/store/schema.ts';
import type { Stores } from '../../core/records/stored.ts';
import { beside, entriesOf, onDisk, standIn } from '../store/app.ts';
import { frozenRecords, inOrder } from '../store/records.ts';
import { arm, FAULTS, type Fault, heldOpen } from '../store/write-faults.ts';
import { whoWrites } from './who-writes.ts';
import { makeOwn, WRITES } from './writes.ts';

beforeAll(async () => {
  standIn();
  arm();
  await loadRecords({ cars: [], visits: [] }, async () => undefined);
  store.onOutsideChange(() => void reloadRecords().catch(() => undefined));
  store.remember(() => records.value);
  await store.putAll(entriesOf(frozenRecords));
  await reloadRecords();
});
/** As another tab would leave it: no case carries, reads and compares the records of those before it. */
afterEach(async () => {
  const kept = new Set(entriesOf(frozenRecords).map(([name, { id }]) => `${name} ${id}`));
  const added = entriesOf(records.value).filter(([name, { id }]) => !kept.has(`${name} ${id}`) && !isInternal(id));
  await beside(DATABASE, (transaction) => {
    for (const [name, { id }] of added) transaction.objectStore(name).delete(id);
  });
  await reloadRecords();
});
afterAll(() => {
  store.close();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const memory = (): Stores => inOrder(records.value);

async function untilSaved(): Promise<void> {
  for (let tries = 0; store.saveState.value !== 'saved'; tries += 1) {
    if (tries > 1500) throw new Error(`never saved: ${store.saveMessage.value}`);
    await new Promise((wait) => setTimeout(wait, 2));
    store.retry();
  }
}

/** Does it under the fault. @returns what is in memory then */
async function under(fault: Fault, act: () => unknown): Promise<Stores> {
  const before = await onDisk(DATABASE);
  const said: string[] = [];
  const listening = [store.saveState, store.saveMessage].map((signal) => signal.subscribe((now) => said.push(now)));
  said.length = 0;
  await fault.begin(DATABASE);
  await act();
  const meant = memory();
  expect(store.saveState.value, 'at once').not.toBe('saved');
  await vi.waitFor(() => expect(said.join('\n')).toMatch(fault.says), { timeout: 10_000, interval: 2 });
  if (fault.lasts) {
    // It has been tried, and is tried again: nothing of it is there, and nothing else says so.
    store.retry();
    await new Promise((wait) => setTimeout(wait, 5));
    expect(said).not.toContain('saved');
    expect(await onDisk(DATABASE, heldOpen()), 'nothing by half').toEqual(before);
    expect(memory(), 'still in memory').toEqual(meant);
  }
  fault.end();
  for (const end of listening) end();
  return meant;
}

describe.each(Object.entries(FAULTS))('%s', (_, fault) => {
  it.each(Object.entries(WRITES))('%s', async (_, { before, act }) => {
    const own = makeOwn();
    before?.(own);
    await untilSaved();
    const meant = await under(fault, () => act(own));
    await untilSaved();
    expect(await onDisk(DATABASE)).toEqual(meant);
    expect(memory()).toEqual(meant);
    store.lossSeen();
  });
});

it('no write of the app is missing in the table, and none stands there that there is not', () => {
  // A restore and its undo are no change of what the screens hold: see tests/store/restore-faults.test.ts.
  const others = ['app/screens/settings/records.tsx#RecordSettings'];
  const told = [...new Set([...Object.values(WRITES).flatMap(({ of }) => of), ...others])].sort();
  expect(whoWrites()).toEqual(told);
});
