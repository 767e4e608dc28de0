/** Marks taken back, readings corrected, a second round, an end without a re-measure: the turns a real visit takes. */
import type { Locator, Page } from '@playwright/test';
import { formatAngle, type Reading } from '../../core/index.ts';
import { generalEffects, generalGain } from '../tools/general-effects.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';
import { planned } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

/** All in its window but the left front's toe: one move. */
const TYPED = ['4.75', '4.75', '-0.60', '-0.60', '0.40', '0.10', '-1.20', '-1.20', '0.15', '0.15'];
const wheel = (caster: number, camber: number, toe: number) => ({ caster, camber, toe });
const rear = { camber: -1.2, toe: 0.15 };
const FOUND: Reading = { LF: wheel(4.75, -0.6, 0.4), RF: wheel(4.75, -0.6, 0.1), LR: rear, RR: rear };

async function toTheOneMove(page: Page): Promise<void> {
  await toTheMoves(page, TYPED);
  await page.getByText('Other plans').click();
  await page.getByRole('button', { name: /least work/i }).click();
  await expect(page.getByText('1 of 1')).toBeVisible();
}

test.beforeEach(({ page, site }) => openApp(page, site));

test('the last mark can be taken back until a digit is typed', async ({ page }) => {
  await toTheOneMove(page);
  const plan = planned({ car, spec, reading: FOUND, settings: {} }, { style: 'least-work' });
  expect(plan.moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`)).toEqual(['LF tie-rod']);
  // From another card nothing is booked: not by its name, not by what else is booked of a move.
  for (const card of [/^As found/, /^Before you measure/]) {
    await page.getByRole('button', { name: card }).click();
    await expect(page.getByRole('button', { name: /made|done/i })).toHaveCount(0);
    await expect(page.getByRole('button', { name: /^(Won’t move|Set to…|Leave it)$/ })).toHaveCount(0);
  }
  await page.getByRole('button', { name: 'Back to the move' }).click();
  await expect(page.locator('.card-form').getByRole('button', { name: 'LF tie rod set' })).toBeInViewport();
  await page.getByRole('button', { name: MADE }).click();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await page.getByRole('button', { name: /^Moves/ }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.card-form')).toContainText(plan.moves[0]?.instruction ?? 'no move');
  await page.getByRole('button', { name: MADE }).click();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  await page.keyboard.type('4');
  await page.getByRole('button', { name: /^Moves/ }).click();
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveCount(0);
});

test('what does not come as predicted is named, corrected, then planned again from where things stand', async ({
  page,
}) => {
  await toTheOneMove(page);
  const first = planned({ car, spec, reading: FOUND, settings: {} }, { style: 'least-work' });
  await page.getByRole('button', { name: MADE }).click();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  // The rod was not turned: toe reads as found.
  for (const text of TYPED) await page.keyboard.type(text);
  await page.getByRole('button', { name: 'Compare with the plan' }).click();
  await expect(page.getByText('Not all came as predicted')).toBeVisible();
  await expect(page.getByText(/^LF Tie rod seems not to have been moved, and still to be at/)).toBeVisible();
  await expect(page.getByRole('row', { name: /^LF toe/ })).toContainText('0.40');

  await page.getByRole('button', { name: 'Change a reading' }).click();
  await page.getByRole('button', { name: 'LF Toe: 0.40' }).click();
  for (let i = 0; i < 4; i += 1) await page.keyboard.press('Backspace');
  await page.keyboard.type('0.30');
  await page.getByRole('button', { name: 'Compare with the plan' }).click();
  await expect(page.getByText('toe, high by 0.10', { exact: false })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Re-measured/ })).toHaveCount(1);

  await page.getByRole('button', { name: 'Plan the next moves' }).click();
  const corrected = { ...FOUND, LF: wheel(4.75, -0.6, 0.3) };
  // The plan that was touched is the practical as well as the least work: what is chosen on is the practical.
  const second = planned({ car, spec, reading: corrected, settings: first.positions });
  await expect(page.locator('.card-form')).toContainText(second.moves[0]?.instruction ?? 'no move');
});

// In `npm test` tests/state/cause.test.ts says yes, takes it back and says no; between.spec.ts touches one of them.
longTest('a move that was not made is said yes to: it is taken back, and asked for again', async ({ page }) => {
  await toTheOneMove(page);
  const first = planned({ car, spec, reading: FOUND, settings: {} }, { style: 'least-work' });
  await page.getByRole('button', { name: MADE }).click();
  await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
  for (const text of TYPED) await page.keyboard.type(text);
  await page.getByRole('button', { name: 'Compare with the plan' }).click();
  await page.getByRole('button', { name: 'Yes, that was it' }).click();
  await expect(page.getByText('Corrected in the records.')).toBeVisible();
  await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
  // Killed after the touch, it is so all the same; taken back it is asked again.
  await page.reload();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'No, that is right' }).click();
  await expect(page.getByText(/seems not to have been moved/)).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Predicted against measured' })).toBeVisible();
  await expect(page.locator('.compare').first()).toBeVisible();
  await expect(page.getByText(/seems not to have been moved/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Plan the next moves' }).click();
  await expect(page.locator('.card-form')).toContainText(first.moves[0]?.instruction ? 'rod' : 'no move');
});

test('a visit that ends without a re-measure says so', async ({ page, site }) => {
  await toTheOneMove(page);
  await page.getByRole('button', { name: MADE }).click();
  await page.getByRole('button', { name: 'Close without a re-measure' }).click();
  await expect(page.getByText('Not measured after the moves.')).toBeVisible();
  // Asked once, by its name; signed off all the same the sheet says so for good.
  await page.getByRole('button', { name: 'Sign off' }).click();
  const asked = page.getByRole('alertdialog', { name: 'Not ticked as torqued' });
  await expect(asked).toContainText('LF Tie rod');
  await asked.getByRole('button', { name: 'Not torqued: sign off' }).click();
  await expect(page.getByText('signed off', { exact: true })).toBeVisible();
  const sheet = page.getByText('Signed off without being ticked as torqued: LF Tie rod.');
  await expect(sheet).toBeVisible();
  await page.reload();
  await expect(sheet).toBeVisible();
  await page.getByRole('button', { name: 'Open again' }).click();
  await page
    .getByRole('group', { name: /^Torque/ })
    .getByLabel('LF Tie rod')
    .check();
  await page.getByRole('button', { name: 'Sign off' }).click();
  await expect(page.getByText('signed off', { exact: true })).toBeVisible();
  await expect(page.getByText(/ticked as torqued/)).toHaveCount(0);
  await page.goto(`${site.url}#/`);
  await expect(page.getByText(/not measured after the moves/)).toBeVisible();
});

// In `npm test` tests/store/backup-door.test.ts counts first, brings back and undoes; two-phones.spec.ts has a file of each.
longTest(
  'everything goes to a file and comes back on another phone, counted first and undone after',
  async ({ page, site, browser }) => {
    await toTheOneMove(page);
    await page.goto(`${site.url}#/settings`);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save everything to a file' }).click();
    const file = await (await download).path();
    const other = await (await browser.newContext()).newPage();
    await openApp(other, site);
    await other.goto(`${site.url}#/settings`);
    await other.getByLabel('Restore from a file').setInputFiles(file);
    await expect(other.getByText(/1 cars, 1 visits, 1 readings, 0 moves/)).toBeVisible();
    await other.getByRole('button', { name: 'Restore it' }).click();
    await expect(other.getByText('1 car, 1 visit, 1 reading, 0 moves')).toBeVisible();
    await other.getByRole('button', { name: 'Undo the last restore' }).click();
    await expect(other.getByText(/Goes: 1 visit, 1 reading/)).toBeVisible();
    await other.getByRole('button', { name: 'Undo it' }).click();
    await expect(other.getByText('1 car, 0 visits, 0 readings, 0 moves')).toBeVisible();
    await other.getByRole('button', { name: 'Bring back what the restore brought' }).click();
    await other.getByRole('button', { name: 'Bring it back' }).click();
    await expect(other.getByText('1 car, 1 visit, 1 reading, 0 moves')).toBeVisible();
    await other.context().close();
  },
);

/** The figures of a table's row, as the screen shows them. */
async function figures(table: Locator, row: string | RegExp): Promise<number[]> {
  const cells = await table.locator('tr', { hasText: row }).locator('td').allTextContents();
  return cells.map((text) => Number(text.replace('−', '-').replace(/°| mm/, '')));
}

// In `npm test` the figures stand against outside references in tests/core.
longTest(
  'what else a move changes is told as a general-purpose library has it, what can be reached is drawn',
  async ({ page }) => {
    await toTheOneMove(page);
    const plan = planned({ car, spec, reading: FOUND, settings: {} }, { style: 'least-work' });
    await page.getByText('What else changes').click();
    const { suspension } = car.front;
    const rod = car.front.adjusters.find(({ id }) => id === 'tie-rod');
    const longer = { tieInner: (plan.positions.LF['tie-rod'] as number) * (rod?.lead as number) };
    expect(Math.abs(longer.tieInner)).toBeGreaterThan(0.1);
    const [before, after] = [generalEffects(suspension), generalEffects(suspension, { longer })];
    const table = page.locator('.what-else table');
    await expect(table).toHaveCount(1);
    await expect(table.locator('caption')).toContainText('LF');
    const told = async (row: string, of: (effects: typeof before) => number | undefined, place: number) => {
      const shown = await figures(table, row);
      expect(shown, row).toHaveLength(2);
      // Half of the last place, and what the library is off by.
      for (const [i, effects] of [before, after].entries()) {
        expect(Math.abs((shown[i] ?? Number.NaN) - (of(effects) ?? Number.NaN)), row).toBeLessThan(place / 2 + 1e-3);
      }
    };
    await told('Bump steer at +25 mm', ({ bumpSteer }) => bumpSteer[0], 0.01);
    await told('Bump steer at −25 mm', ({ bumpSteer }) => bumpSteer[1], 0.01);
    await told('Camber gain at +25 mm', ({ camberGain }) => camberGain[0], 0.01);
    await told('Camber gain at −25 mm', ({ camberGain }) => camberGain[1], 0.01);
    await told('SAI', ({ sai }) => sai, 0.01);
    await told('Scrub radius', ({ scrubRadius }) => scrubRadius, 1);
    await told('Caster trail', ({ casterTrail }) => casterTrail, 1);
    await told('Toe-out on turns', ({ toeOutOnTurns }) => toeOutOnTurns, 0.01);

    // Drawn when it is asked for, with the place that the plan is for.
    const cards = page.locator('.reach-card');
    await expect(cards).toHaveCount(1);
    await expect(cards.locator('svg[role=img]')).toHaveCount(0);
    await cards.getByText('Reach of the adjusters').click();
    const { caster = Number.NaN, camber = Number.NaN } = plan.predicted.LF ?? {};
    const put = `caster ${formatAngle(caster, { mark: true })}, camber ${formatAngle(camber, { mark: true })}`;
    const picture = page.getByRole('img', { name: 'What the LF adjusters can reach' });
    await expect(picture).toHaveAccessibleName(new RegExp(`Planned: ${put}\\. Window: .+ can be reached, with toe`));
    await expect(picture.locator('.reach-planned')).toBeVisible();
  },
);

test('ride height tells what each wheel gains where the whole body goes up', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/${car.id}`);
  await page.getByRole('button', { name: 'Ride height' }).click();
  await expect(page.getByText('Height first, then the angles')).toBeVisible();
  // The front stands at +10 mm; with the rear as high the body does not pitch, and each wheel gains what its links give it.
  for (const [end, touch, times] of [
    ['Rear', 'rear +5 mm', 2],
    ['Rear', 'rear +5 mm', 1],
    ['Front', 'front +5 mm', 1],
  ] as const) {
    await page.getByRole('button', { name: new RegExp(`^${end} `) }).click();
    for (let i = 0; i < times; i++) await page.getByRole('button', { name: touch }).click();
    const raised = async (name: string) =>
      Number((await page.getByRole('button', { name }).textContent())?.replace(/\D+/g, ''));
    const [front, rear] = [await raised('Front up'), await raised('Rear up')];
    if (front !== rear) continue;
    for (const [i, axle] of (['front', 'rear'] as const).entries()) {
      const table = page.locator('.height-table').nth(i);
      // The wheel goes down against the body that was raised.
      const gained = generalGain(car[axle].suspension, {}, { travel: -front });
      for (const angle of axle === 'front' ? (['caster', 'camber', 'toe'] as const) : (['camber', 'toe'] as const)) {
        await expect
          .poll(async () => {
            const shown = await figures(table, new RegExp(`^${angle}`, 'i'));
            return shown.map((figure) => Math.abs(figure - gained[angle]) < 0.0051);
          }, `${axle} ${angle} raised by ${front} mm`)
          .toEqual([true, true]);
      }
    }
  }
});

// In `npm test` tests/screens/shop-units.test.ts and form.spec.ts have toe as a length.
longTest(
  'toe in mm at the rim, chosen half way, is planned on as the same angle and changes nothing that was typed',
  async ({ page, site }) => {
    await toTheOneMove(page);
    await page.getByRole('button', { name: MADE }).click();
    await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
    for (const text of TYPED.slice(0, 5)) await page.keyboard.type(text);
    await page.goto(`${site.url}#/settings`);
    await page.getByRole('button', { name: 'mm at the rim' }).click();
    await page.goto(`${site.url}#/`);
    await page.getByText('Practice car').click();
    await expect(page.getByRole('button', { name: 'RF Toe: empty' })).toHaveAttribute('aria-pressed', 'true');
    await expect(page.getByText('Degrees; toe-in is +')).toBeVisible();
    for (const text of TYPED.slice(5)) await page.keyboard.type(text);
    await page.getByRole('button', { name: 'Compare with the plan' }).click();
    // 430 mm · sin 0.40° = 3.00 mm, in the unit that is shown from now on.
    await expect(page.locator('.compare').first()).toContainText('3.0');
    await page.getByRole('button', { name: /^As found/ }).click();
    await expect(page.locator('.reading-grid').first()).toContainText('3.0');
    await page.getByRole('button', { name: /^Re-measured/ }).click();
    await page.getByRole('button', { name: 'Plan the next moves' }).click();
    await expect(page.locator('.by-rack-target')).toContainText(/^\d\.\dtoemm at the rim$/);
  },
);
