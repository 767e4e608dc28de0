/** A restore and its undo under every fault of storage: refused in words, nothing of it there, and done once the fault is over. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { app, entriesOf, onDisk, standIn } from './app.ts';
import { closeAll } from './opened.ts';
import { draft, freshName, frozenRecords, inOrder } from './records.ts';
import { arm, FAULTS, heldOpen } from './write-faults.ts';

beforeEach(() => {
  standIn();
  arm();
});
afterEach(() => {
  closeAll();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

/** A backup of the frozen records, and a phone that has something else. */
async function ready() {
  const other = await app(freshName());
  await other.keep(...entriesOf(frozenRecords));
  const text = await other.store.exportAll();
  const name = freshName();
  const phone = await app(name);
  await phone.keep(['drafts', draft('here', '1')]);
  return { ...phone, name, text };
}
type Phone = Awaited<ReturnType<typeof ready>>;

/** What each does to the records that are here, and how it is begun. */
const changes: Record<
  string,
  { readonly first: (phone: Phone) => Promise<unknown>; readonly act: (p: Phone) => Promise<unknown> }
> = {
  'a restore': { first: async () => undefined, act: ({ store, text }) => store.restore(text) },
  'the undo of a restore': {
    first: ({ store, text }) => store.restore(text),
    act: ({ store }) => store.undoRestore(),
  },
  'the undo of an undo': {
    async first({ store, text }) {
      await store.restore(text);
      await store.undoRestore();
    },
    act: ({ store }) => store.undoRestore(),
  },
};
const lasting = Object.entries(FAULTS).filter(([, { lasts }]) => lasts);
const passing = Object.entries(FAULTS).filter(([, { lasts }]) => !lasts);

describe.each(Object.entries(changes))('%s', (_, { first, act }) => {
  it.each(lasting)('%s', async (_, fault) => {
    const phone = await ready();
    await first(phone);
    const before = await onDisk(phone.name);
    await fault.begin(phone.name);
    let ended = '';
    const done = act(phone).then(
      () => {
        ended = 'done';
      },
      (error: Error) => {
        ended = error.message;
      },
    );
    await vi.waitFor(() => expect(`${ended} ${phone.store.saveMessage.value}`).toMatch(fault.says), 10_000);
    expect(ended).not.toBe('done');
    expect(await onDisk(phone.name, heldOpen())).toEqual(before);
    fault.end();
    await done;
    // What could only wait is done by now; what was refused is asked for again.
    if (ended !== 'done') await act(phone);
    const after = await onDisk(phone.name);
    expect(after.cars.length).toBe(before.cars.length === 0 ? frozenRecords.cars.length : 0);
    expect(after.moves.length).toBe(before.moves.length === 0 ? frozenRecords.moves.length : 0);
    expect(after.drafts).toContainEqual(draft('here', '1'));
  });

  it.each(passing)('%s: what is in memory is written back, and nothing is said to be done', async (_, fault) => {
    const phone = await ready();
    await first(phone);
    await fault.begin(phone.name);
    await act(phone).catch((error: Error) =>
      expect(error.message).toMatch(/cleared the records|reach its records|did not hold/),
    );
    await vi.waitFor(() => expect(phone.store.loss.value?.kind).toBe('put-back'), 10_000);
    await vi.waitFor(() => expect(phone.store.saveState.value).toBe('saved'), 10_000);
    expect((await onDisk(phone.name)).drafts).toEqual(expect.arrayContaining([...inOrder(phone.memory()).drafts]));
  });
});
