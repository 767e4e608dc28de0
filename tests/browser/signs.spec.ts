/** The number keyboards of some phones have no minus: a field of the build card that may be below zero has a ±. */
import type { Page } from '@playwright/test';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { openSection, pickKind } from './build-by-hand.ts';
import { expect, longTest, openApp, test } from './harness.ts';

test.use({ viewport: { width: 360, height: 740 } });

const BELOW = '−1';

/** In the page: types a figure below zero into every number field of the open section that has no ±, and counts them. */
function typeBelow(text: string): number {
  const bare = [...document.querySelectorAll<HTMLInputElement>('.step-live input')].filter(
    (input) =>
      /decimal|numeric/.test(input.inputMode) &&
      !input.closest('.signed-row')?.querySelector('.sign-key') &&
      !input.closest('.numbers-row')?.querySelector('.sign-key') &&
      // Its figures are taken by a button of their own, that a figure below zero leaves dead.
      !input.closest('.circle'),
  );
  for (const input of bare) {
    input.dataset.below = 'typed';
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, text);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }
  return bare.length;
}

/** What takes it: the app refuses it in every one, beside the field. */
async function refusesAll(page: Page): Promise<number> {
  const count = await page.evaluate(typeBelow, BELOW);
  const taking = () =>
    page
      .locator('[data-below]:not([aria-invalid="true"])')
      .evaluateAll((inputs) => inputs.map((input) => input.closest('.field')?.textContent ?? 'a field without a name'));
  await expect.poll(taking).toEqual([]);
  return count;
}

// In `npm test` tests/core/adjuster/below-zero.test.ts has every field that may be below zero.
longTest('no number field of the build takes a figure below zero without a ±', async ({ page, site }) => {
  test.setTimeout(120_000);
  await openApp(page, site);
  await page.goto(`${site.url}#/settings`);
  await page.getByRole('button', { name: 'mm at the rim' }).click();
  await page.goto(`${site.url}#/`);
  await page.getByRole('button', { name: 'New car' }).first().click();
  await page.getByRole('button', { name: 'The whole card' }).click();
  let bare = await refusesAll(page);
  const left = new Set(Object.keys(adjusterKinds));
  for (const [kind, { name }] of Object.entries(suspensionKinds)) {
    // A beam at the rear, as the card offers it.
    const axle = /rear|linked|cross/.test(kind) ? 'Rear' : 'Front';
    await openSection(page, `${axle} suspension`);
    await pickKind(page, kind);
    await expect(page.getByRole('button', { name: `${name}: change the kind` })).toBeVisible();
    bare += await refusesAll(page);
    for (const way of ['Tape dimensions', 'Points']) {
      const button = page.getByRole('button', { name: way, exact: true });
      if (!(await button.isVisible())) continue;
      await button.click();
      bare += await refusesAll(page);
    }
    await openSection(page, `${axle} adjusters`);
    const add = page.getByRole('group', { name: 'Add an adjuster' });
    await expect(add).toBeVisible();
    for (const one of [...left]) {
      const button = add.getByRole('button', { name: adjusterKinds[one]?.name ?? one, exact: true });
      if (!(await button.isVisible())) continue;
      left.delete(one);
      await button.click();
      await expect(page.locator('.adjuster-open')).toHaveCount(1);
      const ways = new Set(adjusterKinds[one]?.fields.flatMap(({ way }) => way ?? []));
      for (const way of ways.size > 0 ? ways : ['']) {
        if (way) await page.locator('.adjuster-open').getByRole('button', { name: way, exact: true }).click();
        bare += await refusesAll(page);
      }
    }
  }
  expect([...left], 'adjuster kinds that no axle offered').toEqual([]);
  // Lengths, counts and sizes: it has looked at something.
  expect(bare).toBeGreaterThan(20);
});

test('± changes the sign of a single field, and the caret stays', async ({ page, site }) => {
  await openApp(page, site);
  await page.getByRole('button', { name: 'New car' }).first().click();
  await page.getByRole('button', { name: 'The whole card' }).click();
  await openSection(page, 'Front suspension');
  await pickKind(page, 'double-wishbone');
  await page.getByRole('button', { name: 'Tape dimensions' }).click();
  for (const name of ['Camber, degrees', 'Toe, degrees']) {
    const field = page.getByLabel(name);
    await field.fill('0.5');
    const sign = page.locator('.signed-row').filter({ has: field }).getByRole('button', { name: 'Change the sign' });
    await field.focus();
    await sign.tap();
    await expect(field).toHaveValue('−0.5');
    await expect(field).toBeFocused();
    await sign.tap();
    await expect(field).toHaveValue('0.5');
  }
});
