/** One visit in two windows: live in one, shown in the other, taken over by a touch; nothing is booked twice. */
import type { Page } from '@playwright/test';
import { expect, longTest, MADE, openApp, test } from './harness.ts';
import { toTheMoves } from './practice.ts';

const TYPED = ['3.42', '2.96', '-0.99', '-0.01', '0.21', '-0.01', '-1.24', '-0.69', '0.19', '0.08'];
const others = (page: Page) => page.getByText('This visit is open in another window');
const goOn = (page: Page) => page.getByRole('button', { name: 'Go on here' }).click();

test('the second window follows, writes nothing, and takes over', async ({ page, site, context }) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  await page.keyboard.type('4.50');
  await expect(page.getByRole('button', { name: 'LF Caster: 4.50' })).toBeVisible();
  const second = await context.newPage();
  await second.goto(page.url());
  await expect(others(second)).toBeVisible();

  await second.keyboard.type('9.99');
  await page.keyboard.type('4.25');
  await expect(second.getByText('4.25')).toBeVisible();
  await expect(second.getByText('9.99')).toHaveCount(0);

  await goOn(second);
  await expect(others(page)).toBeVisible();
  await expect(others(second)).toHaveCount(0);
  await second.keyboard.type('-0.60');
  await page.keyboard.type('8.88');
  await expect(page.getByText('−0.60')).toBeVisible();
  for (const one of [page, second]) {
    await expect(one.getByText('8.88')).toHaveCount(0);
    await expect(one.getByRole('button', { name: 'RF Caster: 4.25' })).toBeVisible();
  }
  // The window that is closed gives it back.
  await second.close();
  await expect(others(page)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'LF Camber: −0.60' })).toBeVisible();
});

// In `npm test` tests/state/same-id.test.ts has both windows make one record of it.
longTest('a move that both windows press is one move', async ({ page, site, context }) => {
  await openApp(page, site);
  await toTheMoves(page, TYPED);
  await expect(page.getByRole('button', { name: MADE })).toBeEnabled();
  const second = await context.newPage();
  // As a browser without locks has it: live in both, and deaf to each other.
  await second.addInitScript(() => {
    Object.defineProperty(navigator, 'locks', { value: undefined });
    Object.defineProperty(window, 'BroadcastChannel', { value: undefined });
  });
  await second.goto(page.url());
  for (const one of [page, second]) {
    await expect(one.getByRole('button', { name: MADE })).toHaveAttribute('aria-disabled', 'false');
  }
  for (const one of [page, second]) await one.getByRole('button', { name: MADE }).click();
  for (const one of [page, second]) await expect(one.getByText(/^2 of /)).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^2 of /)).toBeVisible();
  await expect(page.locator('.move-made')).toHaveCount(1);
});
