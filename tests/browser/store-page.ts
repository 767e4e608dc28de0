/** Builds `pages/store.ts` as the app is built, and serves it; starts a Chromium that can be killed. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium, type Page } from '@playwright/test';
import { build } from 'vite';
import { serveFolder } from '../../app/terminal/serve.ts';
import { browserProcess } from '../tools/browser-process.ts';
import { removeProfile } from './profile.ts';

/** Past those of the app's own site: see `harness.ts`. */
const FIRST_PORT = Number(process.env.CORNERWRIGHT_PORT ?? 4310) + 30;
const POLICY = "default-src 'self'; script-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'none'";

export interface StorePage {
  readonly url: string;
  remove(): Promise<void>;
}

export async function serveStorePage(worker: number): Promise<StorePage> {
  const folder = mkdtempSync(join(tmpdir(), 'cornerwright-store-'));
  await build({
    configFile: false,
    logLevel: 'error',
    base: './',
    worker: { format: 'es' },
    build: {
      outDir: folder,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      target: 'es2022',
      rolldownOptions: {
        input: fileURLToPath(new URL('./pages/store.ts', import.meta.url)),
        output: { entryFileNames: 'page.js' },
      },
    },
  });
  const policy = `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`;
  const page = `<!doctype html><title>store</title>${policy}<script type="module" src="./page.js"></script>`;
  writeFileSync(join(folder, 'index.html'), page);
  const port = FIRST_PORT + worker;
  const server = await serveFolder({ folder, port, base: '/shop/' });
  return {
    url: `http://localhost:${port}/shop/`,
    async remove() {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A Chromium over one profile that is killed and opened again. */
export class MortalBrowser {
  readonly profile = mkdtempSync(join(tmpdir(), 'cornerwright-profile-'));
  private context: BrowserContext | undefined;
  private id = 0;

  async open(url: string): Promise<Page> {
    this.context = await chromium.launchPersistentContext(this.profile, {
      executablePath: process.env.CHROMIUM_PATH as string,
      chromiumSandbox: false,
    });
    this.id = await browserProcess(this.context);
    const page = await this.context.newPage();
    await page.goto(url);
    await page.waitForFunction(() => 'createStore' in window);
    return page;
  }

  /** SIGKILL to the browser that this object started, and waits until it is gone. */
  async kill(): Promise<void> {
    if (!this.context) return;
    const gone = new Promise((done) => this.context?.once('close', done));
    process.kill(this.id, 'SIGKILL');
    await gone;
    this.context = undefined;
  }

  async remove(): Promise<void> {
    await this.kill();
    removeProfile(this.profile);
  }
}
