/** A thing that one window has in hand, and work that one does after the other. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { holdAlone, inTurn } from '../../app/store/one-window.ts';
import { fakeLocks } from './locks.ts';

let locks: ReturnType<typeof fakeLocks>;
let page: EventTarget & { visibilityState: string };
beforeEach(() => {
  locks = fakeLocks();
  page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  vi.stubGlobal('navigator', { locks });
  vi.stubGlobal('document', page);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A window of a page of its own, and what it was told. */
function open(name = 'a visit') {
  const own = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  page = own;
  vi.stubGlobal('document', own);
  const told: boolean[] = [];
  const hold = holdAlone(name, (has) => told.push(has));
  const look = (state: string) => {
    vi.stubGlobal('document', own);
    own.visibilityState = state;
    own.dispatchEvent(new Event('visibilitychange'));
  };
  return { hold, told, look };
}
const settled = () => new Promise((done) => setTimeout(done, 5));

it('is in hand in the first window; the second is told that it is not, and gets it when that one ends', async () => {
  const one = open();
  await settled();
  const two = open();
  await settled();
  expect([one.told, two.told]).toEqual([[true], [false]]);
  one.hold.end();
  await settled();
  expect([one.told, two.told]).toEqual([[true], [false, true]]);
  two.hold.end();
  await settled();
  expect(locks.isHeld('a visit')).toBe(false);
  expect(two.told).toEqual([false, true]);
});

it('is taken from the window that has it, which gets it back when the other ends', async () => {
  const one = open();
  const two = open();
  await settled();
  two.hold.take();
  await settled();
  expect([one.told, two.told]).toEqual([
    [true, false],
    [false, true],
  ]);
  two.hold.end();
  await settled();
  expect(one.told).toEqual([true, false, true]);
});

it('is let go by a window that is put away, and asked for again when that is looked at', async () => {
  const one = open();
  const two = open();
  await settled();
  one.look('hidden');
  await settled();
  expect(two.told).toEqual([false, true]);
  expect(one.told).toEqual([true]);
  one.look('visible');
  await settled();
  expect(one.told).toEqual([true, false]);
  two.hold.end();
  await settled();
  expect(one.told).toEqual([true, false, true]);
});

it('one that has ended is told nothing more, and does not come back with its page', async () => {
  const one = open();
  await settled();
  one.hold.end();
  one.look('hidden');
  one.look('visible');
  await settled();
  expect(one.told).toEqual([true]);
  expect(locks.isHeld('a visit')).toBe(false);
});

it('two things are two', async () => {
  const one = open('a');
  const two = open('b');
  await settled();
  expect([one.told, two.told]).toEqual([[true], [true]]);
});

it('without locks every window has it, and is never told otherwise', async () => {
  vi.stubGlobal('navigator', {});
  const one = open();
  one.hold.take();
  one.hold.end();
  await settled();
  expect(one.told).toEqual([]);
});

it('a browser that gives no locks is asked once', async () => {
  const request = vi.fn().mockRejectedValue(new DOMException('no', 'SecurityError'));
  vi.stubGlobal('navigator', { locks: { request } });
  const { told } = open();
  await settled();
  expect(request).toHaveBeenCalledTimes(1);
  expect(told).toEqual([]);
});

it('work in turn: the answer is there at once, the next one begins when the work has ended', async () => {
  const said: string[] = [];
  let end = (): void => undefined;
  const first = inTurn<string>('begin', async (answer) => {
    answer('one');
    await new Promise<void>((done) => {
      end = done;
    });
    said.push('first ended');
  });
  const second = inTurn<string>('begin', async (answer) => {
    said.push('second began');
    answer('two');
  });
  expect(await first).toBe('one');
  await settled();
  expect(said).toEqual([]);
  end();
  expect(await second).toBe('two');
  expect(said).toEqual(['first ended', 'second began']);
});

it('work in turn does not wait for ever, and does without locks', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  void inTurn('begin', () => new Promise(() => undefined));
  let began = false;
  const second = inTurn<string>('begin', async (answer) => {
    began = true;
    answer('two');
  });
  await vi.advanceTimersByTimeAsync(1_900);
  expect(began).toBe(false);
  await vi.advanceTimersByTimeAsync(200);
  expect(await second).toBe('two');
  vi.stubGlobal('navigator', {});
  expect(await inTurn('begin', async (answer) => answer('three'))).toBe('three');
  await expect(inTurn('begin', () => Promise.reject(new Error('no')))).rejects.toThrow('no');
});
