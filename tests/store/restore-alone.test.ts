/** A restore and all that belongs to it is one window's at a time: the others say so, and touch nothing. */
import { afterEach, expect, it, vi } from 'vitest';
import { standIn } from './app.ts';
import { fakeLocks } from './locks.ts';
import { open } from './opened.ts';
import { draft, freshName, oneText } from './records.ts';

afterEach(() => vi.unstubAllGlobals());

const NONE = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const text = await oneText({ ...NONE, drafts: [draft('theirs', '1')] });

/** A phone with a record, and its other window, which restores for as long as it likes. */
async function phone() {
  const outside = standIn();
  const locks = fakeLocks();
  vi.stubGlobal('navigator', { locks });
  const name = freshName();
  const store = open(name);
  await store.put('drafts', draft('mine', '1'));
  const hold = () => {
    let letGo = (): void => undefined;
    void locks.request(`${name}-restore`, () => new Promise<void>((done) => (letGo = done)));
    return () => letGo();
  };
  const isHeld = () => locks.isHeld(`${name}-restore`);
  const cutOff = () =>
    outside.set(`${name}-restoring`, JSON.stringify({ at: '2026-03-01T08:00:00.000Z', kind: 'restore', all: 3 }));
  return { store, hold, isHeld, cutOff };
}

it('while another window restores', async () => {
  const { store, hold, isHeld } = await phone();
  const letGo = hold();
  for (const act of [() => store.restore(text), store.undoRestore, store.leaveCutOff]) {
    await expect(act()).rejects.toThrow('Another window restores at the moment');
  }
  await store.keepDaily();
  expect(await store.copyMade(), 'a copy of what is half there').toBeUndefined();
  expect((await store.inspect(text)).changes.added, 'to look is free').toBe(1);
  expect((await store.load()).drafts).toEqual([draft('mine', '1')]);
  letGo();
  await vi.waitUntil(() => !isHeld(), { interval: 1 });
  await store.keepDaily();
  expect(await store.copyMade()).toBeDefined();
  await store.restore(text);
  expect((await store.load()).drafts).toEqual([draft('mine', '1'), draft('theirs', '1')]);
  const again = hold();
  await expect(store.putBackCopy()).rejects.toThrow('Another window restores at the moment');
  again();
  await vi.waitUntil(() => !isHeld(), { interval: 1 });
  expect(await store.undoRestore()).toBe(true);
});

it('what is under way in another window is not cut off; what nobody does any more is', async () => {
  const { store, hold, isHeld, cutOff } = await phone();
  cutOff();
  const letGo = hold();
  await store.lookForCutOff();
  expect(store.cutOff.value).toBeUndefined();
  letGo();
  await vi.waitUntil(() => !isHeld(), { interval: 1 });
  await store.lookForCutOff();
  expect(store.cutOff.value).toMatchObject({ kind: 'restore', all: 3, through: 0 });
  await store.leaveCutOff();
  expect(store.cutOff.value).toBeUndefined();
});

it('two restores of one window at once: the second says so, and holds up nothing', async () => {
  const { store, isHeld } = await phone();
  const first = store.restore(text);
  await vi.waitUntil(isHeld, { interval: 1 });
  await expect(store.restore(text)).rejects.toThrow('Another window restores at the moment');
  expect((await first).changes.added).toBe(1);
  expect(isHeld()).toBe(false);
});

it('without a copy there is none to put back, and all stays as it is', async () => {
  const { store } = await phone();
  await store.putBackCopy();
  expect((await store.load()).drafts).toEqual([draft('mine', '1')]);
  expect(await store.undoes()).toBeUndefined();
});
