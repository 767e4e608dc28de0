/** Records put into the database that the app has made, beside what is there; then the app is opened again. */
import type { Page } from '@playwright/test';
import type { Everything } from '../../app/store/schema.ts';

export async function fill(page: Page, all: Partial<Everything>, { reload = true } = {}): Promise<void> {
  await page.evaluate(async (all) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const request = indexedDB.open('cornerwright');
      request.addEventListener('success', () => done(request.result));
    });
    // An app that starts for the first time brings the practice car: what is put there before would be written over.
    const isThere = () =>
      new Promise<boolean>((told) => {
        const count = database.transaction('cars').objectStore('cars').count();
        count.addEventListener('success', () => told(count.result > 0));
      });
    // What it is not done with it writes again as its page is left.
    const isDone = () => (document.querySelector('.save-mark')?.textContent ?? 'saved').trim() === 'saved';
    while (!(await isThere()) || !isDone()) await new Promise((wait) => setTimeout(wait, 20));
    const transaction = database.transaction(Object.keys(all), 'readwrite');
    for (const [store, list] of Object.entries(all)) {
      for (const record of list) transaction.objectStore(store).put(record);
    }
    await new Promise((done) => transaction.addEventListener('complete', done));
    database.close();
  }, all);
  if (reload) await page.reload();
}
