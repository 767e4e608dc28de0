/**
 * How screens wait for the engine, drawing by drawing: components drawn by Preact into a page of nothing but text. What a
 * browser does between a drawing and its effects is up to it; here the clock stands still until the test moves it on.
 */
import { h, render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Asked, useAsked } from '../../app/state/asking.ts';
import { TinyPage } from '../tools/tiny-page.ts';

/** A screen that shows what a question is answered. */
class Screen {
  readonly #page = new TinyPage();
  readonly #ask: (signal: AbortSignal) => Promise<string>;
  /** What each drawing was given. */
  readonly drawings: Asked<string>[] = [];

  /** Drawn at once; its effects wait. */
  constructor(question: string | undefined, ask: (signal: AbortSignal) => Promise<string>) {
    this.#ask = ask;
    this.show(question);
  }

  /** Draws it with a question, another one perhaps. */
  show(question: string | undefined): void {
    render(h(this.#Answer, { question }), this.#page.element);
  }
  readonly #Answer = ({ question }: { readonly question: string | undefined }): string => {
    const asked = useAsked(question, this.#ask);
    this.drawings.push(asked);
    return asked.error?.message ?? asked.value ?? (asked.busy ? 'working' : 'nothing');
  };

  get text(): string {
    return this.#page.text;
  }
  leave(): void {
    render(null, this.#page.element);
  }
}

/** Longer than Preact waits for a browser to paint, shorter than a question is kept for the next screen. */
const runEffects = () => vi.advanceTimersByTimeAsync(100);
/** Promises settle and what is stale is drawn again; the clock does not move. */
const settle = () => vi.advanceTimersByTimeAsync(0);
/** ms for which a question is kept for the next screen, and for which it is not. */
const [KEPT, GIVEN_UP] = [400, 1_000];

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
  return {
    question: `question ${count}`,
    ask,
    signals,
    answer: async (value: string) => {
      answer(value);
      await settle();
    },
    fail: async (error: Error) => {
      fail(error);
      await settle();
    },
  };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(async () => {
  // Effects that still wait would hold up those of the next test.
  await vi.runAllTimersAsync();
  vi.useRealTimers();
});

describe('asking the engine', () => {
  it('is busy until the answer comes, and draws it', async () => {
    const { question, ask, answer } = asking();
    const screen = new Screen(question, ask);
    expect(screen.text).toBe('working');
    expect(ask).not.toHaveBeenCalled();
    await runEffects();
    expect(ask).toHaveBeenCalledTimes(1);
    await answer('plan');
    expect(screen.text).toBe('plan');
    expect(screen.drawings).toEqual([{ busy: true }, { value: 'plan', busy: false }]);
  });

  it('draws what was answered before at once, and asks nothing', async () => {
    const { question, ask, answer } = asking();
    new Screen(question, ask);
    await runEffects();
    await answer('plan');
    const next = new Screen(question, ask);
    expect(next.text).toBe('plan');
    await runEffects();
    expect(next.drawings).toEqual([{ value: 'plan', busy: false }]);
    expect(ask).toHaveBeenCalledTimes(1);
  });

  it('draws anew where the answer to another came between its drawing and its asking', async () => {
    const { question, ask, answer } = asking();
    new Screen(question, ask);
    await runEffects();
    const shown = new Screen(question, ask);
    await answer('plan');
    expect(shown.text).toBe('working');
    await runEffects();
    expect(shown.text).toBe('plan');
    expect(shown.drawings).toEqual([{ busy: true }, { value: 'plan', busy: false }]);
    expect(ask).toHaveBeenCalledTimes(1);
  });

  it('asks once for all who want the same, and gives it up only when the last has left', async () => {
    const { question, ask, signals } = asking();
    const [one, other] = [new Screen(question, ask), new Screen(question, ask)];
    await runEffects();
    expect(ask).toHaveBeenCalledTimes(1);
    one.leave();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    expect(signals[0]?.aborted).toBe(false);
    other.leave();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    expect(signals[0]?.aborted).toBe(true);
  });

  it('keeps a question going for the next screen', async () => {
    const { question, ask, answer, signals } = asking();
    const ahead = new Screen(question, ask);
    await runEffects();
    ahead.leave();
    await vi.advanceTimersByTimeAsync(KEPT - 100);
    const next = new Screen(question, ask);
    await runEffects();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    expect(signals[0]?.aborted).toBe(false);
    await answer('plan');
    expect(next.text).toBe('plan');
    expect(ask).toHaveBeenCalledTimes(1);
  });

  it('asks anew what was given up', async () => {
    const { question, ask } = asking();
    const gone = new Screen(question, ask);
    await runEffects();
    gone.leave();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    const next = new Screen(question, ask);
    expect(next.text).toBe('working');
    await runEffects();
    expect(ask).toHaveBeenCalledTimes(2);
    expect(next.drawings).toEqual([{ busy: true }]);
  });

  it('asks anew what was given up before the engine has let go of it', async () => {
    const { question } = asking();
    const ask = vi.fn((_: AbortSignal) => new Promise<string>(() => {}));
    const gone = new Screen(question, ask);
    await runEffects();
    gone.leave();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    new Screen(question, ask);
    await runEffects();
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it('gives up a question that it leaves for another, and goes on with that one', async () => {
    const [first, second] = [asking(), asking()];
    const ask = (signal: AbortSignal) => (first.signals.length === 0 ? first.ask(signal) : second.ask(signal));
    const screen = new Screen(first.question, ask);
    await runEffects();
    screen.show(second.question);
    await runEffects();
    await vi.advanceTimersByTimeAsync(GIVEN_UP);
    expect([first.signals[0]?.aborted, second.signals[0]?.aborted]).toEqual([true, false]);
    expect(screen.text).toBe('working');
    await second.answer('plan');
    expect(screen.text).toBe('plan');
  });

  it('does not draw the answer to a question that it has left', async () => {
    const [first, second] = [asking(), asking()];
    const ask = (signal: AbortSignal) => (first.signals.length === 0 ? first.ask(signal) : second.ask(signal));
    const screen = new Screen(first.question, ask);
    await runEffects();
    screen.show(second.question);
    await runEffects();
    const before = screen.drawings.length;
    await first.answer('plan of before');
    expect(screen.text).toBe('working');
    expect(screen.drawings).toHaveLength(before);
  });

  it('shows what went wrong', async () => {
    const { question, ask, fail } = asking();
    const screen = new Screen(question, ask);
    await runEffects();
    const error = new Error('no such car');
    await fail(error);
    expect(screen.text).toBe('no such car');
    expect(screen.drawings.at(-1)).toEqual({ error, busy: false });
    screen.show(`${question}, put otherwise`);
    expect(screen.text).toBe('working');
  });

  it('goes on waiting where the engine has given the question up for another', async () => {
    const { question, ask, fail } = asking();
    const screen = new Screen(question, ask);
    await runEffects();
    expect(ask).toHaveBeenCalledTimes(1);
    await fail(new DOMException('overtaken', 'AbortError'));
    expect(screen.text).toBe('working');
  });

  it('asks nothing without a question', async () => {
    const { ask } = asking();
    const screen = new Screen(undefined, ask);
    expect(screen.text).toBe('nothing');
    await runEffects();
    expect(ask).not.toHaveBeenCalled();
    expect(screen.drawings).toEqual([{ busy: false }]);
  });
});
