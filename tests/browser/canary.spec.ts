/** The browser clears the records: under the open app, and between two starts. Real storage, cleared as a person clears it. */
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
