/** Every screen for those who do not see it or touch it finely: axe finds nothing, targets are 56 px, nothing overflows. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openApp, test } from './harness.ts';

async function check(page: Page, where: string, rules: readonly string[]): Promise<void> {
  // The strip scrolls the live card into sight and the cam turns once: what is judged is the still picture.
  await page.waitForTimeout(250);
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    where,
  ).toEqual([]);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll('button, a[href], select, input:not([type=checkbox]):not([type=file]), summary')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && box.height < 55.5)
      .map(({ element, box }) => `${element.outerHTML.slice(0, 100)} ${box.height}`),
  );
  expect(small, `targets under 56 px, ${where}`).toEqual([]);
  const widths = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.clientWidth,
  ]);
  expect(widths[0], `page wider than the glass, ${where}`).toBe(widths[1]);
}

for (const look of ['light', 'dark', 'high-contrast'] as const) {
  test(`every screen in the ${look} look`, async ({ page, site }) => {
    test.setTimeout(150_000);
    // What a look changes is colour: everything else is judged once.
    const rules = look === 'light' ? [] : ['color-contrast'];
    await page.setViewportSize({ width: 360, height: 740 });
    await page.emulateMedia({ colorScheme: look === 'dark' ? 'dark' : 'light', reducedMotion: 'reduce' });
    await openApp(page, site);
    if (look === 'high-contrast') {
      await page.goto(`${site.url}#/settings`);
      await page.getByRole('button', { name: 'high contrast' }).click();
      await page.goto(`${site.url}#/`);
    }
    await check(page, 'cars', rules);
    await page.getByText('Practice car').click();
    await check(page, 'car', rules);
    await page.getByRole('button', { name: 'New visit' }).click();
    await page.getByRole('button', { name: /^Before you measure/ }).click();
    await check(page, 'entry and checks', rules);
    await page.getByRole('button', { name: /practice rack/ }).click();
    await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
    await check(page, 'standing', rules);
    await page.getByRole('button', { name: 'These are right' }).click();
    await expect(page.locator('.card-form')).toBeVisible();
    await check(page, 'moves', rules);
    await page.getByRole('button', { name: 'Set to…' }).click();
    await check(page, 'set to', rules);
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    while ((await page.getByRole('heading', { name: 'Re-measure' }).count()) === 0) {
      await page.getByRole('button', { name: 'Done' }).click();
      await page.waitForTimeout(150);
    }
    await page.getByRole('button', { name: /practice rack/ }).click();
    await page.getByRole('button', { name: 'Compare with the plan' }).click();
    await check(page, 'compare', rules);
    await page.getByRole('button', { name: 'As left' }).click();
    await check(page, 'as left', rules);
    for (const [hash, where] of [
      ['#/settings', 'settings'],
      ['#/cautions', 'cautions'],
      ['#/car/practice-car/history', 'history'],
      ['#/car/practice-car/build', 'build'],
    ] as const) {
      await page.goto(site.url + hash);
      await expect(page.locator('.dock')).toBeVisible();
      await check(page, where, rules);
    }
    for (const section of ['Front suspension', 'Front adjusters', 'Rear adjusters', 'Rear windows']) {
      await page.locator('.step-head', { hasText: section }).click();
      await check(page, section, rules);
    }
  });
}
