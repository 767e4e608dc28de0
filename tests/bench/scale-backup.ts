/** The built app, slowed down: a shop saved to a file, and that file restored into an empty phone. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import type { Everything } from '../../app/store/schema.ts';
import { canonical } from '../../core/records/canonical.ts';
import { fill, RATE, served, URL_OF_APP } from './scale-page.ts';

/** ms, and how large the file is, MB. */
export interface Backups {
  readonly exported: number;
  readonly exportFreeze: number;
  readonly megabytes: number;
  readonly inspected: number;
  readonly restored: number;
  readonly restoreFreeze: number;
  readonly undone: number;
  readonly undoFreeze: number;
}

/** @throws where what is restored is not what was exported */
export async function backupsOf(shop: Everything): Promise<Backups> {
  const folder = mkdtempSync(join(tmpdir(), 'cornerwright-scale-'));
  try {
    return await thereAndBack(shop, join(folder, 'one'), join(folder, 'other'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function thereAndBack(shop: Everything, file: string, again: string): Promise<Backups> {
  return served(async (browser) => {
    const from = await settings(browser, shop);
    const out = await saved(from, file);
    await from.context().close();
    const to = await settings(browser);
    const inspected = await timed(to, async () => {
      await to.getByLabel('Restore from a file').setInputFiles(file);
      await to.getByRole('button', { name: 'Restore it' }).waitFor({ timeout: 1_200_000 });
    });
    const restored = await timed(to, async () => {
      await to.getByRole('button', { name: 'Restore it' }).click();
      await to.getByText('Restored.').waitFor({ timeout: 1_200_000 });
      await to.getByText(`${shop.visits.length} visits`).first().waitFor({ timeout: 300_000 });
    });
    await saved(to, again);
    compare(file, again);
    await to.getByRole('button', { name: 'Undo the last restore' }).click();
    const undone = await timed(to, async () => {
      await to.getByRole('button', { name: 'Undo it' }).click({ timeout: 300_000 });
      await to.getByText('Undone.').waitFor({ timeout: 1_200_000 });
    });
    return {
      exported: out.time,
      exportFreeze: out.freeze,
      megabytes: readFileSync(file).length / 1e6,
      inspected: inspected.time,
      restored: restored.time,
      restoreFreeze: Math.max(inspected.freeze, restored.freeze),
      undone: undone.time,
      undoFreeze: undone.freeze,
    };
  });
}

/** The settings of a phone that holds a shop's records, or none. */
async function settings(browser: Browser, shop?: Everything): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    hasTouch: true,
    isMobile: true,
    serviceWorkers: 'block',
  });
  if (shop) await fill(context, shop);
  const page = await context.newPage();
  await page.addInitScript(() => {
    Object.assign(window, { freeze: 0 });
    new PerformanceObserver((list) => {
      const longest = Math.max(...list.getEntries().map(({ duration }) => duration));
      Object.assign(window, { freeze: Math.max((window as unknown as { freeze: number }).freeze, longest) });
    }).observe({ type: 'longtask' });
  });
  const devtools = await context.newCDPSession(page);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: RATE });
  await page.goto(`${URL_OF_APP}#/settings`);
  await page.getByRole('button', { name: 'Save everything to a file' }).waitFor({ timeout: 300_000 });
  await page.waitForTimeout(2000);
  return page;
}

async function timed(page: Page, work: () => Promise<void>): Promise<{ time: number; freeze: number }> {
  await page.evaluate(() => Object.assign(window, { freeze: 0 }));
  const start = performance.now();
  await work();
  const time = performance.now() - start;
  return { time, freeze: await page.evaluate<number>('window.freeze') };
}

async function saved(page: Page, file: string): Promise<{ time: number; freeze: number }> {
  const download = page.waitForEvent('download', { timeout: 1_200_000 });
  const timing = await timed(page, async () => {
    await page.getByRole('button', { name: 'Save everything to a file' }).click();
    await download;
  });
  await (await download).saveAs(file);
  return timing;
}

/** Record by record; the made-up car that each phone starts with is its own. */
function compare(one: string, other: string): void {
  const records = (file: string): string[] =>
    readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('[') && !line.includes('"practice":true'))
      .map((line) => canonical(JSON.parse(line)));
  const [a, b] = [records(one), records(other)];
  const differs = a.findIndex((line, at) => line !== b[at]);
  if (differs >= 0 || a.length !== b.length) throw new Error(`not equal: ${a.length} and ${b.length}, at ${differs}`);
}
