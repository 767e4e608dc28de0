/**
 * A car that nobody measured: from nothing to its first reading by two pictures an axle and the windows, its touches
 * counted; what it makes is an ordinary car, which the build card goes on with.
 */
import type { Page } from '@playwright/test';
import { expect, longTest, openApp, test } from './harness.ts';
import { Phone, press, touchesOf, typeOnKeypad } from './phone.ts';

/** Windows as a maker may print them: aim and ±, front then rear. */
const WINDOWS = ['4.50', '0.40', '−0.50', '0.25', '0.08', '0.08', '−1.00', '0.25', '0.15', '0.08'];
const FOUND = ['3.85', '4.90', '0.12', '−0.95', '0.34', '−0.11', '−1.75', '−1.31', '0.38', '0.02'];

async function toWindows(page: Page): Promise<void> {
  await press(page, 'New car');
  await press(page, 'Double wishbone');
  await press(page, 'Cams, lower arm');
  await press(page, 'Tie rod');
  await press(page, /^Rear axle$/);
  await press(page, 'Five links');
  await press(page, 'Cam, lower rear link');
  await press(page, 'Cam, toe link');
  await press(page, /^Windows$/);
}

test('from nothing to its first reading in twelve touches beside digits, and on to its moves', async ({ site }) => {
  test.setTimeout(180_000);
  const phone = new Phone();
  try {
    const page = await phone.open(site.url);
    await toWindows(page);
    // The head of a step and the button under the thumb have one name: the button is meant, once.
    for (const text of WINDOWS) await typeOnKeypad(page, text);
    await press(page, 'Measure it as found');
    await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
    const { digits, others } = await touchesOf(page);
    expect(digits).toBe(WINDOWS.join('').length);
    expect(others, 'touches beside digits, from the opened app to as found').toBeLessThanOrEqual(12);

    for (const text of FOUND) await typeOnKeypad(page, text);
    await press(page, 'Where the adjusters stand');
    await press(page, 'These are right');
    await expect(page.locator('.card-form')).toBeVisible({ timeout: 30_000 });
    await expect(page.locator('body')).not.toContainText('NaN');
    expect(phone.errors).toEqual([]);
  } finally {
    await phone.remove();
  }
});

// In `npm test` live.spec.ts kills between touches, kill.spec.ts in an entry.
longTest('what was picked and typed is there after a kill, and the card goes on with it', async ({ site }) => {
  test.setTimeout(120_000);
  const phone = new Phone();
  try {
    let page = await phone.open(site.url);
    await toWindows(page);
    for (const text of WINDOWS.slice(0, 3)) await typeOnKeypad(page, text);
    await typeOnKeypad(page, '0.2');
    const address = page.url();
    await expect(page.locator('.save-mark')).toHaveText('saved');
    await phone.kill();

    page = await phone.open(site.url);
    await page.goto(address);
    await expect(page.getByRole('button', { name: 'aim Caster: 4.50' })).toBeVisible();
    await expect(page.getByRole('button', { name: '± Camber: 0.2', exact: true })).toHaveAttribute(
      'aria-pressed',
      'true',
    );
    await typeOnKeypad(page, '5');
    // What a maker gives no window for is left out.
    for (let i = 0; i < 6; i += 1) await press(page, 'Skip');
    await press(page, 'The whole card');

    await page.locator('.step-head', { hasText: 'Front windows' }).click();
    const camber = page.getByRole('group', { name: 'Camber', exact: true });
    await expect(camber.getByLabel('low')).toHaveValue('−0.75');
    await expect(camber.getByLabel('high')).toHaveValue('−0.25');
    await page.locator('.step-head', { hasText: 'Front adjusters' }).click();
    await page.getByRole('button', { name: /^Front cam, lower arm/ }).click();
    await expect(page.getByLabel(/^Eccentricity/)).toHaveValue('5');
    await expect(page.getByText('is what most have')).toBeVisible();
    await page.getByLabel(/^Eccentricity/).fill('4.5');
    await expect(page.getByText('is what most have')).toHaveCount(0);
    await page.locator('.step-head', { hasText: 'The car' }).click();
    await page.getByLabel('Name').fill('Ostler hatchback');
    await press(page, 'Save the car');
    await expect(page.getByRole('heading', { name: 'Ostler hatchback' })).toBeVisible();
    await expect(page.getByText('Front cam, lower arm')).toBeVisible();
  } finally {
    await phone.remove();
  }
});

test('the size that everyone knows makes the layout larger, and nothing is asked of it', async ({ page, site }) => {
  await openApp(page, site);
  await page.getByRole('button', { name: 'New car' }).click();
  await page.getByRole('button', { name: 'Strut', exact: true }).click();
  await page.locator('.step-head', { hasText: 'Name and size' }).click();
  await page.getByLabel('Tyre size').fill('205/55 R16');
  // 203.2 + 0.8 × 112.75 mm: half the rim, and four fifths of the section under load.
  await expect(page.getByText('wheel centre about 293 mm high')).toBeVisible();
  await page.getByLabel('Track').fill('1600');
  await page.getByRole('button', { name: 'The whole card' }).click();
  await page.locator('.step-head', { hasText: 'Front suspension' }).click();
  const hub = page.getByRole('group', { name: 'wheel centre' }).locator('input');
  await expect(hub.nth(1)).toHaveValue('800');
  await expect(hub.nth(2)).toHaveValue('293.4');
});
