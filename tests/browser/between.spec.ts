/** A reading between two moves, and a mishap at the practice rack: what they teach, and that a kill between touches loses nothing. */
import type { Page } from '@playwright/test';
import { fill } from './fill.ts';
import { expect, longTest, openApp, REMEASURE, test } from './harness.ts';
import { car, spec, toTheMoves } from './practice.ts';

/** By its mark or by the rack. */
const DONE = /^(LF|RF|LR|RR|Front|Rear) .* (made.*|set)$/;
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

async function takePractice(page: Page): Promise<void> {
  await press(page, 'Take the practice rack’s reading');
  await expect(page.getByRole('button', { name: /^LF Caster: empty/ })).toHaveCount(0);
}

test.beforeEach(async ({ page, site }) => {
  await openApp(page, site);
});

test('a cam of which nobody knows where it stands is turned, measured, and planned with', async ({ page }) => {
  await page.getByText('Practice car').click();
  await press(page, 'New visit');
  await takePractice(page);
  await press(page, 'Where the adjusters stand');
  for (const corner of [0, 1]) {
    await page
      .getByRole('button', { name: /^Lower link, eccentric bolt/ })
      .nth(corner)
      .click();
    await page.getByRole('button', { name: 'Don’t know', exact: true }).click();
    await press(page, /^Set$/);
  }
  await expect(page.getByText(/a turn of it that is measured tells/)).toBeVisible();
  await press(page, 'These are right');
  const cards = page.getByRole('article').filter({ hasText: 'Turn this one first, and measure' });
  await expect(cards).toHaveCount(2);
  await cards.first().getByRole('button', { name: 'Turned towards +' }).click();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await takePractice(page);
  await press(page, 'Compare with the plan');
  // Nothing was to be expected of that wheel.
  await expect(page.locator('.compare').first()).toBeVisible();
  await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
  await page.reload();
  await press(page, 'Plan the next moves');
  await expect(page.getByText('LR Lower link, eccentric bolt stands', { exact: false })).toHaveCount(0);
  await expect(cards).toHaveCount(1);
  await expect(page.locator('.card-form')).toBeVisible();
});

// In `npm test` tests/state/cause.test.ts and rounds.spec.ts have what is named and said yes to.
longTest('a figure with the wrong sign is named, corrected at a touch, and stays so', async ({ page }) => {
  await page.getByText('Practice car').click();
  await press(page, 'New visit');
  await takePractice(page);
  await press(page, 'Where the adjusters stand');
  await press(page, 'These are right');
  await expect(page.locator('.card-form')).toBeVisible();
  await press(page, 'Measure now');
  await takePractice(page);
  // The hand forgets a minus, or puts one where there is none.
  const cell = page.getByRole('button', { name: /^LR Camber: / });
  const shown = (await cell.getAttribute('aria-label'))?.replace('LR Camber: ', '') ?? '';
  await cell.click();
  for (let i = 0; i < shown.length; i += 1) await page.keyboard.press('Backspace');
  await page.keyboard.type(/^[−-]/.test(shown) ? shown.slice(1) : `-${shown}`);
  // The last cell ends the entry.
  await press(page, /^RR Toe: /);
  await press(page, 'Done');
  await press(page, 'Compare with the plan');
  await expect(page.getByText(/^LR camber in the reading after the moves seems to have the wrong sign/)).toBeVisible();
  await press(page, 'Yes, that was it');
  await expect(page.getByText('Corrected in the records.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('Corrected in the records.')).toBeVisible();
  await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
  await press(page, /^Re-measured/);
  await expect(page.getByRole('button', { name: /^Re-measured/ })).toBeVisible();
});

// In `npm test` tests/core/ask/first-move.test.ts has after which move it pays, and what it brings.
longTest(
  'where nobody has measured the car, a reading after the first moves is offered with what it brings',
  async ({ page }) => {
    const loose = { ...car, front: { ...car.front, suspension: { ...car.front.suspension, tolerance: 30 } } };
    await fill(page, { cars: [{ id: car.id, car: loose, spec, changed: '2026-02-01T00:00:00.000Z', practice: true }] });
    await toTheMoves(page, ['3.60', '3.90', '0.60', '-1.60', '0.60', '-0.40', '-1.20', '-1.20', '0.15', '0.15']);
    const card = page.getByRole('article').filter({ hasText: 'A reading in between pays' });
    await expect(card).toBeVisible();
    await expect(card).toContainText(/\d+ % → about \d+ %/);
    const now = page.getByRole('article').filter({ hasText: 'Measure now, it pays' });
    for (let i = 0; i < 6 && (await now.count()) === 0; i += 1) {
      await press(page, DONE);
      await page.reload();
      await expect(page.locator('.card-form')).toBeVisible();
      await expect(page.getByText(/A reading in between pays|Measure now, it pays/)).toBeVisible();
    }
    await now.getByRole('button', { name: 'Measure now' }).click();
    await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  },
);
