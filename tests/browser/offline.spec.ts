/** The built app opens with the network off, is installable, and takes an update only when it is accepted. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { chromium } from '@playwright/test';
import { expect, goOffline, longTest, openApp, type Site, SUB_PATH, test, waitForServiceWorker } from './harness.ts';
import { removeProfile } from './profile.ts';

test.use({ serviceWorkers: 'allow' });

test('opens with the network off after one visit from an empty profile', async ({ page, site }) => {
  await openApp(page, site);
  expect(new URL(page.url()).pathname).toBe(SUB_PATH);
  await waitForServiceWorker(page);
  const shown = (await page.locator('main').first().textContent()) ?? '';
  expect(shown.trim()).not.toBe('');
  await goOffline(page, site);
  await page.reload();
  await expect(page.locator('main').first()).toHaveText(shown);
  const again = await page.context().newPage();
  await again.goto(site.url);
  await expect(again.locator('main').first()).toBeVisible();
});

test('keeps every built file, so that a screen opened for the first time offline is there too', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await waitForServiceWorker(page);
  await goOffline(page, site);
  const files = readdirSync(site.folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
    .map((entry) => join(entry.parentPath, entry.name).slice(site.folder.length + 1));
  expect(files.length).toBeGreaterThan(5);
  const statuses = await page.evaluate(
    (names) => Promise.all(names.map(async (name) => `${name} ${(await fetch(name)).status}`)),
    files,
  );
  expect(statuses).toEqual(files.map((name) => `${name} 200`));
});

test.describe('without a service worker', () => {
  test.use({ serviceWorkers: 'block' });

  test('the same reload fails, so the one above proves something', async ({ page, site }) => {
    await openApp(page, site);
    await goOffline(page, site);
    await expect(page.reload()).rejects.toThrow(/ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED)/);
  });
});

test('nothing is asked of any other origin', async ({ page, site }) => {
  const strangers: string[] = [];
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (/^https?:$/.test(url.protocol) && url.origin !== new URL(site.url).origin) strangers.push(request.url());
  });
  await openApp(page, site);
  await waitForServiceWorker(page);
  expect(strangers).toEqual([]);
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toContain("default-src 'self'");
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
});

test.describe('an update', () => {
  test('waits, is offered, and reloads the page once and only after it is accepted', async ({ page, site }) => {
    await openApp(page, site);
    await waitForServiceWorker(page);
    const loads = countLoads(page);
    publishNewer(site);
    await page.reload();
    const accept = page.getByRole('button', { name: 'Use it now' });
    await expect(accept).toBeVisible({ timeout: 20_000 });
    expect(loads()).toBe(1);
    // The old version stays, over another reload too, until it is accepted.
    await page.reload();
    await expect(accept).toBeVisible({ timeout: 20_000 });
    expect(await page.title()).not.toBe(NEWER);
    expect(loads()).toBe(2);

    await accept.click();
    await expect(page).toHaveTitle(NEWER, { timeout: 20_000 });
    await expect(page.locator('main').first()).toBeVisible();
    await expect(accept).toBeHidden();
    // Long enough for a second reload to show, if there were one.
    await page.waitForTimeout(1_500);
    expect(loads()).toBe(3);
  });

  test('taken with a reading half typed keeps every digit and the field it stood in', async ({ page, site }) => {
    await openApp(page, site);
    await waitForServiceWorker(page);
    await page.getByRole('link', { name: /Practice car/ }).click();
    await page.getByRole('button', { name: 'New visit' }).click();
    for (const key of ['2', 'decimal point', '5', '1', 'change sign', '0', 'decimal point', '4']) {
      await page.getByRole('button', { name: key, exact: true }).click();
    }
    // The second field is half typed: one decimal of two.
    const grid = page.locator('.reading-grid').first();
    const before = (await grid.textContent()) ?? '';
    expect(before).toContain('2.51');
    expect(before).toMatch(/[−-]0\.4/);
    publishNewer(site);
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await page.getByRole('button', { name: 'Use it now' }).click({ timeout: 20_000 });
    await expect(page).toHaveTitle(NEWER, { timeout: 20_000 });
    await expect(grid).toHaveText(before);
    await page.getByRole('button', { name: '7', exact: true }).click();
    await expect(grid).toHaveText(/[−-]0\.47/);
  });

  // In `npm test` the test above the last counts the reloads of the tab itself.
  longTest('accepted in one tab does not reload another, which offers it too', async ({ page, site }) => {
    await openApp(page, site);
    await waitForServiceWorker(page);
    const other = await page.context().newPage();
    await openApp(other, site);
    await waitForServiceWorker(other);
    const loads = countLoads(other);
    publishNewer(site);
    await page.reload();
    await page.getByRole('button', { name: 'Use it now' }).click({ timeout: 20_000 });
    await expect(page).toHaveTitle(NEWER, { timeout: 20_000 });
    const accept = other.getByRole('button', { name: 'Use it now' });
    await expect(accept).toBeVisible({ timeout: 20_000 });
    expect(loads()).toBe(0);
    await accept.click();
    await expect(other).toHaveTitle(NEWER, { timeout: 20_000 });
  });
});

test.describe('installable', () => {
  test('by the browser’s own judgement', async ({ site }) => {
    expect(await installabilityErrors(site)).toEqual([]);
  });

  test('and that judgement is a real one: without its icons the app is refused', async ({ site }) => {
    const file = join(site.folder, 'manifest.webmanifest');
    const manifest = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    writeFileSync(file, JSON.stringify({ ...manifest, icons: [] }));
    expect((await installabilityErrors(site)).length).toBeGreaterThan(0);
  });
});

const NEWER = 'Cornerwright, newer';

/** Makes the served copy a newer build: another page title, and the service worker's revision of the page. */
function publishNewer(site: Site): void {
  const page = join(site.folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace(/<title>.*?<\/title>/, `<title>${NEWER}</title>`));
  const worker = join(site.folder, 'sw.js');
  const source = readFileSync(worker, 'utf8');
  const newer = source.replace(/(url:\s*["'`]index\.html["'`],\s*revision:\s*["'`])[0-9a-f]+/, '$1abcdef0123456789');
  expect(newer, 'the revision of index.html in sw.js').not.toBe(source);
  writeFileSync(worker, newer);
}

function countLoads(page: Page): () => number {
  let loads = 0;
  page.on('load', () => {
    loads += 1;
  });
  return () => loads;
}

/** Chromium judges this only in a profile that lasts, and only the full browser does. */
async function installabilityErrors(site: Site): Promise<unknown[]> {
  const profile = mkdtempSync(join(tmpdir(), 'cornerwright-profile-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM_PATH,
    chromiumSandbox: false,
    args: ['--headless=new'],
  });
  try {
    const page = await context.newPage();
    await openApp(page, site);
    await waitForServiceWorker(page);
    const session = await context.newCDPSession(page);
    return (await session.send('Page.getInstallabilityErrors')).installabilityErrors;
  } finally {
    await context.close();
    removeProfile(profile);
  }
}
