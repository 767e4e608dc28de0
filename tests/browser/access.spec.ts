/**
 * Every screen for those who do not see it or touch it finely: axe finds nothing in any look, targets are 56 px,
 * nothing overflows.
 */
import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { shortOrLong } from '../tools/seeds.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';

// The settings also say how things stand with being offline.
test.use({ serviceWorkers: 'allow' });

test.beforeEach(async ({ page, site }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  await openApp(page, site);
});

/** @param rules axe's rules by name; all of them where none is named */
async function judge(page: Page, where: string, rules: readonly string[] = []): Promise<void> {
  // The other mode of axe opens a page of its own for every judgement, to reach into frames: here are none.
  const axe = new AxeBuilder({ page }).setLegacyMode();
  const { violations } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
    where,
  ).toEqual([]);
}

/** What a look changes is colour: everything else is judged once. `shown` is there when the screen is. */
async function check(page: Page, where: string, shown: Locator): Promise<void> {
  await expect(shown.first()).toBeVisible();
  await judge(page, `${where}, light`);
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
  for (const look of LOOKS) {
    await page.emulateMedia({ colorScheme: look === 'dark' ? 'dark' : 'light' });
    await wear(page, look === 'high contrast' ? 'high-contrast' : undefined);
    await judge(page, `${where}, ${look}`, ['color-contrast']);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await wear(page, undefined);
}
/** In `npm test` every pair of tokens that meet is judged in every look by tests/parts/contrast.test.ts. */
const LOOKS = shortOrLong<readonly string[]>([], ['dark', 'high contrast']);

/** As the setting does: the test of the settings holds it to that. */
const wear = (page: Page, theme: string | undefined): Promise<void> =>
  page.evaluate((theme) => {
    if (theme) document.documentElement.dataset.theme = theme;
    else delete document.documentElement.dataset.theme;
  }, theme);

test('every screen of a visit', async ({ page, site }) => {
  test.setTimeout(120_000);
  const press = (name: string | RegExp) => page.getByRole('button', { name }).click();
  await check(page, 'cars', page.getByText('Practice car'));
  await page.getByText('Practice car').click();
  await check(page, 'car', page.getByRole('button', { name: 'New visit' }));
  await press('New visit');
  await press(/^Before you measure/);
  await check(page, 'entry and checks', page.getByRole('button', { name: /: empty$/ }));
  // Reached without scrolling, though a keypad stands under it.
  await press(/^Before you measure/);
  await page.evaluate(() => scrollTo(0, 0));
  const rack = page.getByRole('button', { name: /practice rack/ });
  const [at, dock] = [await rack.boundingBox(), await page.locator('.dock').boundingBox()];
  expect((at?.y ?? Number.NaN) + (at?.height ?? 0)).toBeLessThanOrEqual(dock?.y ?? 0);
  await rack.click();
  await press('Where the adjusters stand');
  await check(page, 'standing', page.locator('.standing-row'));
  await press('These are right');
  const count = page.getByText(/^1 of \d+$/);
  await check(page, 'moves', count);
  const moves = Number((await count.textContent())?.split(' of ')[1]);
  await press('Set to…');
  await check(page, 'set to', page.locator('.stepper-row'));
  await page.getByRole('button', { name: 'Back', exact: true }).click();
  for (let i = 1; i <= moves; i += 1) {
    await expect(page.getByText(`${i} of ${moves}`)).toBeVisible();
    await press(MADE);
  }
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await press(/practice rack/);
  await press('Compare with the plan');
  await check(page, 'compare', page.locator('.compare'));
  await expect(page.getByText(/^(LF|RF): SAI .*: look at the .*(knuckle|arm)/)).toBeVisible();
  await press('As left');
  await check(page, 'as left', page.getByRole('row'));
  await expect(page.getByText(/^The (LF|RF) (knuckle|lower arm|upper arm) is bent/)).toBeVisible();
  await page.goto(`${site.url}#/car/practice-car/history`);
  await check(page, 'history', page.locator('.dock'));
});

// In `npm test` the screens of a visit, matrix.spec.ts has nothing cut and the contrast of every look stands in tests/parts.
longTest('every screen beside a visit', async ({ page, site }) => {
  test.setTimeout(120_000);
  const html = page.locator('html');
  await page.goto(`${site.url}#/settings`);
  await page.getByRole('button', { name: 'high contrast' }).click();
  await expect(html).toHaveAttribute('data-theme', 'high-contrast');
  await page.getByRole('button', { name: 'as the phone' }).click();
  await expect(html).not.toHaveAttribute('data-theme');
  await check(page, 'settings', page.locator('.dock'));
  await page.goto(`${site.url}#/cautions`);
  await check(page, 'cautions', page.locator('.dock'));
  await page.goto(`${site.url}#/car/practice-car/build`);
  await check(page, 'build', page.getByLabel('Name'));
  for (const section of ['Front suspension', 'Front adjusters', 'Rear adjusters', 'Rear windows']) {
    await page.locator('.step-head', { hasText: section }).click();
    await check(page, section, page.locator('.step-live .step-title', { hasText: section }));
  }
});

// In `npm test` bench-tools.spec.ts works every tool by its names.
longTest('every tool of the bench', async ({ page, site }) => {
  test.setTimeout(180_000);
  const tools = ['-', 'sweep', 'across', 'strings', 'rough', 'camber', 'phone', 'repeat', 'run-out', 'axle', 'heights'];
  for (const tool of [...tools, 'slip', 'bent']) {
    await page.goto(`${site.url}#/bench/${tool}`);
    await check(page, `bench ${tool}`, page.locator('.dock'));
  }
});
