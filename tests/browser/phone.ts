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

/** Types figures on the app's own keypad, one touch a character; the fields pass on by themselves when full. */
export async function typeOnKeypad(page: Page, text: string): Promise<void> {
  for (const character of text) {
    await page.getByRole('button', { name: KEYS[character] ?? character, exact: true }).tap();
  }
}

/** A press of a button by its words. */
export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).first().tap();
