/** What the browser really needs for the first screen, compressed: what the size test can only read off the page. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, openApp, SUB_PATH, test } from './harness.ts';

const BUDGET = 60_000; // bytes

test.use({ serviceWorkers: 'block' });

test('the first screen needs under 60 kB of script and style', async ({ page, site }) => {
  const served: string[] = [];
  let total = 0;
  await page.route(/\.(js|css)$/, async (route) => {
    const file = new URL(route.request().url()).pathname.slice(SUB_PATH.length);
    total += gzipSync(readFileSync(join(site.folder, file))).length;
    // What is asked for beyond that, as the next screen is soon, gets no answer: the first one has to be there without it.
    if (total >= BUDGET) return;
    served.push(file);
    await route.continue();
  });
  await openApp(page, site);
  await expect(page.getByText('Practice car'), served.join(', ')).toBeVisible();
  expect(served.length).toBeGreaterThan(1);
});
