/** A shop of sixty cars: rows come as they are looked at, and the next start shows the same first ones. */
import { carId, makeShop } from '../tools/shop.ts';
import { fill } from './fill.ts';
import { expect, openApp, test } from './harness.ts';

const CARS = 60;
const shop = makeShop({ cars: CARS, visits: 3, open: 2 });

test('a long list is drawn as far as it is seen, found in, and opened again where it was', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, shop);
  const list = page.locator('main.list');
  const rows = list.locator('.card');
  await expect(list).toHaveAttribute('aria-busy', 'false');
  await expect(rows.first()).toContainText('Open since');
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
