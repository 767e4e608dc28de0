/**
 * A car that nobody measured, the whole job with the network off: from nothing by its pictures to as left, set by the rack, touches
 * counted; the browser killed between touches, the same screen there after each.
 */
import type { Page } from '@playwright/test';
import { shortOrLong } from '../tools/seeds.ts';
import { expect as expectSoon, longTest, MADE, REMEASURE, test, waitForServiceWorker } from './harness.ts';
import { Phone, touchesOf, typeOnKeypad } from './phone.ts';

test.use({ serviceWorkers: 'allow' });

/** A plan is worked out first; on a busy machine that takes its time. */
const expect = expectSoon.configure({ timeout: 40_000 });

/** Windows as a maker may print them: aim and ±, front then rear. */
const WINDOWS = ['4.50', '0.40', '−0.50', '0.25', '0.08', '0.08', '−1.00', '0.25', '0.15', '0.08'];
const FOUND = ['3.85', '4.90', '0.12', '−0.95', '0.34', '−0.11', '−1.75', '−1.31', '0.38', '0.02'];
/** Such a reading as a re-measure in the windows may show. */
const LEFT = ['4.42', '4.55', '−0.46', '−0.55', '0.08', '0.07', '−0.98', '−1.03', '0.16', '0.14'];
/** A kill after every so many touches. */
const KILLS = shortOrLong(9, 4);

/** The hand: what it touches is counted over all kills. */
class Hand {
  private touches = 0;
  /** Beside digits. */
  others = 0;
  kills = 0;

  constructor(
    private readonly phone: Phone,
    public page: Page,
  ) {}

  /** @param brings what is there once the touch has done what it does: nobody was told before that it has */
  async press(name: string | RegExp, brings?: (page: Page) => Promise<void>): Promise<void> {
    await this.page.getByRole('button', { name }).first().tap();
    await brings?.(this.page);
    await this.touched();
  }

  async type(texts: readonly string[]): Promise<void> {
    for (const text of texts) {
      await typeOnKeypad(this.page, text);
      await this.touched();
    }
  }

  /** Now and then the battery falls out. */
  private async touched(): Promise<void> {
    this.touches += 1;
    if (this.touches % KILLS !== 0) return;
    await expect(this.page.locator('.save-mark')).toHaveText('saved');
    const [shown, address] = [await textsIn(this.page), this.page.url()];
    this.others += (await touchesOf(this.page)).others;
    await this.phone.kill();
    this.kills += 1;
    this.page = await this.phone.open(address, { offline: true });
    // What is worked out may come later, then and now: all that was there is there again.
    await expect
      .poll(async () => {
        const now = await textsIn(this.page);
        return shown.filter((text) => !now.includes(text));
      }, `after touch ${this.touches}`)
      .toEqual([]);
  }
}

const shows =
  (name: string | RegExp) =>
  (page: Page): Promise<void> =>
    expect(page.getByRole('button', { name }).first()).toBeVisible();

const textsIn = (page: Page): Promise<readonly string[]> =>
  page.locator('main').evaluate((main) => {
    const texts: string[] = [];
    const walk = document.createTreeWalker(main, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) texts.push(walk.currentNode.textContent ?? '');
    return texts;
  });

// In `npm test` start.spec.ts begins such a car, live.spec.ts is led by the rack and killed.
longTest('from nothing to as left, by the rack and without a tape', async ({ site }) => {
  test.setTimeout(shortOrLong(240_000, 900_000));
  const phone = new Phone();
  try {
    const first = await phone.open(site.url);
    await waitForServiceWorker(first);
    await expect(first.locator('.save-mark')).toHaveText('saved');
    await phone.close();
    await site.down();
    const hand = new Hand(phone, await phone.open(site.url, { offline: true }));
    for (const name of ['New car', 'Double wishbone', 'Cams, lower arm', 'Tie rod', /^Rear axle$/])
      await hand.press(name);
    for (const name of ['Five links', 'Cam, lower rear link', 'Cam, toe link', /^Windows$/]) await hand.press(name);
    await hand.type(WINDOWS);
    await hand.press('Measure it as found', shows('LF Caster: empty'));
    await hand.type(FOUND);
    await hand.press('Where the adjusters stand', shows('These are right'));
    await hand.press('These are right', (page) => expect(page.locator('.card-form')).toBeVisible());
    let led = 0;
    for (let moves = 0; ; moves += 1) {
      const { page } = hand;
      const made = page.getByRole('button', { name: MADE });
      await expect(made.or(page.getByRole('heading', { name: REMEASURE })).first()).toBeVisible();
      if (await page.getByRole('heading', { name: REMEASURE }).isVisible()) break;
      expect(moves).toBeLessThan(20);
      if (await page.locator('.by-rack').isVisible()) led += 1;
      const note = (await page.locator('.step-live .step-note').textContent()) ?? '';
      await hand.press(MADE, (now) => expect(now.locator('.step-live')).not.toContainText(note));
    }
    expect(led).toBeGreaterThan(1);
    await hand.type(LEFT);
    await hand.press('Compare with the plan', shows('As left'));
    await hand.press('As left', shows('Sign off'));
    await hand.press('Sign off', shows(/(They are|It is) torqued/));
    await hand.press(/(They are|It is) torqued/);
    await expect(hand.page.getByText('signed off', { exact: true })).toBeVisible();
    hand.others += (await touchesOf(hand.page)).others;
    console.log(`a car from nothing to as left: ${hand.others} touches beside digits, ${hand.kills} kills`);
    expect(hand.kills).toBeGreaterThan(3);
    expect(phone.errors).toEqual([]);
  } finally {
    await phone.remove();
  }
});
