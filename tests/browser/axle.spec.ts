/** A rigid axle on links: what an inclinometer and a tape say is read in, its change told with the moves and after them. */
import type { Car, Reading } from '../../core/contract.ts';
import { formatAngle } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { rod } from '../tools/random-cars.ts';
import { openCarFile } from './car-file.ts';
import { expect, openApp, REMEASURE, test } from './harness.ts';
import { planned } from './planned.ts';

const { points } = starters.find(({ kind }) => kind === 'beam-linked')!;
const car: Car = {
  ...{ id: 'axle', label: 'On links', wheel: { rimDiameter: 420 } },
  front: {
    suspension: { kind: 'beam-rear', points: { wheelCentre: [0, 770, 320] }, camber: 0, toe: 0 },
    adjusters: [],
    steered: true,
  },
  rear: {
    suspension: { kind: 'beam-linked', points, camber: 0, toe: 0 },
    adjusters: [{ ...rod('lower', 'lowerBody', 4, 0.5), name: 'Lower link', lead: 1.5 }],
    steered: false,
  },
};
const spec = { rear: { thrustAngle: { low: -0.1, high: 0.1 } } };
const wheel = { camber: -0.4, toe: 0.1 };
const reading: Reading = {
  LF: wheel,
  RF: wheel,
  LR: { ...wheel, toe: 0.4 },
  RR: { ...wheel, toe: -0.3 },
  rear: { pinionAngle: 3.2, lateral: -4 },
};
const typed = ({ LF, RF, LR, RR, rear }: Reading): string[] => [
  ...[LF?.camber, RF?.camber, LF?.toe, RF?.toe, LR?.camber, RR?.camber, LR?.toe, RR?.toe, rear?.pinionAngle].map((x) =>
    formatAngle(x ?? Number.NaN).replace('−', '-'),
  ),
  formatAngle(rear?.lateral ?? Number.NaN, { digits: 1 }).replace('−', '-'),
];

test('pinion and place across the car are asked for, predicted and compared', async ({ page, site }) => {
  const plan = planned({ car, spec, reading, settings: {} });
  const { pinionChange = Number.NaN, lateralChange = Number.NaN } = plan.predicted.rear ?? {};
  const press = (name: string) => page.getByRole('button', { name }).first().click();
  await page.setViewportSize({ width: 360, height: 740 });
  await openApp(page, site);
  await openCarFile(page, { car, spec });
  await press('New visit');
  await page.getByLabel('Pinion and axle’s place too').check();
  await press('LF Camber: empty');
  for (const text of typed(reading)) await page.keyboard.type(text);
  await expect(page.getByRole('button', { name: 'rear Axle left: −4.0' })).toBeVisible();
  await press('Where the adjusters stand');
  await press('These are right');
  await expect(page.locator('.plan-note', { hasText: wordsOf().axleGone(pinionChange, lateralChange) })).toBeVisible();
  // Both rods are one card, with both drawn, one sentence and what the rack reads when both are turned.
  const jobs = jobsIn(plan);
  expect(plan.moves.length).toBe(2);
  for (const [i, job] of jobs.entries()) {
    await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
    await expect(page.locator('.card-form svg.picture')).toHaveCount(job.length);
    await expect(page.locator('.instruction')).toHaveText(sentence(job));
    const { LR, RR, rear } = job.at(-1)?.expectAfter ?? {};
    const shows = page.getByLabel('What the rack will show');
    for (const wheel of [LR, RR]) await expect(shows).toContainText(formatAngle(wheel?.toe ?? Number.NaN));
    await expect(shows).toContainText(`pinion${formatAngle(rear?.pinionAngle ?? Number.NaN)}`);
    await expect(shows).toContainText(formatAngle(rear?.lateral ?? Number.NaN, { digits: 1 }));
    await press('Rear lower link made, both sides');
  }
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Keypad' })).toBeVisible();
  for (const text of typed(plan.predicted)) await page.keyboard.type(text);
  await press('Compare with the plan');
  const told = `predicted ${formatAngle(plan.predicted.rear?.pinionAngle ?? Number.NaN)}`;
  await expect(page.getByText(told, { exact: true })).toBeVisible();
  await expect(page.getByText(wordsOf().axleGone(pinionChange, lateralChange))).toBeVisible();
  await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
});
