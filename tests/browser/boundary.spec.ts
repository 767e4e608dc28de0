/** Records that no screen can draw, as an older build or another hand may have left them: they cost their own part, no more. */
import type { Page } from '@playwright/test';
import { expect, test } from './harness.ts';

/** Puts records into the database beside the app's code, then opens it again. */
async function spoil(page: Page, records: readonly (readonly [store: string, record: unknown])[]): Promise<void> {
  await page.evaluate(async (all) => {
    const database = await new Promise<IDBDatabase>((done, fail) => {
      const request = indexedDB.open('cornerwright');
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
    const transaction = database.transaction([...database.objectStoreNames], 'readwrite');
    for (const [store, record] of all) transaction.objectStore(store).put(record);
    await new Promise((done) => {
      transaction.oncomplete = done;
    });
    database.close();
  }, records);
  await page.reload();
}

const axle = { suspension: { kind: 'strut', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: true };
const car = (id: string, label: unknown, more: object = {}) => ({
  ...{ id, changed: '2026-01-01T08:00:00Z', spec: {} },
  car: { id, label, wheel: { rimDiameter: 400 }, front: axle, rear: axle, ...more },
});

test('a car that cannot be drawn costs its row; the others, the keypad and the backup stay', async ({ page, site }) => {
  await page.goto(site.url);
  await expect(page.getByText('Practice car')).toBeVisible();
  await spoil(page, [
    ['cars', { ...car('bad', 'Bad'), car: null }],
    ['cars', car('good', 'Whin Six', { plate: 7 })],
    ['preferences', { id: 'drawer', value: { counted: true, shims: [null] } }],
  ]);
  await expect(page.getByText('A car cannot be shown')).toBeVisible();
  await expect(page.getByText('Whin Six')).toBeVisible();
  await expect(page.getByText('Practice car')).toBeVisible();

  await page.goto(`${site.url}#/car/bad`);
  await expect(page.getByRole('alert')).toHaveText('This screen cannot be shown');
  await page.getByRole('link', { name: 'To the backup' }).click();
  await expect(page.getByText('This cannot be shown')).toBeVisible();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save everything to a file' }).click();
  await saved;
  await page.goto(`${site.url}#/car/good`);
  await expect(page.getByRole('heading', { name: 'Whin Six' })).toBeVisible();
});
