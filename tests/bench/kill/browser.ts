/** A Chromium over one profile, killed whole and opened again: at once, or in the growth of its database's log. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { removeProfile } from '../../browser/profile.ts';
import { browserProcess } from '../../tools/browser-process.ts';
import { findOrInstallChromium } from '../../tools/chromium.ts';
import { type Noted, note } from './notes.ts';

const newProfile = (): string => mkdtempSync(join(tmpdir(), 'cornerwright-kill-'));

export class Mortal {
  #profile = newProfile();
  readonly #noted: (what: Noted) => void;
  #context: BrowserContext | undefined;
  #gone: Promise<unknown> = Promise.resolve();
  #id = 0;
  #watch: Worker | undefined;

  /** @param noted told what the page did and showed, outside of all that can be killed */
  constructor(noted: (what: Noted) => void) {
    this.#noted = noted;
  }

  async open(): Promise<Page> {
    const context = await chromium.launchPersistentContext(this.#profile, {
      executablePath: findOrInstallChromium(),
      chromiumSandbox: false,
      viewport: { width: 360, height: 740 },
      serviceWorkers: 'block',
      locale: 'en-GB',
    });
    this.#context = context;
    this.#gone = new Promise((done) => context.once('close', done));
    this.#id = await browserProcess(context);
    context.setDefaultTimeout(90_000);
    await context.exposeFunction('noted', (text: string) => this.#noted(JSON.parse(text) as Noted));
    // Some compilers keep the names of functions by a helper of theirs, which the page has not.
    await context.addInitScript('globalThis.__name ??= (named) => named');
    await context.addInitScript(note);
    return context.pages()[0] ?? context.newPage();
  }

  /** Kills it by itself once the log has grown by so many bytes; none: once a new log is begun. */
  async killAtLog(grown: number): Promise<void> {
    const folder = join(this.#profile, 'Default', 'IndexedDB');
    const workerData = { folder, grown, process: this.#id };
    this.#watch = new Worker(new URL('./watch-log.mjs', import.meta.url), { workerData });
    this.#watch.once('error', (error) => console.log(`the log is not watched: ${error.message}`));
    await new Promise((done) => this.#watch?.once('online', done));
  }

  /** SIGKILL, where it still lives, and waits until it is gone. True where it had been killed already. */
  async kill(): Promise<boolean> {
    if (!this.#context) return false;
    await this.#watch?.terminate();
    this.#watch = undefined;
    let wasDead = false;
    try {
      process.kill(this.#id, 'SIGKILL');
    } catch {
      wasDead = true;
    }
    await this.#gone;
    this.#context = undefined;
    return wasDead;
  }

  /** Ends when it is gone, whoever killed it. */
  get gone(): Promise<unknown> {
    return this.#gone;
  }

  /** Opens over a profile in which nothing has been yet. */
  async openAfresh(): Promise<Page> {
    await this.remove();
    this.#profile = newProfile();
    return this.open();
  }

  async remove(): Promise<void> {
    await this.kill();
    removeProfile(this.#profile);
  }
}
