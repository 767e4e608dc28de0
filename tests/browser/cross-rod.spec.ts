/** A cross rod and a drag link: their cards are the axle's, and show both its wheels. */
import type { Car, Reading } from '../../core/contract.ts';
import { formatAngle } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { rod } from '../tools/random-cars.ts';
import { openCarFile } from './car-file.ts';
import { expect, MADE, openApp, test } from './harness.ts';
import { planned } from './planned.ts';

const { points } = starters.find(({ kind }) => kind === 'beam-cross-rod')!;
const car: Car = {
  ...{ id: 'cross', label: 'Cross', wheel: { rimDiameter: 420 } },
  front: {
    suspension: { kind: 'beam-cross-rod', points, camber: 0, toe: 0 },
    adjusters: [
      { ...rod('drag', 'dragBody', 4, 1 / 12), name: 'Drag link', lead: 2 },
      { ...rod('cross', 'crossNear', 4, 1 / 12), name: 'Cross rod', lead: 2 },
    ],
    steered: true,
  },
  rear: {
    suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 770, 320] }, camber: 0, toe: 0 },
    adjusters: [],
    steered: false,
  },
};
const spec = { front: { totalToe: { low: 0, aim: 0.1, high: 0.2 }, thrustAngle: { low: -0.1, high: 0.1 } } };
const rear = { camber: 0, toe: 0 };
const reading: Reading = {
  LF: { caster: 3, camber: 0.2, toe: 0.5 },
  RF: { caster: 3, camber: 0.3, toe: -0.1 },
  LR: rear,
  RR: rear,
};

test('total toe by the one, the steering wheel by the other, on cards of the axle', async ({ page, site }) => {
  const { moves } = planned({ car, spec, reading, settings: {} });
  const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
  await page.setViewportSize({ width: 360, height: 740 });
  await openApp(page, site);
  await openCarFile(page, { car, spec });
  await press('New visit');
  await expect(page.getByRole('region', { name: 'Keypad' })).toBeVisible();
  for (const x of [3, 3, 0.2, 0.3, 0.5, -0.1, 0, 0, 0, 0]) {
    await page.keyboard.type(formatAngle(x).replace('−', '-'));
  }
  await press('Where the adjusters stand');
  await press('These are right');
  expect(moves.map(({ adjuster }) => adjuster)).toEqual(['cross', 'drag']);
  for (const [i, { instruction, expectAfter }] of moves.entries()) {
    await expect(page.getByText(`${i + 1} of ${moves.length}`)).toBeVisible();
    const card = page.locator('.card-form');
    await expect(card).toContainText(/^front(Cross rod|Drag link)/);
    await expect(card).toContainText(instruction);
    const shows = page.getByLabel('What the rack will show');
    await expect(shows).toContainText(`LF toe${formatAngle(expectAfter.LF?.toe ?? Number.NaN)}`);
    await expect(shows).toContainText(`RF toe${formatAngle(expectAfter.RF?.toe ?? Number.NaN)}`);
    await press(MADE);
  }
});
