/** Long, as every kind of form is filled in by hand once. A car described by hand on its build card, then measured: what a step does shows at once, and the moves follow. */
import type { Page } from '@playwright/test';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type Adjuster,
  type Axle,
  type AxleName,
  adjusterEffects,
  adjusterKinds,
  adjusterPositions,
  type Car,
  formatAngle,
  pointsFromTape,
  predictReading,
  type Reading,
  suspensionKinds,
  type WheelReading,
  type Window,
} from '../../core/index.ts';
import { oneOf, randomSuspension, stream } from '../tools/random-cars.ts';
import { fewestCases, type KindCase, kindCases, sampleAdjuster } from '../tools/samples.ts';
import { shortOrLong } from '../tools/seeds.ts';
import { openSection, pickKind, typeAdjuster, typeAxle } from './build-by-hand.ts';
import { expect, longTest, openApp, test } from './harness.ts';
import { planned } from './planned.ts';

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).first().click();

/** As the practice car's file holds them, read off the card. */
const inputs = (page: Page, group: string) => page.getByRole('group', { name: group, exact: true }).locator('input');

test('a new car by tape, with a rod, from an empty card to its moves', async ({ page, site }) => {
  await openApp(page, site);
  await press(page, 'New car');
  await press(page, 'The whole card');
  await page.getByLabel('Name').fill('Tarn GT, <blue>');
  await page.getByLabel('Plate').fill('QX 41 TRN');

  for (const axle of ['Front', 'Rear']) {
    await openSection(page, `${axle} suspension`);
    await pickKind(page, 'double-wishbone');
    await press(page, 'Tape dimensions');
    await page.getByLabel('Caster, degrees').fill('4.5');
    await page.getByLabel('Camber, degrees').fill('−0,5');
    await page.getByLabel('Toe, degrees').fill('0.1');
  }
  // Where it stands behind the front axle is out of a hand’s reach, and not asked.
  await expect(page.getByLabel('Behind the front axle')).toHaveCount(0);

  await openSection(page, 'Front adjusters');
  await press(page, 'Threaded rod');
  await expect(page.getByText(/^What a step does shows here once/)).toBeVisible();
  await page
    .getByRole('group', { name: 'Lengthens which rod' })
    .getByRole('button', { name: /^tie rod/ })
    .click();
  await page.getByLabel('Longer by, each turn, mm').fill('1.5');
  await page.getByLabel('Torque, maker’s figure').fill('as the maker says');

  const { points, camber, toe, tolerance } = pointsFromTape({ caster: 4.5, camber: -0.5, toe: 0.1 });
  const rod: Adjuster = {
    id: 'rod',
    name: 'rod',
    kind: 'threaded-rod',
    links: ['tieInner'],
    lead: 1.5,
    stepTurns: 1 / 12,
    range: [-6, 6],
    reference: 0,
  };
  const [effect] = adjusterEffects({ kind: 'double-wishbone', points, camber, toe, tolerance }, [rod]);
  await expect(page.getByRole('table', { name: 'One step: 1 turn longer' })).toContainText(
    formatAngle(effect?.toe ?? Number.NaN, { sign: true }),
  );

  await openSection(page, 'Front windows');
  const window = page.getByRole('group', { name: 'Toe', exact: true });
  await window.getByLabel('low').fill('0');
  await window.getByLabel('high').fill('0.2');
  await press(page, 'Save the car');

  await expect(page.getByRole('heading', { name: 'Tarn GT, <blue>' })).toBeVisible();
  await press(page, 'New visit');
  await expect(page.getByRole('button', { name: /: empty$/ }).first()).toBeVisible();
  for (const text of ['4.50', '4.50', '-0.50', '-0.50', '1.10', '0.10']) await page.keyboard.type(text);
  for (let i = 0; i < 4; i += 1) await press(page, 'Skip');
  await press(page, 'Where the adjusters stand');
  await press(page, 'These are right');
  await expect(page.getByText('1 of 1')).toBeVisible();
  await expect(page.locator('.card-form')).toContainText('LFThreaded rod');
  await expect(page.locator('.card-form')).toContainText('maker’s figure, yours on file: as the maker says');
  await expect(page.locator('body')).not.toContainText('NaN');
});

// Every kind by hand.

const cases = kindCases((suspension) => (suspension === 'double-wishbone' ? 4 : 2));
/** Each kind of adjuster once; of suspensions all under `npm run test:long`. */
const typed = shortOrLong(fewestCases(cases), cases);
const NOTHING: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 770, 320] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: false,
};
/** What is typed into every field of the rack's form. */
const READING: Reading = Object.fromEntries(
  ['LF', 'RF', 'LR', 'RR'].map((corner) => [corner, { camber: 0.1, toe: 0.1 }]),
);
const PAIRS = { front: ['LF', 'RF'], rear: ['LR', 'RR'] } as const;
/** So narrow that what is read is not in it, where that is another angle: a plan has something to do. */
const bounds = (x: number): Window => {
  const half = Math.min(0.15, Math.max(0.01, Math.abs(x - 0.1) / 2));
  return { low: Number((x - half).toFixed(2)), high: Number((x + half).toFixed(2)) };
};
const about = ({ camber, toe }: WheelReading = {}): { camber: Window; toe: Window } | undefined =>
  camber === undefined || toe === undefined ? undefined : { camber: bounds(camber), toe: bounds(toe) };

/** A random car of the case with a window that its adjusters reach and do not stand in. */
function carOf({ suspension, adjusters }: KindCase, seed: number) {
  const front = suspensionKinds[suspension]?.steeringAxis !== undefined;
  const axle: AxleName = front ? 'front' : 'rear';
  for (let i = 0; i < 20; i += 1) {
    const random = stream(seed + 100 * i);
    const own = randomSuspension(random, suspension);
    const fitted = adjusters.map((kind, n) => ({
      ...sampleAdjuster(random, kind, own, `${kind}-${n}`),
      name: `No ${n}`,
    }));
    const made: Axle = { suspension: own, adjusters: fitted, steered: front };
    const car: Car = {
      id: 'x',
      label: `By hand ${suspension}`,
      wheel: { rimDiameter: 430 },
      ...(front ? { front: made, rear: NOTHING } : { front: NOTHING, rear: made }),
    };
    const there = Object.fromEntries(fitted.map((one) => [one.id, oneOf(random, adjusterPositions(one))]));
    const settings = Object.fromEntries(
      PAIRS[axle].map((corner) => [
        corner,
        Object.fromEntries(adjustersOf(car, corner).map(({ id }) => [id, there[id] ?? ''])),
      ]),
    );
    const aim = predictReading(car, READING, {}, settings);
    const [left, right] = PAIRS[axle].map((corner) => about(aim[corner]));
    if (!left || !right) continue;
    const windows = { left, right };
    const plan = planned({ car, spec: { [axle]: windows }, reading: READING, settings: {} });
    if (plan.inWindow && plan.moves.length > 0) return { car, axle, windows };
  }
  throw new Error(`no car of ${suspension} that has something to do`);
}

test('no adjuster kind is left out of the cars by hand', () => {
  const all = new Set(typed.flatMap(({ adjusters }) => adjusters));
  expect([...all].sort()).toEqual(Object.keys(adjusterKinds).sort());
});

for (const one of typed) {
  // In `npm test` the car by tape above, whose rod is typed; kinds.spec.ts walks through visits of such cars.
  longTest(`${one.suspension} by hand, with ${one.adjusters.join(', ')}`, async ({ page, site }) => {
    test.setTimeout(90_000);
    const { car, axle, windows } = carOf(one, cases.indexOf(one) + 7);
    await page.setViewportSize({ width: 360, height: 740 });
    await openApp(page, site);
    await press(page, 'New car');
    await press(page, 'The whole card');
    await page.getByLabel('Name').fill(car.label);
    await typeAxle(page, 'front', car.front);
    await typeAxle(page, 'rear', car.rear);

    await openSection(page, axle === 'front' ? 'Front adjusters' : 'Rear adjusters');
    const { suspension, adjusters } = car[axle];
    const effects = adjusterEffects(suspension, adjusters);
    for (const [i, effect] of effects.entries()) {
      const table = page.locator('.adjuster-form').nth(i).getByRole('table');
      await expect(table.getByRole('cell').nth(1)).toHaveText(formatAngle(effect.camber, { sign: true }));
      await expect(table.getByRole('cell').nth(2)).toHaveText(formatAngle(effect.toe, { sign: true }));
    }
    await openSection(page, axle === 'front' ? 'Front windows' : 'Rear windows');
    await press(page, 'each its own');
    for (const side of ['Left', 'Right'] as const) {
      for (const angle of ['camber', 'toe'] as const) {
        const { low, high } = windows[side === 'Left' ? 'left' : 'right'][angle];
        await inputs(page, `${side} ${angle}`).nth(0).fill(String(low));
        await inputs(page, `${side} ${angle}`).nth(2).fill(String(high));
      }
    }
    await press(page, 'Save the car');
    await expect(page.getByRole('heading', { name: car.label })).toBeVisible();
    await press(page, 'New visit');
    await expect(page.getByRole('button', { name: /: empty$/ }).first()).toBeVisible();
    const fields = await page.getByRole('button', { name: /: empty$/ }).count();
    for (let i = 0; i < fields; i += 1) await page.keyboard.type('0.10');
    await press(page, 'Where the adjusters stand');
    await press(page, 'These are right');
    await expect(page.getByText(/^1 of \d+$/)).toBeVisible();
    await expect(page.getByText(/cannot all be reached/)).toHaveCount(0);
    await expect(page.locator('body')).not.toContainText(/NaN|undefined/);
  });
}

// Parts of the card.

const newCard = async (page: Page): Promise<void> => {
  await press(page, 'New car');
  await press(page, 'The whole card');
  await page.getByLabel('Name').fill('Ostler 250 van');
};

test('a typical layout is marked, badly known until it is typed over, and undone at a touch', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await newCard(page);
  await openSection(page, 'Rear suspension');
  await pickKind(page, 'trailing-arm');
  await inputs(page, 'wheel centre').last().fill('301');
  await page.getByRole('button', { name: /^Start from typical/ }).click();
  await expect(page.getByText(/^Typical, not any maker’s: measure your own\. 3 points/)).toBeVisible();
  await expect(page.getByLabel(/^How well the points are known/)).toHaveValue('30');
  await page.reload();
  await press(page, 'Undo');
  await expect(inputs(page, 'wheel centre').last()).toHaveValue('301');
  await expect(inputs(page, 'arm, inner bush').nth(0)).toHaveValue('');
  await press(page, 'Undo');
  await expect(page.getByLabel(/^How well the points are known/)).toHaveValue('30');
  for (const [i, name] of ['arm, inner bush', 'arm, outer bush', 'wheel centre'].entries()) {
    await expect(
      page.getByText(i === 2 ? 'One point is still typical' : `${3 - i} points are still typical`),
    ).toBeVisible();
    const up = inputs(page, name).last();
    await up.fill(`${Number(await up.inputValue()) + 4}`);
  }
  await expect(page.getByText(/still typical/)).toHaveCount(0);
  await expect(page.getByLabel(/^How well the points are known/)).toHaveValue('');
});

test('a right side of its own, and what a step does on each', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/practice-car/build`);
  await openSection(page, 'Front suspension');
  await press(page, 'differs');
  const right = page.locator('.measures').nth(1);
  await expect(right.getByRole('group', { name: 'tie rod, outer joint' }).locator('input').nth(0)).toHaveValue('−125');
  await right.getByRole('group', { name: 'tie rod, outer joint' }).locator('input').nth(0).fill('-165');
  await openSection(page, 'Front adjusters');
  const rod = page.locator('.adjuster-form', { hasText: /rod/i }).last();
  const toe = (row: string) =>
    rod
      .getByRole('row', { name: new RegExp(`^${row}`) })
      .getByRole('cell')
      .last();
  await expect(toe('Left')).not.toHaveText((await toe('Right').textContent()) ?? '');
  await press(page, 'Save the car');
  await expect(page.getByRole('button', { name: 'New visit' })).toBeVisible();
  await page.goto(`${site.url}#/car/practice-car/build`);
  await openSection(page, 'Front suspension');
  await expect(page.getByRole('button', { name: 'differs' })).toHaveAttribute('aria-pressed', 'true');
});

test('windows of each side, and steer-ahead where wheels steer', async ({ page, site }) => {
  await page.goto(`${site.url}#/car/practice-car/build`);
  await openSection(page, 'Front windows');
  await expect(inputs(page, 'Steer-ahead').first()).toBeVisible();
  const low = await inputs(page, 'Camber').nth(0).inputValue();
  await press(page, 'each its own');
  await expect(inputs(page, 'Left camber').nth(0)).toHaveValue(low);
  await inputs(page, 'Right camber').nth(0).fill('9');
  await press(page, 'Save the car');
  await expect(page.getByRole('alert')).toContainText('Not “9” but a number below the upper end');
  await inputs(page, 'Right camber').nth(0).fill('-2.5');
  await inputs(page, 'Right camber').nth(1).fill('');
  await press(page, 'Save the car');
  await page.getByRole('button', { name: 'Build' }).click();
  await openSection(page, 'Front windows');
  await expect(inputs(page, 'Right camber').nth(0)).toHaveValue('−2.50');
  await expect(inputs(page, 'Left camber').nth(0)).toHaveValue(low);
  await openSection(page, 'Rear windows');
  await expect(inputs(page, 'Thrust angle').first()).toBeVisible();
});

test('only what fits is offered, packs pair by name, and one that is not right opens at its field', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await newCard(page);
  await openSection(page, 'Front adjusters');
  const offered = page.getByRole('group', { name: 'Add an adjuster' });
  await expect(offered.getByRole('button', { name: 'Strut clamp bolt' })).toHaveCount(0);
  await expect(offered.getByRole('button', { name: 'Axle wedge' })).toHaveCount(0);
  const pack = (id: string, at: string): Adjuster => ({
    id,
    name: `Pack ${id}`,
    kind: 'shim-pack',
    at,
    direction: [0, 1, 0.2],
    sizes: [1, 3],
    max: 9,
    reference: 3,
  });
  await typeAdjuster(page, 'double-wishbone', pack('ahead', 'upperFront'));
  await typeAdjuster(page, 'double-wishbone', pack('behind', 'upperRear'));
  await page.getByLabel(/^Other pack of the arm/).selectOption({ label: 'Pack ahead' });
  await page.getByLabel(/^Most that the two may differ/).fill('a lot');
  await page.getByRole('button', { name: 'Pack behind close' }).click();
  await openSection(page, 'Front suspension');
  for (const [name, value] of [
    ['Caster', '3'],
    ['Camber', '0'],
    ['Toe', '0'],
  ]) {
    await page.getByLabel(`${name}, degrees`).fill(value ?? '');
  }
  await openSection(page, 'The car');
  await press(page, 'Save the car');
  await expect(page.getByRole('alert')).toContainText('Not “a lot” but a number from 0 to 100 mm.');
  await expect(page.getByLabel(/^Most that the two may differ/)).toHaveValue('a lot');
});

test('one axle of another car is copied, and undone', async ({ page, site }) => {
  await openApp(page, site);
  await newCard(page);
  await page.getByLabel('Copy from another car').selectOption({ label: 'Practice car' });
  await press(page, 'Front axle');
  await expect(page.getByText('The front axle of Practice car copied.')).toBeVisible();
  await expect(page.getByLabel('Name')).toHaveValue('Ostler 250 van');
  await openSection(page, 'Front adjusters');
  await expect(page.locator('.adjuster-form').first()).toBeVisible();
  await openSection(page, 'Rear adjusters');
  await expect(page.locator('.adjuster-form')).toHaveCount(0);
  await openSection(page, 'Front windows');
  await press(page, 'Undo');
  await openSection(page, 'Front adjusters');
  await expect(page.locator('.adjuster-form')).toHaveCount(0);
});

test('a car leaves as a file and comes back: into another profile whole, into its own only what is new', async ({
  page,
  site,
  browser,
}) => {
  await openApp(page, site);
  await page.getByText('Practice car').click();
  const download = page.waitForEvent('download');
  await press(page, 'Car file');
  const path = await (await download).path();
  const file = { name: 'car.json', mimeType: 'application/json' };

  const other = await (await browser.newContext()).newPage();
  await openApp(other, site);
  await press(other, 'New car');
  const input = other.getByLabel('Or open a car file');
  await input.setInputFiles({
    ...file,
    buffer: Buffer.from('{"format":"cornerwright","version":1,"car":{"id":"x"}}'),
  });
  await expect(other.getByRole('alert')).toContainText('Name of the car is missing');
  await input.setInputFiles(path);
  await expect(other.getByText('Practice car was here already. Nothing in the file is new')).toBeVisible();

  const visit = (carId: string) => ({
    id: `v ${carId}`,
    carId,
    opened: '2025-01-01T08:00:00Z',
    closed: '2025-01-01T09:00:00Z',
    rounds: [{ reading: { LF: { camber: -0.5 } }, settings: {} }],
  });
  const { car, spec } = await parsed(path);
  const grown = {
    format: 'cornerwright',
    version: 1,
    car: { ...car, label: 'Learner' },
    spec,
    visits: [visit(car.id)],
  };
  await input.setInputFiles({ ...file, buffer: Buffer.from(JSON.stringify(grown)) });
  await expect(other.getByText('Came in: 1 visit, 1 reading.')).toBeVisible();
  await press(other, 'Look at the file’s build');
  await expect(other.getByLabel('Name')).toHaveValue('Learner');
  await press(other, 'Undo the changes');
  await expect(other.getByLabel('Name')).toHaveValue('Practice car');
  await other.getByRole('link', { name: 'Back' }).click();
  await expect(other.getByText('Visit of')).toHaveCount(1);

  const stranger = { ...grown, car: { ...car, id: 'elsewhere', label: 'Ribble Six' }, visits: [visit('elsewhere')] };
  await other.goto(`${site.url}#/`);
  await press(other, 'New car');
  await other
    .getByLabel('Or open a car file')
    .setInputFiles({ ...file, buffer: Buffer.from(JSON.stringify(stranger)) });
  await expect(other.getByRole('heading', { name: 'Ribble Six' })).toBeVisible();
  await other.context().close();
});

async function parsed(path: string): Promise<{ car: Car; spec: unknown }> {
  const { readFile } = await import('node:fs/promises');
  return JSON.parse(await readFile(path, 'utf8'));
}
