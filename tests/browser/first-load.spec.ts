/** What the browser really fetched for the first screen, compressed: what the size test can only read off the page. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, openApp, SUB_PATH, test } from './harness.ts';

const BUDGET = 60_000; // bytes

test.use({ serviceWorkers: 'block' });

test('the first screen needs under 60 kB of script and style', async ({ page, site }) => {
  const fetched = new Set<string>();
  page.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (/\.(js|css)$/.test(pathname)) fetched.add(pathname.slice(SUB_PATH.length));
  });
  await openApp(page, site);
  const sizes = [...fetched].map((file) => gzipSync(readFileSync(join(site.folder, file))).length);
  expect(sizes.length).toBeGreaterThan(1);
  const total = sizes.reduce((sum, bytes) => sum + bytes, 0);
  expect(total, [...fetched].join(', ')).toBeLessThan(BUDGET);
});
