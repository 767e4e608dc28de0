/** The turns of a round: a move left this time, the car measured before all is made, and planned on from that. */

import type { Page } from '@playwright/test';
import { formatAngle, type Plan, predictReading, type Reading } from '../../core/index.ts';
import { expect, MADE, openApp, test } from './harness.ts';
import { asked, planned } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

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
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();
/** Every row of a move to come, as it stands there. */
const rows = async (page: Page) =>
  (await page.locator('.move-row', { has: page.locator('.move-leave') }).allInnerTexts()).map((row) => row.trim());
const start = { car, spec, reading: READING, settings: {} };

test('what is left this time changes no other move, and is taken up again', async ({ page, site }) => {
  const plan = planned(start);
  const { moves } = plan;
  expect(moves.length).toBeGreaterThan(3);
  await openApp(page, site);
  await toTheMoves(page, typed(READING));
  await expect(page.getByText(`1 of ${moves.length}`)).toBeVisible();
  const before = await rows(page);
  await page.locator('.move-leave').last().click();
  await expect(page.getByText(`1 of ${moves.length - 1}`)).toBeVisible();
  await expect(page.locator('.move-left')).toHaveCount(1);
  expect(await rows(page)).toEqual(before.slice(0, -1));
  await expect(page.locator('.card-form')).toContainText(moves[0]!.instruction);
  const { corner, adjuster } = moves.at(-1)!;
  const rest: Plan = planned(start, { leave: [{ corner, adjuster }] });
  if (!rest.inWindow) await expect(page.getByText('Without what is left, not all comes in')).toBeVisible();
  await press(page, /^Make .* after all$/);
  await expect(page.getByText(`1 of ${moves.length}`)).toBeVisible();
  expect(await rows(page)).toEqual(before);
  await press(page, 'Leave it');
  await expect(page.locator('.card-form')).toContainText(moves[1]!.instruction);
});

test('after two moves the car is measured, and the rest is planned from what it reads', async ({ page, site }) => {
  const { moves } = planned(start);
  await openApp(page, site);
  await toTheMoves(page, typed(READING));
  await expect(page.getByText(`1 of ${moves.length}`)).toBeVisible();
  await press(page, MADE);
  await expect(page.getByText(`2 of ${moves.length}`)).toBeVisible();
  await press(page, MADE);
  await expect(page.getByText(`3 of ${moves.length}`)).toBeVisible();
  await press(page, 'Measure now');
  await expect(page.getByRole('heading', { name: 'Re-measure' })).toBeVisible();
  await press(page, 'Back to the moves');
  await expect(page.getByText(`3 of ${moves.length}`)).toBeVisible();
  await press(page, 'Measure now');
  await expect(page.getByRole('region', { name: 'Keypad' })).toBeVisible();

  // It does not read as was predicted, so that the old plan's other moves are not those that it needs.
  const settings: Record<string, Record<string, number | string>> = {};
  for (const { corner, adjuster, to } of moves.slice(0, 2)) settings[corner] = { ...settings[corner], [adjuster]: to };
  const then = predictReading(asked(start).car, READING, {}, settings);
  const reading = JSON.parse(
    typed({ ...then, LF: { ...then.LF, toe: (then.LF?.toe ?? 0) + 0.3 } })
      .join(',')
      .replace(/.*/, '[$&]'),
  );
  const [lfCaster, rfCaster, lfCamber, rfCamber, lfToe, rfToe, lrCamber, rrCamber, lrToe, rrToe] = reading;
  const second: Reading = {
    LF: { caster: lfCaster, camber: lfCamber, toe: lfToe },
    RF: { caster: rfCaster, camber: rfCamber, toe: rfToe },
    LR: { camber: lrCamber, toe: lrToe },
    RR: { camber: rrCamber, toe: rrToe },
  };
  for (const text of typed(second)) await page.keyboard.type(text);
  await press(page, 'Compare with the plan');
  await expect(page.getByRole('button', { name: /^Moves 2 made/ })).toBeVisible();
  await press(page, 'Plan the next moves');
  const next = planned({ car, spec, reading: second, settings });
  expect(next.moves[0]?.instruction).not.toBe(moves[2]?.instruction);
  await expect(page.getByText(`1 of ${next.moves.length}`)).toBeVisible();
  await expect(page.locator('.card-form')).toContainText(next.moves[0]!.instruction);
});
