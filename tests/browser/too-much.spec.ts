/** What is far too much, typed or in a file, is refused where it is, and the app goes on at once. */
import { expect, longTest, openApp, test } from './harness.ts';
import { car } from './practice.ts';

test('a step that is far too fine is refused beside its field, and nothing freezes on the way', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await page.goto(`${site.url}#/car/practice-car/build`);
  await page.getByRole('button', { name: 'Front adjusters' }).first().click();
  await page.getByRole('group', { name: 'Add an adjuster' }).getByRole('button', { name: 'Sliding plate' }).click();
  const form = page.locator('.adjuster-open');
  await form.getByLabel('Moves which point').selectOption('upperFront');
  const step = form.getByLabel(/^Set to the nearest/);
  for (const text of ['0.1', '0.01', '0.001', '0.0001', '0.00001', '0.000001']) await step.fill(text);
  await expect(form.getByRole('status')).toContainText('Set to the nearest');
  await page.getByRole('button', { name: 'Save the car' }).click();
  await expect(step).toHaveAttribute('aria-invalid', 'true');
  await expect(form.getByRole('alert')).toContainText('0.0021 mm or more');
  await step.fill('0.5');
  await expect(form.getByRole('table')).toContainText('One step: 0.5 mm');
});

// In `npm test` tests/nonsense/wide-files.test.ts refuses them in time.
longTest(
  'a file of millions of values is refused at once, and the engine answers the next question',
  async ({ page, site }) => {
    await openApp(page, site);
    await page.getByRole('button', { name: 'New car' }).click();
    const open = page.getByLabel('Or open a car file');
    const wide = `[${'{},'.repeat(3_000_000)}{}]`;
    const file = (text: string) => ({ name: 'car.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await open.setInputFiles(file(wide));
    await expect(page.getByRole('alert')).toContainText('it holds more than any file of this app');
    await open.setInputFiles(
      file(JSON.stringify({ format: 'cornerwright', version: 1, car: { ...car, id: 'fresh' } })),
    );
    await expect(page.getByRole('button', { name: 'New visit' })).toBeVisible();
  },
);
