/** How long a call to the engine may take, with workers that the test plays. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createEngine } from '../../app/engine/client.ts';
import { FakeWorker } from './fake-worker.ts';

const workers: FakeWorker[] = [];
const last = (): FakeWorker => workers.at(-1) as FakeWorker;
const inPage = vi.fn();
const engine = () =>
  createEngine({
    startWorker: () => {
      workers.push(new FakeWorker());
      return last();
    },
    inPage,
    runOut: 500,
  });

beforeEach(() => {
  vi.useFakeTimers();
  workers.length = 0;
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a call to the engine', () => {
  it('that has no end is stopped, who waits is told, and the next one gets a fresh worker', async () => {
    const { call } = engine();
    const endless = call('validateCarFile', [{}]);
    const next = call('parseCarFile', ['{}']);
    last().say({ ready: true });
    vi.advanceTimersByTime(60_000);
    await expect(endless).rejects.toThrow('This took too long and was stopped. Nothing that was saved is touched.');
    expect(workers[0]?.ended).toBe(true);
    expect(workers).toHaveLength(2);
    last().say({ ready: true });
    expect(last().sent.map(({ name }) => name)).toEqual(['parseCarFile']);
    last().answer('parsed');
    expect(await next).toBe('parsed');
    expect(inPage).not.toHaveBeenCalled();
  });

  it('has its own time, and what was given up has none', async () => {
    const { call } = engine();
    const giveUp = new AbortController();
    const gone = call('validateCarFile', [{}], { signal: giveUp.signal });
    last().say({ ready: true });
    vi.advanceTimersByTime(59_900);
    giveUp.abort();
    await expect(gone).rejects.toMatchObject({ name: 'AbortError' });
    const stays = call('parseCarFile', ['{}']);
    vi.advanceTimersByTime(400);
    expect(last().ended).toBe(false);
    last().answer('ran out');
    vi.advanceTimersByTime(59_999);
    last().answer('stays');
    expect(await stays).toBe('stays');
    expect(workers).toHaveLength(1);
  });
});
