/** The store and the engine's worker in a real browser: kills, tabs, and the page that is left. */
import { expect, test } from '@playwright/test';
import { longOf } from './long-of.ts';
import { MortalBrowser, type StorePage, serveStorePage } from './store-page.ts';

// The page is built once, for all of them.
test.describe.configure({ mode: 'default' });

let served: StorePage;
// biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures wanted from the pattern.
test.beforeAll(async ({}, info) => {
  served = await serveStorePage(info.parallelIndex);
});
test.afterAll(() => served.remove());

const KILLS = 6;
const longTest = longOf(test);

// In `npm test` kill.spec.ts kills the whole app in what hands do.
longTest(`every acknowledged write is there after each of ${KILLS} kills`, async () => {
  test.setTimeout(120_000);
  const browser = new MortalBrowser();
  const acknowledged = new Set<string>();
  let duringWrites = 0;
  try {
    for (let round = 0; round < KILLS; round += 1) {
      const page = await browser.open(served.url);
      const before = acknowledged.size;
      await page.exposeFunction('acknowledge', (id: string) => acknowledged.add(id));
      await page.evaluate(async (round) => {
        const store = window.createStore();
        await store.load();
        // A kill loses nothing, so nothing may be said to be lost.
        if (store.loss.value) throw new Error(`said to be lost: ${JSON.stringify(store.loss.value)}`);
        const writing = async (hand: number): Promise<void> => {
          for (let n = 0; ; n += 1) {
            const id = `${round}-${hand}-${n}`;
            await store.put('drafts', { id, texts: { typed: String(n) }, changed: store.now() });
            (window as unknown as { acknowledge: (id: string) => void }).acknowledge(id);
          }
        };
        void Promise.all([writing(0), writing(1), writing(2)]);
      }, round);
      await expect.poll(() => acknowledged.size, { timeout: 20_000 }).toBeGreaterThan(before + 20 + round * 15);
      await browser.kill();
      duringWrites += acknowledged.size - before;
    }
    const page = await browser.open(served.url);
    const kept = await page.evaluate(async () => (await window.createStore().load()).drafts.map(({ id }) => id));
    const lost = [...acknowledged].filter((id) => !kept.includes(id));
    console.log(`${acknowledged.size} acknowledged, ${kept.length} there, ${lost.length} lost`);
    expect(duringWrites).toBe(acknowledged.size);
    expect(lost).toEqual([]);
  } finally {
    await browser.remove();
  }
});

test('two tabs: both write, each hears of the other, nothing is lost', async ({ context }) => {
  const [one, two] = [await context.newPage(), await context.newPage()];
  for (const page of [one, two]) {
    await page.goto(served.url);
    await page.evaluate(async () => {
      const store = window.createStore();
      await store.load();
      Object.assign(window, { store, heard: 0 });
      store.onOutsideChange(() => Object.assign(window, { heard: 1 }));
    });
  }
  const write = (hand: string) => async (): Promise<void> => {
    const page = hand === 'one' ? one : two;
    await page.evaluate(async (hand) => {
      const store = (window as unknown as { store: ReturnType<Window['createStore']> }).store;
      const records = Array.from({ length: 40 }, (_, n) => ({ id: `${hand}-${n}`, texts: {}, changed: store.now() }));
      await Promise.all(records.map((record) => store.put('drafts', record)));
    }, hand);
  };
  await Promise.all([write('one')(), write('two')()]);
  for (const page of [one, two]) {
    expect(await page.evaluate(async () => (await window.createStore().load()).drafts.length)).toBe(80);
    await page.waitForFunction(() => (window as unknown as { heard: number }).heard === 1);
  }
});

test('a page that is being left writes what still waits for its turn', async ({ context }) => {
  const page = await context.newPage();
  await page.goto(served.url);
  await page.evaluate(async () => {
    const store = window.createStore();
    await store.load();
    // As if another tab were writing: the queue waits, and only the flush of the leaving page can save it.
    await new Promise<void>((held) => {
      void navigator.locks.request('cornerwright-writer', () => {
        held();
        return new Promise(() => undefined);
      });
    });
    for (let n = 0; n < 30; n += 1) void store.put('drafts', { id: `last-${n}`, texts: {}, changed: store.now() });
    await new Promise((wait) => setTimeout(wait, 300));
    if (store.saveState.value !== 'saving') throw new Error(`the queue did not wait: ${store.saveState.value}`);
  });
  // The event of leaving, without the leaving: whether Chromium still takes what a page asks for in its very last
  // moment is up to Chromium (a reload on a busy machine lost it in 5 of 30 tries); that we ask, and at once, is ours.
  await page.evaluate(() => window.dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true })));
  const other = await context.newPage();
  await other.goto(served.url);
  await expect
    .poll(() => other.evaluate(async () => (await window.createStore().load()).drafts.length), { timeout: 10_000 })
    .toBe(30);
});

test('writes are strict and the browser is asked to keep the records', async ({ context }) => {
  const page = await context.newPage();
  await page.goto(served.url);
  const seen = await page.evaluate(async () => {
    const durabilities: string[] = [];
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...args) {
      const transaction = begin.apply(this, args);
      if (transaction.mode === 'readwrite') durabilities.push(transaction.durability);
      return transaction;
    };
    let asked = 0;
    navigator.storage.persist = async () => {
      asked += 1;
      return true;
    };
    const store = window.createStore();
    await store.put('drafts', { id: 'a', texts: {}, changed: store.now() });
    const afterDraft = asked;
    await store.put('visits', { id: store.newId(), carId: store.newId(), opened: store.now() });
    await new Promise((wait) => setTimeout(wait, 100));
    return { durabilities, afterDraft, asked };
  });
  expect(seen).toEqual({ durabilities: ['strict', 'strict'], afterDraft: 0, asked: 1 });
});

test('the worker answers under a sub-path and a strict content policy, and refuses by name', async ({ context }) => {
  const page = await context.newPage();
  const violations: string[] = [];
  page.on('console', (message) => message.type() === 'error' && violations.push(message.text()));
  await page.goto(served.url);
  const started = page.waitForEvent('worker');
  const error = await page.evaluate(() =>
    window.engine.call('parseCarFile', ['{"format":"cornerwright","version":2}']).catch((caught: unknown) => ({
      ...(caught as object),
      name: (caught as Error).name,
      message: (caught as Error).message,
    })),
  );
  expect((await started).url()).toMatch(/\/shop\/assets\/worker-.*\.js$/);
  expect(error).toMatchObject({ name: 'InputError', field: 'version', value: 2 });
  expect(violations).toEqual([]);
});
