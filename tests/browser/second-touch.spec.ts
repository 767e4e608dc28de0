/** A thumb that touches twice: what has come under it since is not what it meant. */
import type { Page } from '@playwright/test';
import { expect, MADE, openApp, test } from './harness.ts';
import { toTheMoves } from './practice.ts';

const TYPED = ['3.42', '2.96', '-0.99', '-0.01', '0.21', '-0.01', '-1.24', '-0.69', '0.19', '0.08'];

/** A touch in the glass as the hand makes it, at a time of its own: ms of the epoch. */
async function touchAt(page: Page, place: { readonly x: number; readonly y: number }, at: number): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  const timestamp = at / 1000;
  await Promise.all([
    devtools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [place], timestamp }),
    devtools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [], timestamp }),
  ]);
  await devtools.detach();
}

test('the second touch of a nervous thumb leaves and books nothing that came under it', async ({ page, site }) => {
  await openApp(page, site);
  await toTheMoves(page, TYPED);
  const made = page.getByRole('button', { name: MADE });
  const jobs = (await page.getByText(/^1 of /).textContent())?.replace('1 of ', '');
  // At rest, and no longer as new as a second touch would be.
  await made.click({ trial: true });
  const box = (await made.boundingBox())!;
  const thumb = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const first = Date.now();
  await touchAt(page, thumb, first);
  await expect(page.getByText(`2 of ${jobs}`)).toBeVisible();

  // The next card may lie otherwise, so that another answer than the one that was meant is under the thumb.
  const under = (name: string) =>
    page.evaluate(
      ([y, name]) => {
        const foot = document.querySelector<HTMLElement>('.card-foot')!;
        const one = [...foot.querySelectorAll('button')].find(({ textContent }) => textContent === name)!;
        foot.style.translate = 'none';
        const { left, width, top, height } = one.getBoundingClientRect();
        foot.style.translate = `0 ${Number(y) - top - height / 2}px`;
        return { x: left + width / 2, y: Number(y) };
      },
      [thumb.y, name] as const,
    );
  // On a slow page a touch comes to its button when the button has long been there: its own time tells.
  const rested = () => expect(page.locator('.card-foot [aria-disabled=true]')).toHaveCount(0);
  await rested();
  await touchAt(page, await under('Leave it'), first + 120);
  await touchAt(page, await under('Won’t move'), first + 240);
  await expect(page.locator('.move-left')).toHaveCount(0);
  await expect(page.locator('.move-made')).toHaveCount(1);
  await expect(page.getByText(`2 of ${jobs}`)).toBeVisible();

  // A card that came late rests for a moment, all of it.
  await page.evaluate(() => {
    const before = document.querySelector('.card-foot');
    const touchAll = (_: unknown, seen: MutationObserver) => {
      const foot = document.querySelector('.card-foot');
      if (!foot || foot === before) return;
      seen.disconnect();
      for (const one of foot.querySelectorAll('button')) one.click();
    };
    new MutationObserver(touchAll).observe(document.body, { subtree: true, childList: true });
  });
  await made.tap();
  const now = Date.now();
  await expect(page.getByText(`3 of ${jobs}`)).toBeVisible();
  await rested();
  await expect(page.locator('.move-made')).toHaveCount(2);
  await expect(page.locator('.move-left')).toHaveCount(0);

  // What is meant comes later, and is heeded.
  await touchAt(page, await under('Leave it'), now + 1000);
  await expect(page.locator('.move-left')).not.toHaveCount(0);
  const left = await page.locator('.move-left').count();

  // A touch after a key is no second one: a hand that types has gone on.
  await rested();
  await page.keyboard.press('1');
  await touchAt(page, await under('Leave it'), now + 1100);
  await expect(page.locator('.move-left')).not.toHaveCount(left);
});
