/** A plan that is nearly as sure with less work is pointed out, and taken with a touch. */
import type { Reading } from '../../core/contract.ts';
import { planChoices } from '../../core/index.ts';
import { expect, longTest, openApp } from './harness.ts';
import { asked } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

const TYPED = ['3.42', '2.96', '-0.99', '-0.01', '0.21', '-0.01', '-1.24', '-0.69', '0.19', '0.08'];
const READING: Reading = {
  LF: { caster: 3.42, camber: -0.99, toe: 0.21 },
  RF: { caster: 2.96, camber: -0.01, toe: -0.01 },
  LR: { camber: -1.24, toe: 0.19 },
  RR: { camber: -0.69, toe: 0.08 },
};

// In `npm test` tests/property/plan-choices.test.ts has the choices that are told.
longTest('what is nearly as sure with less work is told beside the other plans', async ({ page, site }) => {
  const choices = planChoices(asked({ car, spec, reading: READING, settings: {} }));
  const [practical, ...others] = choices;
  const surest = others.find(({ styles }) => styles.includes('surest'));
  if (!practical || !surest) throw new Error('there are no two plans');
  const lighter = choices
    .filter(({ chance, effort }) => chance > surest.chance - 0.02 && effort < surest.effort)
    .reduce((least, one) => (one.effort < least.effort ? one : least));
  expect(lighter.moves).toBeLessThan(surest.moves);

  await openApp(page, site);
  await toTheMoves(page, TYPED);
  // What the app starts from is that already.
  await expect(page.getByText(`1 of ${practical.jobs}`)).toBeVisible();
  await page.getByText('Other plans').click();
  await expect(page.getByText('Nearly as sure')).toHaveCount(0);
  await page.locator('.plan-choice', { hasText: 'Surest' }).click();
  await expect(page.getByText(`1 of ${surest.jobs}`)).toBeVisible();
  const told = `${lighter.jobs} moves, ${Math.round(lighter.effort)} min`;
  await expect(page.getByText(`Nearly as sure: ${told}`)).toBeVisible();
  await page.getByText('Other plans').click();
  await page.locator('.plan-choice', { hasText: 'Practical' }).click();
  await expect(page.getByText(`1 of ${practical.jobs}`)).toBeVisible();
  await expect(page.getByText('Nearly as sure')).toHaveCount(0);
});
