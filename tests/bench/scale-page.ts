/** The built app over a shop's records in Chromium, slowed down: how long a start, a key of the search and a history take. */
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import type { Everything } from '../../app/store/schema.ts';
import { serveFolder } from '../../app/terminal/serve.ts';
import { findOrInstallChromium } from '../tools/chromium.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const PORT = Number(process.env.CORNERWRIGHT_PORT ?? 4395);
export const URL_OF_APP = `http://localhost:${PORT}/`;
export const RATE = 4;
/** Records handed to the page at once. */
const BATCH = 4000;
const WORDS = 'bench17';
/** Of which the shortest counts. */
const STARTS = 4;

/** ms */
export interface Start {
  readonly rows: number;
  readonly whole: number;
  readonly freeze: number;
  readonly key: number;
  readonly history: number;
}

/** Work on the built app, in a browser that is ended with it. */
export async function served<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const server = await serveFolder({ folder: DIST, port: PORT });
  const browser = await chromium.launch({ executablePath: findOrInstallChromium(), chromiumSandbox: false });
  try {
    return await work(browser);
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}

/** @param car the one whose history is opened */
export function startOf(shop: Everything, car: string): Promise<Start> {
  return served(async (browser) => {
    const context = await browser.newContext({
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      isMobile: true,
      serviceWorkers: 'block',
    });
    await fill(context, shop);
    // What a start leaves for the next is there at the second.
    const rows: number[] = [];
    for (let n = 0; n <= STARTS; n += 1) {
      const { page, seen } = await started(context);
      if (n > 0) rows.push(seen.rows ?? Number.NaN);
      else await isWhole(page);
      await page.close();
    }
    const { page, seen } = await started(context);
    const whole = await isWhole(page);
    await page.waitForTimeout(1000);
    const { freeze } = await page.evaluate<Seen>('window.seen');
    const key = await searched(page);
    const history = await historyOf(page, car);
    // The least of all: what else this machine does is no part of it.
    return { rows: Math.min(...rows, seen.rows ?? Number.NaN), whole, freeze, key, history };
  });
}

/** Into the database that the app has made. */
export async function fill(context: BrowserContext, shop: Everything): Promise<void> {
  const page = await context.newPage();
  await page.goto(URL_OF_APP);
  await page.locator('.card').first().waitFor();
  for (const [store, list] of Object.entries(shop)) {
    for (let at = 0; at < list.length; at += BATCH) {
      await page.evaluate(
        async ({ store, text }) => {
          const database = await new Promise<IDBDatabase>((done) => {
            const request = indexedDB.open('cornerwright');
            request.addEventListener('success', () => done(request.result));
          });
          const transaction = database.transaction(store, 'readwrite');
          for (const record of JSON.parse(text)) transaction.objectStore(store).put(record);
          await new Promise((done) => transaction.addEventListener('complete', done));
          database.close();
        },
        { store, text: JSON.stringify(list.slice(at, at + BATCH)) },
      );
    }
  }
  await page.close();
}

interface Seen {
  rows?: number;
  freeze: number;
}

async function started(context: BrowserContext) {
  const page = await context.newPage();
  await page.addInitScript(() => {
    const seen: Seen = { freeze: 0 };
    Object.assign(window, { seen });
    new MutationObserver(() => {
      if (document.querySelector('main .card')) seen.rows ??= performance.now();
    }).observe(document, { childList: true, subtree: true });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) {
        // What runs before the first rows is in their time.
        if (startTime > (seen.rows ?? Number.POSITIVE_INFINITY)) seen.freeze = Math.max(seen.freeze, duration);
      }
    }).observe({ type: 'longtask' });
  });
  const devtools = await context.newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: RATE });
  await page.goto(URL_OF_APP);
  await page.locator('main .card').first().waitFor({ timeout: 300_000 });
  return { page, seen: await page.evaluate<Seen>('window.seen') };
}

/** ms from the address until everything has been read. */
async function isWhole(page: Page): Promise<number> {
  await page.locator('main[aria-busy=true]').waitFor({ state: 'detached', timeout: 300_000 });
  return page.evaluate(() => performance.now());
}

/** Each key until the second frame after it. */
async function searched(page: Page): Promise<number> {
  return page.evaluate(async (words) => {
    const input = document.querySelector('input[type=search]') as HTMLInputElement;
    const times: number[] = [];
    input.focus();
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
    for (let n = 1; n <= words.length; n += 1) {
      const start = performance.now();
      input.value = words.slice(0, n);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      times.push(performance.now() - start);
    }
    return Math.max(...times);
  }, WORDS);
}

async function historyOf(page: Page, car: string): Promise<number> {
  const opened = async (): Promise<number> => {
    await page.evaluate((id) => location.assign(`#/car/${id}`), car);
    await page.getByRole('button', { name: 'History' }).waitFor();
    return page.evaluate(async (id) => {
      const start = performance.now();
      const shown = new Promise<void>((done) => {
        new MutationObserver(() => document.querySelector('.angle-line') && done()).observe(document, {
          childList: true,
          subtree: true,
        });
      });
      location.assign(`#/car/${id}/history`);
      await shown;
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      return performance.now() - start;
    }, car);
  };
  // Its code is fetched at the first.
  await opened();
  return opened();
}
