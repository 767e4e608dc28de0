/** What a rack gives is asked for: toe of each wheel or an axle's total, SAI or not; and shown the same way ever after. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import {
  type Car,
  formatAngle,
  formatLength,
  lengthToToe,
  type Plan,
  planMoves,
  planRequest,
  type Reading,
  type Spec,
  toeToLength,
} from '../../core/index.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';

const { car, spec } = JSON.parse(
  readFileSync(fileURLToPath(new URL('../../fixtures/cars/practice.json', import.meta.url)), 'utf8'),
) as { car: Car; spec: Spec };
const rimDiameter = car.wheel.rimDiameter!;

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
const cell = (page: Page, name: string) => page.getByRole('button', { name });

/** Caster and camber of the front, camber of the rear, in the order in which the app asks. */
const ANGLES = { front: ['4.75', '4.75', '-0.60', '-0.60'], rear: ['-1.20', '-1.20'] };
const half = (mm: number): number => lengthToToe(mm / 2, rimDiameter);
const reading = (front: number, rear: number): Reading => {
  const [fore, aft] = [
    { caster: 4.75, camber: -0.6, toe: half(front) },
    { camber: -1.2, toe: half(rear) },
  ];
  return { LF: fore, RF: fore, LR: aft, RR: aft };
};

/** What a rack with tenths of a mm shows for an axle. */
function totalOf({ predicted }: Plan, left: 'LF' | 'LR', right: 'RF' | 'RR'): string {
  const degrees = (predicted[left]?.toe ?? Number.NaN) + (predicted[right]?.toe ?? Number.NaN);
  return formatLength(2 * toeToLength(degrees / 2, rimDiameter), { unit: 'mm', digits: 1, bare: true });
}

async function typeTotals(page: Page, front: string, rear: string): Promise<void> {
  for (const text of [...ANGLES.front, front, ...ANGLES.rear, rear]) await page.keyboard.type(text);
}

test('a total is typed once an axle in mm, halved, kept as typed, and shown as a total from then on', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await page.goto(`${site.url}#/settings`);
  await press(page, 'mm at the rim');
  await page.goto(`${site.url}#/`);
  await page.getByText('Practice car').click();
  await press(page, 'New visit');
  await expect(cell(page, 'LF Caster: empty')).toBeVisible();
  for (const text of [...ANGLES.front, '1.0']) await page.keyboard.type(text);
  await expect(cell(page, 'RF Toe: empty')).toHaveAttribute('aria-pressed', 'true');

  // Changed half way: the caret goes on where something is missing, and changing back brings the wheel's toe back.
  await press(page, 'axle total');
  await expect(page.getByText(/each wheel has half of its total/)).toBeVisible();
  await expect(cell(page, 'front Total toe: empty')).toHaveAttribute('aria-pressed', 'true');
  await expect(cell(page, 'RF Camber: −0.60')).toBeVisible();
  await press(page, 'each wheel');
  await expect(cell(page, 'LF Toe: 1.0')).toBeVisible();
  await press(page, 'axle total');
  // A length that makes an unlikely angle may be one at another diameter.
  await page.keyboard.type('90.0');
  await expect(
    page.getByText(
      /^Each wheel: Toe 6\.01° is unusual.*typed as a length: is the diameter on the car’s card the gauge’s\?$/,
    ),
  ).toBeVisible();
  await cell(page, 'front Total toe: 90.0').click();
  for (const text of ['7.0', ...ANGLES.rear, '2.6']) await page.keyboard.type(text);
  await expect(cell(page, 'front Total toe: 7.0')).toBeVisible();
  await press(page, 'Where the adjusters stand');
  await press(page, 'These are right');

  const file = { format: 'cornerwright', version: 1, car, spec } as const;
  const rounds = [{ reading: reading(7, 2.6), settings: {} }];
  const visits = [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds }];
  const plan = planMoves(planRequest({ ...file, visits }, { style: 'practical' }));
  expect(plan.moves.length).toBeGreaterThan(0);
  const jobs = jobsIn(plan);
  for (const [i, job] of jobs.entries()) {
    await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
    await expect(page.locator('.card-form')).toContainText(sentence(job));
    await expect(page.locator('.expect')).toContainText('total toe');
    await press(page, MADE);
  }
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await press(page, /^As found/);
  await expect(page.locator('.step-done .reading-grid').first()).toContainText('7.0');
  const totals = [totalOf(plan, 'LF', 'RF'), totalOf(plan, 'LR', 'RR')] as const;
  for (const angle of [
    formatAngle(plan.predicted.LF?.caster ?? Number.NaN),
    formatAngle(plan.predicted.RF?.caster ?? Number.NaN),
    formatAngle(plan.predicted.LF?.camber ?? Number.NaN),
    formatAngle(plan.predicted.RF?.camber ?? Number.NaN),
    totals[0],
    formatAngle(plan.predicted.LR?.camber ?? Number.NaN),
    formatAngle(plan.predicted.RR?.camber ?? Number.NaN),
    totals[1],
  ]) {
    await page.keyboard.type(angle.replace('−', '-'));
  }
  await press(page, 'Compare with the plan');
  const front = page.locator('.compare').filter({ hasText: 'front' });
  await expect(front).toContainText('Total toe');
  await expect(front).toContainText(`predicted ${totals[0]}`);
  await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
  await press(page, 'Change a reading');
  await expect(cell(page, `front Total toe: ${totals[0]}`)).toBeVisible();
  await press(page, 'Leave it as it was');

  await press(page, 'As left');
  await expect(page.getByRole('row', { name: /^front total toe 7\.0/ })).toBeVisible();
  await expect(page.getByRole('row', { name: /LF toe|thrust/ })).toHaveCount(0);
  await press(page, 'Sign off');
  await press(page, /(They are|It is) torqued/);
  await page.goto(`${site.url}#/car/${car.id}/history`);
  await expect(page.getByText('front total toe')).toBeVisible();
  await expect(page.getByText('LF toe')).toHaveCount(0);

  // Remembered for the car.
  await page.goto(`${site.url}#/car/${car.id}`);
  await press(page, 'New visit');
  await expect(cell(page, 'front Total toe: empty')).toBeVisible();
});

// In `npm test` tests/state/typing.test.ts goes through every order of the fields.
longTest('SAI is asked for behind its switch, and a total read as an angle is halved too', async ({ page, site }) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  await press(page, 'New visit');
  await expect(cell(page, 'LF SAI: empty')).toHaveCount(0);
  await page.getByLabel('SAI too').check();
  await press(page, 'axle total');
  await typeTotals(page, '4.60', '0.20');
  // In the order of the rows SAI comes last of the front: the rear's figures landed there.
  await expect(cell(page, 'LF SAI: −1.20')).toBeVisible();
  await page.getByLabel('SAI too').uncheck();
  await expect(cell(page, 'front Total toe: 4.60')).toBeVisible();
  await cell(page, 'LR Camber').click();
  for (const text of [...ANGLES.rear, '0.20']) {
    for (let i = 0; i < 5; i += 1) await page.keyboard.press('Backspace');
    await page.keyboard.type(text);
  }
  await expect(page.getByText(/^front: Each wheel: Toe 2\.30° is unusual/)).toBeVisible();
  await press(page, 'Where the adjusters stand');
  await press(page, 'These are right');
  await press(page, /^As found/);
  await expect(page.locator('.reading-grid').first()).toContainText('4.60');
  await expect(page.locator('.reading-grid').first()).not.toContainText('SAI');
});

// In `npm test` tests/state/toe-reference.test.ts asks once, keeps it and changes it for one reading.
longTest(
  'what front toe is read against is asked once, shown ever after, and changed for one reading',
  async ({ page, site }) => {
    await page.setViewportSize({ width: 360, height: 740 });
    await openApp(page, site);
    await page.getByText('Practice car').click();
    await press(page, 'New visit');
    const question = page.getByRole('group', { name: 'Your rack reads front toe against' });
    await expect(question.getByRole('button', { name: 'the thrust line' })).toHaveAttribute('aria-pressed', 'true');
    for (const text of [...ANGLES.front, '0.30', '0.10', ...ANGLES.rear, '0.25', '0.05'])
      await page.keyboard.type(text);
    await press(page, 'Where the adjusters stand');
    await press(page, 'These are right');
    await press(page, /^As found/);
    await expect(page.getByText('Front toe against the thrust line.')).toBeVisible();

    // Another car's first reading asks no more.
    await page.goto(`${site.url}#/settings`);
    const setting = page.getByRole('group', { name: 'Front toe is read against' });
    await expect(setting.getByRole('button', { name: 'the thrust line' })).toHaveAttribute('aria-pressed', 'true');
    await page.goto(`${site.url}#/car/${car.id}`);
    await press(page, 'Go on with the visit');
    await press(page, /^As found/);
    await press(page, 'Change a reading');
    await expect(question).toHaveCount(0);
    const change = page.getByRole('button', { name: 'Change it to the centre line for this reading' });
    expect((await change.boundingBox())?.height).toBeGreaterThanOrEqual(56);
    await change.click();
    await press(page, 'Compare with the plan');
    await press(page, 'These are right');
    await press(page, /^As found/);
    await expect(page.getByText('Front toe against the centre line.')).toBeVisible();
  },
);
