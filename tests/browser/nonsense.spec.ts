/** What is no reading, typed on a real keyboard: kept as typed, refused in words, never a NaN on the screen. */
import type { Page } from '@playwright/test';
import { expect, openApp, test } from './harness.ts';

test.beforeEach(async ({ page, site }) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
});

async function skip(page: Page, cells: number): Promise<void> {
  for (let i = 0; i < cells; i += 1) await page.getByRole('button', { name: 'Skip', exact: true }).click();
}

const NAMES = ['LF Caster', 'RF Caster', 'LF Camber', 'RF Camber', 'LF Toe'];
const TEXTS = ['abc', 'NaN', '1e9', '4.3.5', '95'];

test(`${TEXTS.join(', ')} stay in their fields, each with a message`, async ({ page }) => {
  for (const [i, text] of TEXTS.entries()) {
    await page.keyboard.type(text);
    await expect(page.getByRole('button', { name: `${NAMES[i]}: ${text}` })).toBeVisible();
    await expect(page.getByRole('alert').filter({ hasText: text })).toContainText('an angle from −90° to 90°');
    await page.keyboard.press('Enter');
  }
  await skip(page, 10 - TEXTS.length);
  await page.getByRole('button', { name: /^LF caster cannot be read/ }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: abc' })).toHaveAttribute('aria-pressed', 'true');
  await page.reload();
  for (const [i, text] of TEXTS.entries()) {
    await expect(page.getByRole('button', { name: `${NAMES[i]}: ${text}` })).toBeVisible();
  }
  // What was typed may say NaN; nothing that the app works out may.
  // biome-ignore lint/performance/useDomNodeTextContent: what is shown is what is meant, hidden text is not.
  const shown = await page.locator('body').innerText();
  expect(TEXTS.reduce((rest, text) => rest.replaceAll(text, ''), shown)).not.toMatch(/NaN|undefined|Infinity/);
});

test('nothing typed is not a reading', async ({ page }) => {
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toHaveText('Empty: type LF caster, or Skip');
  await skip(page, 10);
  await expect(page.getByRole('button', { name: 'Type at least one reading' })).toBeVisible();
});

test('an unlikely value is asked about and taken', async ({ page }) => {
  await page.keyboard.type('4.35');
  await skip(page, 1);
  await page.keyboard.type('12.00');
  await skip(page, 7);
  await expect(page.getByText('LF: Camber 12.00° is unusual')).toBeVisible();
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  await page.getByRole('button', { name: 'These are right' }).click();
  await expect(page.getByText('The windows cannot all be reached')).toBeVisible();
  await expect(page.getByText(/LF camber .* too high/)).toBeVisible();
  await expect(page.locator('body')).not.toContainText('NaN');
});

test('a decimal comma and degrees-minutes are as good as a point', async ({ page }) => {
  await page.keyboard.type('4,35');
  await expect(page.getByRole('button', { name: /^LF Caster: 4[.,]35$/ })).toBeVisible();
  await page.getByRole('button', { name: 'type degrees and minutes' }).click();
  await page.keyboard.type('5.12');
  await expect(page.getByRole('button', { name: 'RF Caster: 5°12' })).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a build card that is not right names the field, and keeps every text', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/practice-car/build`);
  await page.getByRole('button', { name: 'Front suspension' }).first().click();
  const ball = page.getByRole('group', { name: 'upper ball joint' }).getByLabel('up', { exact: true });
  await ball.fill('high up');
  await page.getByRole('button', { name: 'Save the car' }).click();
  await expect(page.getByRole('alert')).toContainText('Not “high up” but a number from −10 000 to 10 000 mm.');
  await expect(ball).toHaveValue('high up');
  await page.reload();
  await expect(page.getByRole('group', { name: 'upper ball joint' }).getByLabel('up', { exact: true })).toHaveValue(
    'high up',
  );
  await page.getByRole('button', { name: 'Undo the changes' }).click();
  await expect(page.getByRole('button', { name: 'Undo the changes' })).toHaveCount(0);
});

test('a window with low above high is refused at its field', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/practice-car/build`);
  await page.getByRole('button', { name: 'Front windows' }).first().click();
  await page.getByRole('group', { name: 'Camber', exact: true }).getByLabel('low').fill('2');
  await page.getByRole('button', { name: 'Save the car' }).click();
  await expect(page.getByRole('alert')).toContainText('Not “2” but a number below the upper end, −0.2°.');
});
