/** Each touch of a whole visit is answered in 100 ms on a phone four times as slow as this machine. */
import type { Browser, Locator, Page } from '@playwright/test';
import { type Answered, SlowHand } from './answered.ts';
import { expect, longTest, MADE, openApp, REMEASURE, type Site, test } from './harness.ts';

const RATE = 4;
/** ms */
const AT_MOST = 100;
/** Median of `SlowHand.yardstick` where the limit was set, slowed as much, ms: a machine that is slower is given as much more. */
const YARDSTICK = 40;
/** A visit with a slow touch is made again: what a machine did once beside it is no part of the app. */
const VISITS = 3;
const TYPED = ['4.60', '4.80', '0.10', '-0.70', '0.35', '-0.15', '-1.75', '-1.30', '0.38', '0.02'];
const KEYS: Readonly<Record<string, string>> = { '.': 'decimal point', '-': 'change sign' };

type Touches = Map<string, Answered>;
/** @param what a button by its words, or what else is touched */
type Touch = (what: string | RegExp | Locator) => Promise<void>;

async function visit(page: Page, touch: Touch): Promise<void> {
  await touch(page.getByText('Practice car'));
  await touch('New visit');
  for (const character of TYPED.join('')) await touch(KEYS[character] ?? character);
  await touch('Where the adjusters stand');
  await touch('These are right');
  const measure = page.getByRole('heading', { name: REMEASURE });
  for (;;) {
    const made = page.getByRole('button', { name: MADE });
    // A plan is worked out first; on a busy machine that takes its time.
    await expect(made.or(measure).first()).toBeVisible({ timeout: 60_000 });
    if (await measure.isVisible()) break;
    const note = await page.locator('.step-live .step-note').textContent();
    await touch(MADE);
    await expect(page.locator('.step-live .step-note')).not.toHaveText(note ?? '', { timeout: 60_000 });
  }
  await touch('Take the practice rack’s reading');
  await touch('Compare with the plan');
  await touch('As left');
  await touch(/^All \d are torqued/);
  await touch(/^All \d are done/);
  await touch('Sign off');
}

async function aroundIt(page: Page, url: string, touch: Touch): Promise<void> {
  for (const [name, shown] of [
    ['History', '.angle-line'],
    ['Its chart', '.chart-table'],
    ['Build', '.step-live'],
  ] as const) {
    await page.goto(`${url}#/car/practice-car`);
    await touch(name);
    await expect(page.locator(shown).first()).toBeVisible({ timeout: 30_000 });
  }
  for (const section of ['The car', 'Front suspension', 'Front adjusters', 'Front windows']) {
    await touch(new RegExp(`^${section}`));
  }
}

/** Touches by their words, of those with the same words the slowest. */
async function touchesOf(browser: Browser, site: Site): Promise<Touches> {
  const context = await browser.newContext({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await openApp(page, site);
  const hand = await SlowHand.on(page, browser, RATE);
  const touch: Touch = (what) => {
    const isName = typeof what === 'string' || what instanceof RegExp;
    return hand.touch(
      isName ? page.getByRole('button', { name: what, exact: typeof what === 'string' }).first() : what,
    );
  };
  const yardsticks: number[] = [];
  const measure = async () => {
    for (let n = 0; n < 3; n += 1) yardsticks.push(await hand.yardstick());
  };
  await measure();
  await visit(page, touch);
  await measure();
  await aroundIt(page, site.url, touch);
  await measure();
  const own = yardsticks.sort((a, b) => a - b)[yardsticks.length >> 1] ?? Number.NaN;
  const busier = Math.max(1, own / YARDSTICK);
  console.log(`yardstick ${own.toFixed(0)} ms: this machine counts as ${busier.toFixed(2)} × as slow`);
  const all: Touches = new Map();
  for (const { words, work, clock } of await hand.told()) {
    const one = { words, work: work / busier, clock };
    if (!(one.work <= (all.get(words)?.work ?? 0))) all.set(words, one);
  }
  await context.close();
  return all;
}

// Under `npm run test:long`: it takes a minute and more, and says nothing that another one does not where all is well.
longTest(`each touch of a visit is answered in ${AT_MOST} ms, slowed ${RATE} ×`, async ({ browser, site }) => {
  test.setTimeout(VISITS * 180_000);
  const least: Touches = new Map();
  const slow = () => [...least].filter(([, { work }]) => work > AT_MOST).map(([words]) => words);
  for (let n = 1; n === 1 || (n <= VISITS && slow().length > 0); n += 1) {
    for (const [words, answered] of await touchesOf(browser, site)) {
      if (answered.work < (least.get(words)?.work ?? Number.POSITIVE_INFINITY)) least.set(words, answered);
    }
  }
  const told = [...least].sort(([, a], [, b]) => b.work - a.work);
  for (const [words, { work, clock }] of told)
    console.log(`${work.toFixed(0).padStart(5)} ms, by the clock ${clock.toFixed(0)} ms: ${words}`);
  expect(slow()).toEqual([]);
});
