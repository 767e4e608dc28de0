/**
 * Half an entry at the end of the log of the browser's databases, as a kill in the middle of its writing leaves it. The log
 * has the form that LevelDB's documentation gives (doc/log_format.md: checksum, length, type, then so many bytes).
 */
import { appendFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { longOf } from './long-of.ts';
import { MortalBrowser, type StorePage, serveStorePage } from './store-page.ts';

test.describe.configure({ mode: 'default' });

let served: StorePage;
// biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures wanted from the pattern.
test.beforeAll(async ({}, info) => {
  served = await serveStorePage(info.parallelIndex);
});
test.afterAll(() => served.remove());

/** Bytes of a block; an entry does not reach over its end. */
const BLOCK = 32_768;
const HEAD = 7;

// In `npm test` tests/store/writer.test.ts has the log written afresh, in memory.
longOf(test)('what is saved after a kill that tore the log is there after the next two starts', async () => {
  test.setTimeout(120_000);
  const browser = new MortalBrowser();
  try {
    expect(await saveTen(browser, 'before')).toBe(0);
    expect(tear(browser.profile)).toBe(1);
    expect(await saveTen(browser, 'after'), 'half an entry takes nothing with it').toBe(10);
    expect(await saveTen(browser, 'later'), 'nor does what was written behind it').toBe(20);
    expect(await saveTen(browser, 'last')).toBe(30);
  } finally {
    await browser.remove();
  }
});

/** Ten records said to be saved, then a kill. @returns how many there were before */
async function saveTen(browser: MortalBrowser, name: string): Promise<number> {
  const page = await browser.open(served.url);
  const before = await page.evaluate(async (name) => {
    const store = window.createStore();
    const { drafts } = await store.load();
    for (let n = 0; n < 10; n += 1) {
      await store.put('drafts', { id: `${name}-${n}`, texts: {}, changed: store.now() });
    }
    return drafts.length;
  }, name);
  await browser.kill();
  return before;
}

/** @returns of how many logs */
function tear(profile: string): number {
  const folder = join(profile, 'Default', 'IndexedDB');
  const logs = readdirSync(folder).flatMap((origin) =>
    readdirSync(join(folder, origin))
      .filter((name) => name.endsWith('.log'))
      .map((name) => join(folder, origin, name)),
  );
  for (const log of logs) {
    const room = BLOCK - (statSync(log).size % BLOCK) - HEAD;
    // Whole, it would fill the block: what comes behind it is taken for its other half.
    const entry = Buffer.alloc(HEAD + Math.min(50, Math.floor(room / 2)), 7);
    entry.writeUInt32LE(0x1234_5678, 0);
    entry.writeUInt16LE(room, 4);
    entry.writeUInt8(1, 6);
    appendFileSync(log, entry);
  }
  return logs.length;
}
