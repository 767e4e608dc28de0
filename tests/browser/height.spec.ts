/** Ride height: what the rack shows of both ends as the body pitches, and whose wheelbase that is. */
import type { Car } from '../../core/contract.ts';
import { formatAngle, heightEffect } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { openCarFile } from './car-file.ts';
import { expect, openApp, test } from './harness.ts';

const layout = (kind: string) => {
  const { points, camber, toe } = starters.find((one) => one.kind === kind)!;
  return { kind, points, camber, toe };
};
const car: Car = {
  ...{ id: 'tall', label: 'Tall', wheel: { rimDiameter: 420 } },
  front: { suspension: layout('double-wishbone'), adjusters: [], steered: true },
  rear: { suspension: layout('beam-linked'), adjusters: [], steered: false },
};

test('either end is raised, all four corners are told, and the wheelbase is the usual one until it is typed', async ({
  page,
  site,
}) => {
  const caster = (own: object, raise: object) =>
    formatAngle(heightEffect({ ...car, ...own }, {}, raise).corners.LF?.caster ?? Number.NaN, { sign: true });
  const row = page.getByRole('row', { name: /^Caster/ });
  await page.setViewportSize({ width: 360, height: 740 });
  await openApp(page, site);
  await openCarFile(page, { car });
  await page.getByRole('button', { name: 'Ride height' }).click();
  await expect(row).toContainText(caster({}, { front: 10 }));
  await page.getByRole('button', { name: /^Rear/ }).click();
  for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'rear −5 mm' }).click();
  await expect(row).toContainText(caster({}, { front: 10, rear: -20 }));
  await expect(page.locator('table')).toHaveCount(2);
  await expect(page.getByText('usual 2600 mm; type yours')).toBeVisible();
  await page.getByRole('link', { name: 'Type the wheelbase' }).click();
  await page.getByLabel('Wheelbase, mm').fill('4000');
  await page.getByRole('button', { name: 'Save the car' }).click();
  await page.getByRole('button', { name: 'Ride height' }).click();
  await expect(row).toContainText(caster({ wheelbase: 4000 }, { front: 10 }));
  await expect(page.getByText('Wheelbase: 4000 mm')).toBeVisible();
  await expect(page.getByText('usual')).toHaveCount(0);
});
