/** A shop of sixty cars: rows come as they are looked at, and the next start shows the same first ones. */
import type { Page } from '@playwright/test';
import type { Everything } from '../../app/store/schema.ts';
import { carId, makeShop } from '../tools/shop.ts';
import { expect, openApp, test } from './harness.ts';

const CARS = 60;
const shop = makeShop({ cars: CARS, visits: 3, open: 2 });

/** Into the database that the app has made. */
const fill = (page: Page, all: Everything) =>
  page.evaluate(async (all) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open('cornerwright');
      request.addEventListener('success', () => done(request.result));
    });
    const transaction = database.transaction(Object.keys(all), 'readwrite');
    for (const [store, list] of Object.entries(all)) {
      for (const record of list) transaction.objectStore(store).put(record);
    }
    await new Promise((done) => transaction.addEventListener('complete', done));
    database.close();
  }, all);

test('a long list is drawn as far as it is seen, found in, and opened again where it was', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, shop);
  await page.reload();
  const list = page.locator('main.list');
  const rows = list.locator('.card');
  await expect(list).toHaveAttribute('aria-busy', 'false');
  await expect(rows.first()).toContainText('On the rack');
  // The practice car is one more.
  expect(await rows.count()).toBeLessThan(CARS);
  await expect(async () => {
    await page.mouse.wheel(0, 5000);
    await expect(rows).toHaveCount(CARS + 1, { timeout: 300 });
  }).toPass();

  const search = page.getByRole('searchbox');
  await search.fill('bench 17');
  await expect(rows).toHaveCount(1);
  await expect(rows).toContainText('as left');
  await search.fill('nobody');
  await expect(page.getByText('No car with “nobody” here.')).toBeVisible();

  const noted = await page.evaluate(() => localStorage.getItem('cornerwright-first-rows'));
  expect(JSON.parse(noted ?? '').slice(0, 2)).toEqual([carId(1), carId(0)]);
  // A car far down the list, opened at once: it is read before its turn.
  await page.goto(`${site.url}#/car/${carId(3)}`);
  await page.reload();
  await expect(page.getByText('Tarn estate 3')).toBeVisible();
  await expect(page.locator('.card', { hasText: 'Visit of' })).toHaveCount(3);
  await page.goto(`${site.url}#/settings`);
  await expect(page.getByText(`${CARS + 1} cars, ${shop.visits.length} visits`)).toBeVisible();
});
