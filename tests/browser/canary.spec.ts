/** The browser clears the records: under the open app, and between two starts. Real storage, cleared as a person clears it. */
import { readFileSync } from 'node:fs';
import { expect, openApp, test } from './harness.ts';

test('records cleared under the app are written back, and said; gone at the start, they are said too', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  await page.keyboard.type('4.50');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  const devtools = await page.context().newCDPSession(page);
  const origin = new URL(site.url).origin;
  const clear = () => devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });

  await clear();
  await expect(page.getByRole('alert')).toContainText('cleared the records of this phone while the app was open');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'I have seen it' }).click();
  await page.keyboard.type('-0.60');
  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: 'LF Caster: 4.50' })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);

  await page.goto('about:blank');
  await clear();
  await openApp(page, site);
  await expect(page.getByRole('alert')).toContainText('The records of this phone are gone');
  await page.getByRole('button', { name: 'I have seen it' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('records cleared while they are read: the screen says so, and what was read by then goes to a file', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await expect(page.getByText('Practice car')).toBeVisible();
  await expect(page.locator('main.list')).toHaveAttribute('aria-busy', 'false');
  await page.addInitScript(() => {
    const { getAll } = IDBObjectStore.prototype;
    let isDone = false;
    IDBObjectStore.prototype.getAll = function (...args) {
      // Of the rest, the cars come first: another hand's transaction waits for them, and comes before the next slice.
      if (!isDone && this.name === 'cars') {
        isDone = true;
        indexedDB.open('cornerwright').onsuccess = ({ target }) => {
          const { result } = target as IDBOpenDBRequest;
          const transaction = result.transaction([...result.objectStoreNames], 'readwrite');
          for (const name of result.objectStoreNames) transaction.objectStore(name).clear();
        };
      }
      return getAll.apply(this, args);
    };
  });
  await page.reload();
  await expect(page.getByRole('alert')).toContainText('has cleared the records of this phone');
  await expect(page.getByText('1 car, 0 visits, 0 readings')).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save these to a file' }).click();
  expect(readFileSync(await (await download).path(), 'utf8')).toContain('practice-car');
  await page.screenshot({ path: test.info().outputPath('rescue.png') });
});
