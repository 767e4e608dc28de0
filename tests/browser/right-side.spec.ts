/** A car that is not its own mirror: its right list typed on the build card, its chart, its steps and its own move card. */
import type { Page } from '@playwright/test';
import { type Adjuster, adjusterEffects, type Car, formatAngle, type Reading } from '../../core/index.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { openSection } from './build-by-hand.ts';
import { expect, longTest, test } from './harness.ts';
import { planned } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

const { suspension, adjusters } = car.front;
const rod = adjusters.find(({ kind }) => kind === 'threaded-rod') as Adjuster;
/** The other rod has a finer thread and a name of its own; the first adjuster is not there at all. */
const own: Adjuster = { ...rod, name: 'Rod with the fine thread', lead: 1 };
const rightAdjusters = adjusters.slice(1).map((one) => (one === rod ? own : one));
const lopsided: Car = { ...car, front: { ...car.front, rightAdjusters } };

const READING: Reading = {
  LF: { caster: 3.42, camber: -0.49, toe: 0.05 },
  RF: { caster: 3.3, camber: -0.51, toe: 0.45 },
  LR: { camber: -1, toe: 0.1 },
  RR: { camber: -1, toe: 0.1 },
};
const TYPED = ['3.42', '3.30', '-0.49', '-0.51', '0.05', '0.45', '-1.00', '-1.00', '0.10', '0.10'];

/** The forms of the right list: they stand behind those of the left one. */
const onRight = (page: Page) => page.locator('.side-head', { hasText: 'Right side' }).locator('~ .adjuster-form');
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first().click();

async function typeRightSide(page: Page): Promise<void> {
  await openSection(page, 'Front adjusters');
  const choice = page.getByRole('group', { name: 'Adjusters on the right side' });
  await choice.getByRole('button', { name: 'differ', exact: true }).click();
  await expect(onRight(page)).toHaveCount(adjusters.length);
  await onRight(page).first().getByRole('button', { name: /open$/ }).click();
  await press(page, 'Take it off the car');
  await onRight(page).last().getByRole('button', { name: /open$/ }).click();
  await onRight(page).last().getByLabel(/^Name/).fill('Rod with the fine thread');
  await onRight(page)
    .last()
    .getByLabel(/^Longer by, each turn/)
    .fill('1');
}

// In `npm test` tests/property/right-adjusters.test.ts plans such a car.
longTest(
  'a right side with adjusters of its own is typed, charted, planned and shown on its own card',
  async ({ page, site }) => {
    await page.setViewportSize({ width: 360, height: 740 });
    await page.goto(`${site.url}#/car/practice-car/build`);
    await typeRightSide(page);
    // What a step does, a side each.
    const toe = (list: readonly Adjuster[]) =>
      formatAngle(adjusterEffects(suspension, list).find(({ adjuster }) => adjuster === rod.id)?.toe ?? Number.NaN, {
        sign: true,
      });
    await expect(onRight(page).last().getByRole('cell').last()).toHaveText(toe(rightAdjusters));
    await expect(
      page
        .locator('.adjuster-form')
        .nth(adjusters.length - 1)
        .getByRole('cell')
        .last(),
    ).toHaveText(toe(adjusters));
    await press(page, 'Save the car');
    await expect(page.getByText(/Right: .*Rod with the fine thread/)).toBeVisible();

    await press(page, 'Its chart');
    await expect(page.getByText(/^Left: .* degrees gained$/)).toBeVisible();
    await expect(page.getByText(/^Right: .* degrees gained$/)).toBeVisible();
    await press(page, 'To the car');

    const plan = planned({ car: lopsided, spec, reading: READING, settings: {} });
    const jobs = jobsIn(plan);
    const at = jobs.findIndex(([move]) => move?.corner === 'RF' && move.adjuster === rod.id);
    expect(at, 'a move of the right side’s own rod').toBeGreaterThanOrEqual(0);
    await page.goto(`${site.url}#/`);
    await toTheMoves(page, TYPED);
    for (let i = 0; i < at; i += 1) {
      await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
      await page.locator('.action-bar-primary').click();
    }
    await expect(page.getByText(`${at + 1} of ${jobs.length}`)).toBeVisible();
    await expect(page.locator('.card-form')).toContainText('RFRod with the fine thread');
    await expect(page.locator('.card-form')).toContainText(sentence(jobs[at]!));
  },
);

test('the right side is the mirror again at a touch, and a touch more brings its list back', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/practice-car/build`);
  await typeRightSide(page);
  await press(page, 'are the mirror image');
  await expect(page.locator('.side-head')).toHaveCount(0);
  await expect(page.locator('.adjuster-form')).toHaveCount(adjusters.length);
  await press(page, 'Undo');
  await expect(onRight(page)).toHaveCount(adjusters.length - 1);
  await expect(onRight(page).last()).toContainText('Rod with the fine thread');
  // What is wrong on the right is said there.
  await onRight(page)
    .last()
    .getByLabel(/^Longer by, each turn/)
    .fill('x');
  await press(page, 'Save the car');
  await expect(onRight(page).last().getByRole('alert')).toContainText('Not “x” but a number');
});
