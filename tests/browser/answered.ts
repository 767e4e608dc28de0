/**
 * What each touch takes until its answer is painted, from the browser's own trace. What is judged is the processor time of
 * the page's thread: on a machine that has other things to do the clock tells of these, that time does not.
 */
import type { Browser, CDPSession, Locator, Page } from '@playwright/test';

export interface Answered {
  readonly words: string;
  /** Time of the page's thread from the touch until what it changed first was painted, ms. */
  readonly work: number;
  /** The same by the clock, ms. */
  readonly clock: number;
}

export class SlowHand {
  private readonly words: string[] = [];

  private constructor(
    private readonly page: Page,
    private readonly browser: Browser,
    private readonly devtools: CDPSession,
  ) {}

  /** @param rate how many times slower than this machine */
  static async on(page: Page, browser: Browser, rate: number): Promise<SlowHand> {
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    await devtools.send('Emulation.setCPUThrottlingRate', { rate });
    await page.evaluate(watch);
    await browser.startTracing(page, { categories: ['devtools.timeline', 'blink.user_timing'] });
    return new SlowHand(page, browser, devtools);
  }

  async touch(what: Locator): Promise<void> {
    // There, at rest, and under nothing else.
    await what.tap({ trial: true });
    const [box, words] = await Promise.all([
      what.boundingBox(),
      what.evaluate((one) => one.ariaLabel ?? one.textContent ?? ''),
    ]);
    if (!box) throw new Error('what was to be touched has gone');
    this.words.push(words);
    const touchPoints = [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }];
    await this.devtools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
    await this.devtools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await this.page.waitForFunction((count) => window.answered === count, this.words.length);
  }

  /** What the same small piece of work takes of the page's thread, ms: how fast this machine is now. */
  async yardstick(): Promise<number> {
    const before = await this.threadTime();
    await this.page.evaluate(smallWork);
    return (await this.threadTime()) - before;
  }

  private async threadTime(): Promise<number> {
    const { metrics } = await this.devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'ThreadTime')?.value ?? Number.NaN);
  }

  /** All that was touched, in order. */
  async told(): Promise<readonly Answered[]> {
    const { traceEvents } = JSON.parse((await this.browser.stopTracing()).toString()) as { traceEvents: Event[] };
    return answersIn(traceEvents, this.words);
  }
}

declare global {
  interface Window {
    answered: number;
  }
}

/** Runs in the page: a mark at each touch, and one in the frame that shows what its click has changed first. */
function watch(): void {
  window.answered = 0;
  const begin = () => {
    const seen = new MutationObserver(() => {
      seen.disconnect();
      requestAnimationFrame(() => {
        performance.mark('answered');
        window.answered += 1;
      });
    });
    seen.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  };
  addEventListener('pointerdown', () => performance.mark('touched'), true);
  addEventListener('click', begin, true);
}

/** Runs in the page: as much of elements and their layout as a screen has. */
function smallWork(): void {
  const own = document.createElement('div');
  for (let i = 0; i < 300; i += 1) {
    const row = own.appendChild(document.createElement('p'));
    for (const text of ['camber', String(i)]) row.appendChild(document.createElement('span')).textContent = text;
  }
  document.body.append(own);
  own.getBoundingClientRect();
  own.remove();
}

/** Of a trace; times in µs, `tdur` of the thread's own. */
interface Event {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

function answersIn(all: readonly Event[], words: readonly string[]): readonly Answered[] {
  const isTouch = ({ name }: Event) => name === 'touched';
  const first = all.find(isTouch);
  const own = all
    .filter(({ pid, tid }) => pid === first?.pid && tid === first.tid)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const touches = own.filter(isTouch);
  return words.map((words, i) => {
    const start = touches[i]?.ts ?? Number.NaN;
    const mark = own.find(({ name, ts }) => name === 'answered' && ts > start)?.ts ?? Number.NaN;
    // The last that the page's thread does for a frame.
    const painted = own.find(({ name, ts }) => name === 'Layerize' && ts > mark);
    const end = painted ? painted.ts + (painted.dur ?? 0) : Number.NaN;
    let work = 0;
    let until = start;
    for (const { ph, ts, dur = 0, tdur = 0 } of own) {
      // What lies in another is in its time.
      if (ph !== 'X' || ts < until || ts > end) continue;
      work += tdur;
      until = ts + dur;
    }
    return { words, work: work / 1000, clock: (end - start) / 1000 };
  });
}
