/** The turns of a round: a move left this time, the car measured before all is made, and planned on from that. */

import type { Page } from '@playwright/test';
import type { Moved, Position, Reading } from '../../core/contract.ts';
import { formatAngle, planOfFile } from '../../core/index.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { fill } from './fill.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';
import { planned, takenDown } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';
import { open, RECORDS, SCREENS } from './screens.ts';

const READING: Reading = {
  LF: { caster: 3.42, camber: -0.99, toe: 0.21 },
  RF: { caster: 2.96, camber: -0.01, toe: -0.01 },
  LR: { camber: -1.24, toe: 0.19 },
  RR: { camber: -0.69, toe: 0.08 },
};
/** In the order in which the app asks, typed on a keyboard. */
const typed = ({ LF, RF, LR, RR }: Reading): string[] =>
  [LF?.caster, RF?.caster, LF?.camber, RF?.camber, LF?.toe, RF?.toe, LR?.camber, RR?.camber, LR?.toe, RR?.toe].map(
    (value) => formatAngle(value ?? Number.NaN).replace('−', '-'),
  );
const read = (texts: readonly string[]): Reading => {
  const [lf, rf, lfCamber, rfCamber, lfToe, rfToe, lrCamber, rrCamber, lrToe, rrToe] = texts.map(Number);
  return {
    LF: { caster: lf, camber: lfCamber, toe: lfToe },
    RF: { caster: rf, camber: rfCamber, toe: rfToe },
    LR: { camber: lrCamber, toe: lrToe },
    RR: { camber: rrCamber, toe: rrToe },
  } as Reading;
};
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
/** Every row of a move to come, as it stands there. */
const rows = async (page: Page) =>
  (await page.locator('.move-row', { has: page.locator('.move-leave') }).allInnerTexts()).map((row) => row.trim());
const start = { car, spec, reading: READING, settings: {} };

// In `npm test` tests/state/leave.test.ts has the rest stand, and what was left taken up again.
longTest('what is left this time changes no other move, and is taken up again', async ({ page, site }) => {
  const jobs = jobsIn(planned(start));
  expect(jobs.length).toBeGreaterThan(3);
  expect(jobs.some((job) => job.length > 1)).toBe(true);
  await openApp(page, site);
  await toTheMoves(page, typed(READING));
  await expect(page.getByText(`1 of ${jobs.length}`)).toBeVisible();
  const before = await rows(page);
  await page.locator('.move-leave').last().click();
  await expect(page.getByText(`1 of ${jobs.length - 1}`)).toBeVisible();
  await expect(page.locator('.move-left')).toHaveCount(1);
  expect(await rows(page)).toEqual(before.slice(0, -1));
  await expect(page.locator('.card-form')).toContainText(sentence(jobs[0]!));
  const { chance, inWindow } = planned(start, {
    leave: jobs.at(-1)!.map(({ corner, adjuster }) => ({ corner, adjuster })),
  });
  expect(inWindow).toBe(false);
  await expect(page.getByText('Without what is left, not all comes in')).toBeVisible();
  const told = chance < 0.01 ? 'under 1 %' : `${Math.round(100 * chance)} %`;
  await expect(page.getByText(`in the window without it: ${told}`)).toBeVisible();
  await press(page, /^Make it after all/);
  await expect(page.getByText(`1 of ${jobs.length}`)).toBeVisible();
  expect(await rows(page)).toEqual(before);
  await press(page, /^Leave it$/);
  // What the rack leads is turned to its window all the same.
  const [next] = planned(start, { leave: jobs[0]!.map(({ corner, adjuster }) => ({ corner, adjuster })) }).moves;
  const { low, high } = spec.rear!.toe!;
  expect(next?.setBy?.value).toBeGreaterThan(low);
  expect(next?.setBy?.value).toBeLessThan(high);
  await expect(page.locator('.card-form')).toContainText(sentence([next!]));
});

// In `npm test` between.spec.ts measures before all is made, and plans on from what it reads.
longTest('after two moves the car is measured, and the rest is planned from what it reads', async ({ page, site }) => {
  const jobs = jobsIn(planned(start));
  const made = jobs.slice(0, 2);
  await openApp(page, site);
  await toTheMoves(page, typed(READING));
  for (const [i, job] of made.entries()) {
    await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
    await expect(page.locator('.card-form')).toContainText(sentence(job));
    await press(page, MADE);
  }
  await expect(page.getByText(`3 of ${jobs.length}`)).toBeVisible();
  await press(page, 'Measure now');
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await press(page, 'Back to the moves');
  await expect(page.getByText(`3 of ${jobs.length}`)).toBeVisible();
  await press(page, 'Measure now');
  await expect(page.getByRole('region', { name: 'Keypad' })).toBeVisible();
  // Toe does not read as was predicted, so that the old plan's other moves are not those that it needs.
  const now = { ...made.at(-1)!.at(-1)!.expectAfter, toeReference: undefined };
  const second = read(typed({ ...now, LF: { ...now.LF, toe: (now.LF?.toe ?? 0) + 0.3 } }));
  for (const text of typed(second)) await page.keyboard.type(text);
  await press(page, 'Compare with the plan');
  await expect(page.getByRole('button', { name: /^Moves 2 made/ })).toBeVisible();
  await press(page, 'Plan the next moves');
  const settings: Record<string, Record<string, Position>> = {};
  for (const { corner, adjuster, to } of made.flat()) settings[corner] = { ...settings[corner], [adjuster]: to };
  const next = jobsIn(planned({ car, spec, reading: second, settings }));
  await expect(page.getByText(`1 of ${next.length}`)).toBeVisible();
  await expect(page.locator('.card-form')).toContainText(sentence(next[0]!));
  expect(next.map(sentence)).not.toEqual(jobs.slice(2).map(sentence));
});

test('a job of two packs is booked by one touch, taken back by one, and may be refused in part', async ({
  page,
  site,
}) => {
  const { moves } = planned(start);
  const jobs = jobsIn({ moves });
  const arm = jobs.findIndex((job) => job.length > 1);
  await openApp(page, site);
  await toTheMoves(page, typed(READING));
  for (let i = 0; i < arm; i += 1) {
    await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
    // A nervous thumb touches twice: the second one is not for the job that has come under it.
    await page.getByRole('button', { name: MADE }).dblclick();
  }
  await expect(page.getByText(`${arm + 1} of ${jobs.length}`)).toBeVisible();
  await expect(page.locator('.card-form svg.picture')).toHaveCount(2);
  await press(page, 'RF upper arm made, front and rear');
  await expect(page.getByText(`${arm + 2} of ${jobs.length}`)).toBeVisible();
  await expect(page.locator('.move-made').last()).toContainText(/front .* mm, rear .* mm, done/);
  await press(page, 'Undo');
  await expect(page.locator('.card-form')).toContainText(sentence(jobs[arm]!));

  await press(page, 'Won’t move');
  await press(page, /^Rear$/);
  await expect(page.locator('.move-made').last()).toContainText('won’t move');
  const stuck = jobs[arm]!.find(({ job }) => job?.end === 'rear')!;
  const done = jobs.slice(0, arm).flat();
  const moved = [
    ...done.map((move) => ({ ...move, outcome: 'done' as const })),
    { ...stuck, to: stuck.from, outcome: 'wont-move' as const },
  ];
  const plain = moved.map(
    ({ corner, adjuster, from, to, outcome }): Moved => ({ corner, adjuster, from, to, outcome }),
  );
  const rounds = [{ reading: takenDown(READING), settings: {}, moved: plain }];
  const visits = [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds }];
  const next = planOfFile({ format: 'cornerwright', version: 1, car, spec, visits }, { style: 'practical' });
  const left = jobsIn(next);
  await expect(page.getByText(`${arm + 2} of ${arm + 1 + left.length}`)).toBeVisible();
  await expect(page.locator('.card-form')).toContainText(sentence(left[0]!));
});

test('while another card is up nothing says that a move is made; under its own it is named', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, RECORDS);
  await open(page, SCREENS.find(({ name }) => name === 'moves')!);
  const made = page.getByRole('button', { name: MADE });
  await expect(made).toHaveCount(1);
  const card = page.locator('.card-form');
  await expect(card.locator('.card-foot').getByRole('button', { name: MADE })).toHaveCount(1);
  const [corner, title] = (await card.locator('.card-head > *').allInnerTexts())
    .join(' ')
    .trim()
    .split(/\s+(.*)/s);
  await expect(made).toHaveText(new RegExp(`^${corner} ${title?.trim()} made$`, 'i'));
  await page.getByRole('button', { name: /^As found/ }).tap();
  await expect(page.getByRole('button', { name: 'Change a reading' })).toBeVisible();
  await expect(made).toHaveCount(0);
  await expect(page.getByRole('button', { name: /made|done/i })).toHaveCount(0);
  await page.getByRole('button', { name: /^As found/ }).tap();
  await expect(made).toHaveCount(1);
});
