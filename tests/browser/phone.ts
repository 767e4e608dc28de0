/** A phone with a profile of its own: opened, put away, killed and opened again; it counts what is touched. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, expect, type Page } from '@playwright/test';
import { removeProfile } from './profile.ts';

export interface Touches {
  /** Digits, the point and ± of the keypad. */
  readonly digits: number;
  readonly others: number;
}

export class Phone {
  private readonly profile = mkdtempSync(join(tmpdir(), 'cornerwright-phone-'));
  private context: BrowserContext | undefined;
  /** Uncaught errors and console errors since the phone was made; a fetch that fails offline is none. */
  readonly errors: string[] = [];

  async open(url: string, { offline = false } = {}): Promise<Page> {
    this.context = await chromium.launchPersistentContext(this.profile, {
      executablePath: process.env.CHROMIUM_PATH as string,
      chromiumSandbox: false,
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      isMobile: true,
      locale: 'en-GB',
      timezoneId: 'Europe/London',
    });
    this.context.on('weberror', (error) => this.errors.push(String(error.error())));
    this.context.on('console', (message) => {
      if (message.type() === 'error' && !message.text().includes('net::ERR_')) this.errors.push(message.text());
    });
    this.context.setDefaultTimeout(15_000);
    await this.context.addInitScript(countTouches);
    if (offline) await this.context.setOffline(true);
    const page = await this.context.newPage();
    await page.goto(url);
    await expect(page.locator('main').first()).toBeVisible();
    return page;
  }

  /** Put away as a person does. */
  async close(): Promise<void> {
    await this.context?.close();
    this.context = undefined;
  }

  /** SIGKILL to the browser that this phone started. */
  async kill(): Promise<void> {
    if (!this.context) return;
    const devtools = await this.context.browser()?.newBrowserCDPSession();
    const processes = (await devtools?.send('SystemInfo.getProcessInfo'))?.processInfo ?? [];
    const id = processes.find(({ type }) => type === 'browser')?.id;
    if (!id) throw new Error('Chromium does not say which process it is');
    const gone = new Promise((done) => this.context?.once('close', done));
    process.kill(id, 'SIGKILL');
    await gone;
    this.context = undefined;
  }

  async remove(): Promise<void> {
    await this.close();
    removeProfile(this.profile);
  }
}

declare global {
  interface Window {
    touches: { digits: number; others: number };
  }
}

/** Runs in the page: every click that lands on it, sorted by whether it types a figure. */
function countTouches(): void {
  window.touches = { digits: 0, others: 0 };
  addEventListener(
    'click',
    (event) => {
      const key = event.target instanceof Element ? event.target.closest('.keypad-key') : null;
      const figure =
        key && /^([0-9]|decimal point|change sign|degrees, then minutes)$/.test(key.ariaLabel ?? key.textContent ?? '');
      window.touches[figure ? 'digits' : 'others'] += 1;
    },
    true,
  );
}

export const touchesOf = (page: Page): Promise<Touches> => page.evaluate(() => ({ ...window.touches }));

const KEYS: Readonly<Record<string, string>> = { '.': 'decimal point', '−': 'change sign' };

interface Place {
  readonly x: number;
  readonly y: number;
}

interface Sought {
  readonly names: Readonly<Record<string, string>>;
  /** Of the glass, px: just after it was turned, the page may not know yet. */
  readonly width: number | undefined;
}

/** In the page: where the keys of these names are, once all of them are there, at rest, and under nothing else. */
async function placesOf({ names, width }: Sought): Promise<Record<string, Place>> {
  const look = () =>
    Object.entries(names).map(([character, name]) => {
      const key = [...document.querySelectorAll<HTMLButtonElement>('.keypad-key')].find(
        (one) => (one.ariaLabel ?? one.textContent) === name,
      );
      const { x, y, width, height } = key?.getBoundingClientRect() ?? new DOMRect();
      const place = { x: x + width / 2, y: y + height / 2 };
      const isFree = key && !key.disabled && key.contains(document.elementFromPoint(place.x, place.y));
      return [character, isFree ? place : undefined] as const;
    });
  const until = performance.now() + 15_000;
  for (let before = ''; performance.now() < until; ) {
    await new Promise((done) => requestAnimationFrame(done));
    const now = look();
    if (innerWidth === (width ?? innerWidth) && now.every(([, place]) => place) && JSON.stringify(now) === before) {
      return Object.fromEntries(now) as Record<string, Place>;
    }
    before = JSON.stringify(now);
  }
  throw new Error(`no key at rest for ${Object.keys(names).filter((_, i) => !look()[i]?.[1])}`);
}

/**
 * Types figures on the app's own keypad, one touch a character; the fields pass on by themselves when full. The hand has a
 * clock of its own: `gap` ms are between its touches as the browser counts them, however long a busy machine takes.
 *
 * @param first when it touches first, ms of the epoch
 * @returns when it touched last
 */
export async function typeOnKeypad(page: Page, text: string, { first = Date.now(), gap = 30 } = {}): Promise<number> {
  const devtools = await page.context().newCDPSession(page);
  let at = first - gap;
  const names = Object.fromEntries([...text].map((character) => [character, KEYS[character] ?? character]));
  const places = await page.evaluate(placesOf, { names, width: page.viewportSize()?.width });
  for (const character of text) {
    const touchPoints = [places[character] as Place];
    at += gap;
    const timestamp = at / 1000;
    await Promise.all([
      devtools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints, timestamp }),
      devtools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [], timestamp }),
    ]);
  }
  await devtools.detach();
  return at;
}

/** A press of a button by its words. */
export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).first().tap();
