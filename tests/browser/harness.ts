/**
 * What every browser test stands on: a copy of the built app served under a sub-path by a server of the
 * test's own, on a port fixed by worker (random ones collided), and ways to be truly offline.
 */
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { test as base, expect, type Page } from '@playwright/test';
import { serveFolder } from '../../app/terminal/serve.ts';
import { longOf } from './long-of.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
/** Two checkouts that are tested at the same time each take ports of their own. */
const FIRST_PORT = Number(process.env.CORNERWRIGHT_PORT ?? 4310);
/** A static host rarely gives an app its root. */
export const SUB_PATH = '/shop/tools/';

export class Site {
  private server: Server | undefined;
  private constructor(
    /** The copy that is served: a test may change it to be a newer build. */
    readonly folder: string,
    private readonly port: number,
  ) {}

  static async start(port: number): Promise<Site> {
    if (!existsSync(join(DIST, 'sw.js'))) throw new Error('dist/sw.js is missing: run "npm run build" first');
    const folder = mkdtempSync(join(tmpdir(), 'cornerwright-site-'));
    cpSync(DIST, folder, { recursive: true });
    const site = new Site(folder, port);
    await site.up();
    return site;
  }

  get url(): string {
    return `http://localhost:${this.port}${SUB_PATH}`;
  }

  async up(): Promise<void> {
    this.server = await serveFolder({ folder: this.folder, port: this.port, base: SUB_PATH });
  }

  /** Takes the host off the network: nothing can be fetched, by a page or by its service worker. */
  async down(): Promise<void> {
    const { server } = this;
    if (!server) return;
    this.server = undefined;
    const closed = new Promise((done) => server.close(done));
    server.closeAllConnections();
    await closed;
  }

  async remove(): Promise<void> {
    await this.down();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

interface Fixtures {
  site: Site;
  /** Fails the test on an uncaught error, a console error or a refusal of the content policy. */
  noPageErrors: undefined;
}

export const test = base.extend<Fixtures>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures wanted from the pattern.
  site: async ({}, use, info) => {
    const site = await Site.start(FIRST_PORT + info.parallelIndex);
    await use(site);
    await site.remove();
  },
  noPageErrors: [
    async ({ context }, use) => {
      const errors: string[] = [];
      context.on('weberror', (error) => errors.push(String(error.error())));
      context.on('console', (message) => {
        // A refused fetch is what an offline test asks for.
        if (message.type() === 'error' && !message.text().includes('net::ERR_')) errors.push(message.text());
      });
      await use(undefined);
      expect(errors, 'errors on the page').toEqual([]);
    },
    { auto: true },
  ],
});

export const longTest = longOf(test);

export { expect };

/** The big touch that says that the job under way is made, or set by the rack: it names it. */
export const MADE = /^(LF|RF|LR|RR|Front|Rear) .* (made|set)(,|$)/;

/** The step in which the car is measured again, not those in which it was. */
export const REMEASURE = /^Re-measure(?!d)/;

/** Opens the app and waits until it shows its first screen. */
export async function openApp(page: Page, site: Site, hash = ''): Promise<void> {
  await page.goto(site.url + hash);
  await expect(page.locator('main')).toBeVisible();
}

/** Waits until a service worker controls the page: from here on it opens with the network off. */
export async function waitForServiceWorker(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated', undefined, {
    timeout: 15_000,
  });
}

/** Network off: the browser says offline and the host is gone too, so a service worker can't cheat. */
export async function goOffline(page: Page, site: Site): Promise<void> {
  await page.context().setOffline(true);
  await site.down();
}

export async function goOnline(page: Page, site: Site): Promise<void> {
  await site.up();
  await page.context().setOffline(false);
}
