/**
 * How screens wait for the engine, drawing by drawing. The hooks are played: what a browser does between a drawing and its
 * effects is up to it, and here it is up to the test.
 */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

interface Slot {
  value?: unknown;
  current?: unknown;
  deps?: readonly unknown[];
  over?: (() => void) | undefined;
}

const played = vi.hoisted(() => {
  const now = { slots: [] as Slot[], at: 0, effects: [] as (() => void)[], redraw: () => {} };
  const slot = (begin: Slot): Slot => {
    now.slots[now.at] ??= begin;
    return now.slots[now.at++] as Slot;
  };
  return { now, slot };
});

vi.mock('preact/hooks', () => ({
  useState: (value: unknown) => {
    const own = played.slot({ value });
    const { redraw } = played.now;
    const set = (next: unknown) => {
      own.value = typeof next === 'function' ? next(own.value) : next;
      redraw();
    };
    return [own.value, set];
  },
  useRef: (current: unknown) => played.slot({ current }),
  useEffect: (effect: () => (() => void) | undefined, deps: readonly unknown[]) => {
    const own = played.slot({});
    if (own.deps?.every((dep, i) => dep === deps[i])) return;
    own.deps = deps;
    played.now.effects.push(() => {
      own.over?.();
      own.over = effect();
    });
  },
}));

const { useAsked } = await import('../../app/state/asking.ts');

/** A screen that shows what one question is answered. */
class Screen {
  readonly #slots: Slot[] = [];
  readonly #effects: (() => void)[] = [];
  /** Whether it has to be drawn again. */
  stale = true;

  constructor(
    readonly question: string | undefined,
    readonly ask: (signal: AbortSignal) => Promise<string>,
  ) {}

  draw() {
    this.stale = false;
    Object.assign(played.now, { slots: this.#slots, at: 0, effects: this.#effects });
    played.now.redraw = () => {
      this.stale = true;
    };
    return useAsked(this.question, this.ask);
  }
  runEffects(): void {
    for (const effect of this.#effects.splice(0)) effect();
  }
  leave(): void {
    for (const { over } of this.#slots) over?.();
  }
}

/** A question nobody has asked before, what was asked of the engine, and its answers. */
let count = 0;
function asking() {
  count += 1;
  const signals: AbortSignal[] = [];
  let answer: (value: string) => void = () => {};
  let fail: (error: Error) => void = () => {};
  const ask = vi.fn((signal: AbortSignal) => {
    signals.push(signal);
    return new Promise<string>((resolve, reject) => {
      answer = resolve;
      fail = reject;
      signal.addEventListener('abort', () => reject(new DOMException('given up', 'AbortError')));
    });
  });
  const settled = () => vi.advanceTimersByTimeAsync(0);
  return {
    question: `question ${count}`,
    ask,
    signals,
    answer: async (value: string) => {
      answer(value);
      await settled();
    },
    fail: async (error: Error) => {
      fail(error);
      await settled();
    },
  };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('asking the engine', () => {
  it('is busy until the answer comes, and draws it', async () => {
    const { question, ask, answer } = asking();
    const screen = new Screen(question, ask);
    expect(screen.draw()).toEqual({ busy: true });
    screen.runEffects();
    await answer('plan');
    expect(screen.stale).toBe(true);
    expect(screen.draw()).toEqual({ value: 'plan', busy: false });
  });

  it('draws anew where the answer to another came between its drawing and its asking', async () => {
    const { question, ask, answer } = asking();
    const ahead = new Screen(question, ask);
    ahead.draw();
    ahead.runEffects();
    const shown = new Screen(question, ask);
    expect(shown.draw()).toEqual({ busy: true });
    await answer('plan');
    shown.runEffects();
    expect(shown.stale).toBe(true);
    expect(shown.draw()).toEqual({ value: 'plan', busy: false });
    expect(ask).toHaveBeenCalledTimes(1);
  });

  it('asks once for all who want the same, and gives it up only when the last has left', async () => {
    const { question, ask, signals } = asking();
    const [one, other] = [new Screen(question, ask), new Screen(question, ask)];
    for (const screen of [one, other]) {
      screen.draw();
      screen.runEffects();
    }
    expect(ask).toHaveBeenCalledTimes(1);
    one.leave();
    vi.advanceTimersByTime(5_000);
    expect(signals[0]?.aborted).toBe(false);
    other.leave();
    vi.advanceTimersByTime(5_000);
    expect(signals[0]?.aborted).toBe(true);
  });

  it('keeps a question going for the next screen', async () => {
    const { question, ask, answer, signals } = asking();
    const ahead = new Screen(question, ask);
    ahead.draw();
    ahead.runEffects();
    ahead.leave();
    const next = new Screen(question, ask);
    next.draw();
    next.runEffects();
    vi.advanceTimersByTime(5_000);
    expect(signals[0]?.aborted).toBe(false);
    await answer('plan');
    expect(next.draw()).toEqual({ value: 'plan', busy: false });
  });

  it('asks anew what was given up', async () => {
    const { question, ask } = asking();
    const gone = new Screen(question, ask);
    gone.draw();
    gone.runEffects();
    gone.leave();
    await vi.advanceTimersByTimeAsync(5_000);
    const next = new Screen(question, ask);
    expect(next.draw()).toEqual({ busy: true });
    next.runEffects();
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it('shows what went wrong', async () => {
    const { question, ask, fail } = asking();
    const screen = new Screen(question, ask);
    screen.draw();
    screen.runEffects();
    const error = new Error('no such car');
    await fail(error);
    expect(screen.draw()).toEqual({ error, busy: false });
  });

  it('asks nothing without a question', () => {
    const { ask } = asking();
    const screen = new Screen(undefined, ask);
    expect(screen.draw()).toEqual({ busy: false });
    screen.runEffects();
    expect(ask).not.toHaveBeenCalled();
  });
});
