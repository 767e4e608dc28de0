/** What a tape would bring, on the build card of a car that nobody measured: as the core has it; typed, it is in the car. */
import type { Car, CarFile, Spec } from '../../core/contract.ts';
import { dimensionWorth, planOfFile, validateCarFile } from '../../core/index.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { fitmentsFor } from '../../core/starters/fitments.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { lengthIn, lengthsOf } from '../../core/suspension/tape/measure.ts';
import { openCarFile } from './car-file.ts';
import { fill } from './fill.ts';
import { expect, openApp, test } from './harness.ts';

const usual = (kind: string, axle: 'front' | 'rear', ...ids: string[]) => ({
  suspension: suspensionFromStarter(startersFor(kind, axle)[0]!, axle),
  adjusters: ids.flatMap((id) => fitmentsFor(kind, axle).find((one) => one.id === id)!.adjusters),
  steered: axle === 'front',
});
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const car: Car = {
  ...{ id: 'usual', label: 'Ostler hatchback', wheel: {} },
  front: usual('double-wishbone', 'front', 'shims-out', 'tie-rod'),
  rear: usual('five-link', 'rear'),
};
const spec: Spec = { front: { camber: window(-0.5, 0.25), caster: window(4.5, 0.4), toe: window(0.08, 0.08) } };
const file: CarFile = { format: 'cornerwright', version: 1, car, spec };
const percent = (chance: number): number => Math.round(100 * chance);
const lengths = lengthsOf('double-wishbone');

test('the length that helps most is asked first, with what it is worth; typed, the chance is that', async ({
  page,
  site,
}) => {
  test.setTimeout(90_000);
  await openApp(page, site);
  // Where the rack leads the moves little is left to be measured for.
  await fill(page, { preferences: [{ id: 'live', value: [] }] });
  await openCarFile(page, { car, spec });
  await expect(page.getByRole('heading', { name: car.label })).toBeVisible();
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  await page.locator('.step-head', { hasText: 'Front suspension' }).click();

  const worth = dimensionWorth(file).front!;
  const [best] = worth.lengths;
  const dimension = lengths.find(({ name }) => name === best!.name)!;
  const section = page.getByRole('region', { name: 'What a tape would bring' });
  await expect(section.locator('.worth-figure')).toHaveText(
    `${percent(worth.now)} → ${percent(best!.chance)} %: worth it`,
    { timeout: 30_000 },
  );
  // Its two ends are marked, large, and nothing else is.
  await expect(section.locator('.suspension-ring')).toHaveCount(dimension.between.length);
  const others = section.locator('.worth-row');
  await expect(others.first()).toContainText(`${percent(worth.now)} →`);

  // As it is in the layout: what is known of it is all that changes.
  const own = lengthIn(dimension, car.front.suspension.points);
  await section.getByLabel(`${dimension.label}, mm`).fill(own.toFixed(3));
  const measured = {
    ...car,
    front: { ...car.front, suspension: { ...car.front.suspension, measured: { [dimension.name]: own } } },
  };
  const after = dimensionWorth({ ...file, car: measured }).front!;
  expect(percent(after.now)).toBe(percent(best!.chance));
  await expect(section.locator('.worth-figure')).toHaveText(`${percent(after.now)} % with it`, { timeout: 30_000 });

  // Five more than it is: the points are the nearest that have it.
  await section.getByLabel(`${dimension.label}, mm`).fill((own + 5).toFixed(3));
  await page.getByRole('button', { name: 'Save the car' }).click();
  await expect(page.getByRole('heading', { name: car.label })).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Car file' }).click(),
  ]);
  const stream = await download.createReadStream();
  let text = '';
  for await (const part of stream) text += part;
  const kept = validateCarFile(JSON.parse(text)).car.front.suspension;
  expect(kept.measured?.[dimension.name]).toBeCloseTo(own + 5, 3);
  expect(lengthIn(dimension, kept.points)).toBeCloseTo(own + 5, 3);
  expect(kept.tolerance).toBe(30);
});

test('a length that none near it can have is refused at its field, and a sure car is asked for nothing', async ({
  page,
  site,
}) => {
  test.setTimeout(90_000);
  const wide: Spec = { front: { toe: window(0.08, 2) } };
  expect(
    planOfFile({
      ...file,
      spec: wide,
      visits: [
        {
          id: 'v',
          carId: car.id,
          opened: '2026-01-01T00:00:00Z',
          rounds: [{ reading: { LF: { toe: 3 }, RF: { toe: 0 } }, settings: {} }],
        },
      ],
    }).chance,
  ).toBeGreaterThan(0.9);
  await openApp(page, site);
  await openCarFile(page, { car, spec: wide });
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  await page.locator('.step-head', { hasText: 'Front suspension' }).click();
  const section = page.getByRole('region', { name: 'What a tape would bring' });
  await expect(section.getByText('not needed')).toBeVisible({ timeout: 30_000 });
  await expect(section.locator('.worth-row')).toHaveCount(0);
});
