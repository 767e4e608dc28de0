/** Long work stops for the page after ten milliseconds of it, and counts anew after each stop. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { breather } from '../../app/store/breath.ts';

let time = 0;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  vi.spyOn(performance, 'now').mockImplementation(() => time);
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

it('whatever it began at', async () => {
  for (const began of [0, 5_000]) {
    time = began;
    const breath = breather();
    for (time of [began, began + 9.9]) expect(breath()).toBeUndefined();
    time = began + 10;
    const pause = breath();
    expect(pause).toBeInstanceOf(Promise);
    const ended = vi.fn();
    void pause?.then(ended);
    await Promise.resolve();
    expect(ended, 'before the page had its turn').not.toHaveBeenCalled();
    time = began + 100;
    await vi.advanceTimersByTimeAsync(0);
    expect(ended).toHaveBeenCalledTimes(1);
    time = began + 109;
    expect(breath()).toBeUndefined();
    time = began + 110;
    expect(breath()).toBeInstanceOf(Promise);
    await vi.advanceTimersByTimeAsync(0);
  }
});
