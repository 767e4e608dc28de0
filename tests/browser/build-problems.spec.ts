/** The build card tells what is not right at once, beside its field; drawing and field lead to each other. */
import { openSection } from './build-by-hand.ts';
import { expect, openApp, test } from './harness.ts';

test('problems stand beside their fields, drawing and field in sight above a keyboard, a draft is thrown away', async ({
  page,
  site,
}) => {
  // Half of a small phone is under its keyboard.
  await page.setViewportSize({ width: 360, height: 440 });
  await openApp(page, site);
  await page.getByRole('button', { name: 'New car' }).click();
  await page.getByRole('button', { name: 'The whole card' }).click();
  await expect(page.getByText('Name is missing: text of 1 to 400 characters.')).toBeVisible();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.getByLabel('Name').fill('Ostler van');
  await expect(page.getByText('Name is missing')).toHaveCount(0);
  await page.getByLabel('Wheelbase').fill('20');
  await expect(page.getByRole('alert')).toHaveText('Not “20” but a number from 500 to 10 000 mm.');
  await page.getByLabel('Wheelbase').fill('2600');
  await expect(page.getByRole('alert')).toHaveCount(0);

  await openSection(page, 'Rear suspension');
  await expect(page.locator('.step').first()).toHaveClass(/step-done/);
  await page.getByRole('group', { name: 'Kind of suspension' }).getByRole('button', { name: 'Five links' }).click();
  await page.getByRole('button', { name: 'Points', exact: true }).click();
  await expect(page.locator('.step-live .step-note')).toHaveText('13 missing');
  await expect(page.getByText('Camber is missing: −45° to 45°.')).toBeVisible();

  // From the field to the drawing and back.
  const group = (name: string) => page.getByRole('group', { name });
  const toe = group('toe link, inner end').getByLabel('up', { exact: true });
  await toe.focus();
  const drawing = page.locator('.build-drawing');
  await expect(drawing).toContainText('toe link, inner end');
  for (const part of [drawing, toe, group('toe link, inner end').locator('legend')])
    await expect(part).toBeInViewport({ ratio: 0.95 });
  const below = (await toe.boundingBox())!.y;
  const { y, height } = (await drawing.boundingBox())!;
  expect(below).toBeGreaterThan(y + height);
  const wheel = drawing.locator('.suspension-point').nth(10);
  const { x: left, y: top, width, height: tall } = (await wheel.boundingBox())!;
  await page.mouse.click(left + width / 2, top + tall / 2);
  await expect(group('wheel centre').getByLabel('outboard')).toBeFocused();
  await expect(drawing).toContainText('wheel centre');

  // Nothing of it is kept that nobody wants.
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('button', { name: 'Save the car' }).click();
  await expect(page.getByRole('alert').first()).toBeVisible();
  await page.getByRole('button', { name: 'Discard the draft' }).click();
  await page.getByRole('button', { name: 'Yes, discard it' }).click();
  await page.getByRole('button', { name: 'New car' }).click();
  await page.getByRole('button', { name: 'The whole card' }).click();
  await expect(page.getByLabel('Name')).toHaveValue('');
});
