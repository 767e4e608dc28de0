/** A car described by hand on its build card, then measured: what a step does shows at once, and the moves follow. */
import type { Page } from '@playwright/test';
import { type Adjuster, adjusterEffects, formatAngle, pointsFromTape } from '../../core/index.ts';
import { expect, openApp, test } from './harness.ts';

const section = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first().click();

test('a new car by tape, with a rod, from an empty card to its moves', async ({ page, site }) => {
  await openApp(page, site);
  await page.getByRole('button', { name: 'New car' }).click();
  await page.getByLabel('Name').fill('Tarn GT, <blue>');
  await page.getByLabel('Plate').fill('QX 41 TRN');
  await page.getByLabel(/^Diameter at which/).fill('430,5');

  for (const axle of ['Front', 'Rear']) {
    await section(page, `${axle} suspension`);
    await page.getByRole('button', { name: 'Double wishbone' }).click();
    await page.getByRole('button', { name: 'Tape dimensions' }).click();
    await page.getByLabel('Caster, degrees').fill('4.5');
    await page.getByLabel('Camber, degrees').fill('−0,5');
    await page.getByLabel('Toe, degrees').fill('0.1');
  }
  await page.getByLabel('Behind the front axle').fill('2400');

  await section(page, 'Front adjusters');
  await page.getByRole('button', { name: 'Threaded rod' }).click();
  await expect(page.getByText(/^What a step does shows here once/)).toBeVisible();
  await page.getByLabel('Lengthens which rod').selectOption('tieInner');
  await page.getByLabel('Longer by, each turn, mm').fill('1.5');
  await page.getByLabel('Torque, maker’s figure').fill('as the maker says');

  const { points, camber, toe, tolerance } = pointsFromTape({ caster: 4.5, camber: -0.5, toe: 0.1 });
  const rod: Adjuster = {
    id: 'rod',
    name: 'rod',
    kind: 'threaded-rod',
    links: ['tieInner'],
    lead: 1.5,
    stepTurns: 1 / 12,
    range: [-6, 6],
    reference: 0,
  };
  const [effect] = adjusterEffects({ kind: 'double-wishbone', points, camber, toe, tolerance }, [rod]);
  await expect(page.getByRole('row', { name: /1 turn longer/ })).toContainText(
    formatAngle(effect?.toe ?? Number.NaN, { sign: true }),
  );

  await section(page, 'Front windows');
  const window = page.getByRole('group', { name: 'Toe', exact: true });
  await window.getByLabel('low').fill('0');
  await window.getByLabel('high').fill('0.2');
  await page.getByRole('button', { name: 'Save the car' }).click();

  await expect(page.getByRole('heading', { name: 'Tarn GT, <blue>' })).toBeVisible();
  await page.getByRole('button', { name: 'New visit' }).click();
  for (const text of ['4.50', '4.50', '-0.50', '-0.50', '1.10', '0.10']) await page.keyboard.type(text);
  for (let i = 0; i < 4; i += 1) await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  await page.getByRole('button', { name: 'These are right' }).click();
  await expect(page.getByText('1 of 1')).toBeVisible();
  await expect(page.locator('.card-form')).toContainText('LFThreaded rod');
  await expect(page.locator('.card-form')).toContainText('maker’s figure, yours on file: as the maker says');
  await expect(page.locator('body')).not.toContainText('NaN');
});

test('a car leaves as a file and comes back into another profile', async ({ page, site, browser }) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Car file' }).click();
  const path = await (await download).path();

  const other = await (await browser.newContext()).newPage();
  await openApp(other, site);
  await other.getByRole('button', { name: 'New car' }).click();
  await other.getByLabel('Or open a car file').setInputFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"cornerwright","version":1,"car":{"id":"x"}}'),
  });
  await expect(other.getByRole('alert')).toContainText('car.label');
  await other.getByLabel('Or open a car file').setInputFiles(path);
  await expect(other.getByRole('heading', { name: 'Practice car' })).toBeVisible();
  await other.getByRole('link', { name: 'Back' }).click();
  await expect(other.getByText('Practice car')).toHaveCount(1);
  await other.context().close();
});
