/** Where the adjusters stand, touched on the drawing with a thumb, gone to by steps, typed: echoed large, and kept. */
import type { Page } from '@playwright/test';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { Adjuster } from '../../core/contract.ts';
import { fill } from './fill.ts';
import { expect, openApp, test } from './harness.ts';
import { RECORDS } from './screens.ts';

test.use({ viewport: { width: 360, height: 740 } });

const sample = (kind: string, more: Partial<Adjuster> = {}): Adjuster => ({
  ...{ id: kind, name: `The ${kind}`, kind, at: 'upperFront', reference: 0 },
  ...adjusterKinds[kind]?.sample.adjuster,
  ...more,
});
const FRONT = [
  sample('eccentric-cam', { turns: 'clockwise' }),
  sample('eccentric-cam', { id: 'unsided', name: 'No side on file' }),
  sample('indexed-cam'),
  sample('threaded-rod', { links: ['tieInner'] }),
  sample('shim-pack', { sizes: [1, 1.5, 3], max: 12, reference: 6, direction: [0, -1, 0] }),
];
/** The visit that stands there, of a car with these in front. */
const records = {
  ...RECORDS,
  cars: (RECORDS.cars ?? []).map((one) =>
    one.id === 'standing' ? { ...one, car: { ...one.car, front: { ...one.car.front, adjusters: FRONT } } } : one,
  ),
};
const row = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) }).first();
/** Up comes what stood there; what was up is set first. */
async function up(page: Page, name: string): Promise<void> {
  const set = page.getByRole('button', { name: 'Set', exact: true });
  if (await set.isVisible()) await set.tap();
  await row(page, name).click();
}
const echo = (page: Page) => page.locator('.stepper-value');

/** A touch at a share of the drawing's width and height. */
async function touch(page: Page, x: number, y: number): Promise<void> {
  const drawing = page.locator('.face > svg');
  await drawing.tap({ trial: true });
  const box = (await drawing.boundingBox())!;
  await page.touchscreen.tap(box.x + x * box.width, box.y + y * box.height);
}

test('marks are touched, stepped to and typed, each where it belongs', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, records);
  await page.goto(`${site.url}#/visit/visit-standing`);

  // A clock with its + side, clockwise on a left wheel: 3 o'clock is a quarter turn, 6 of 24 marks.
  await up(page, 'The eccentric-cam');
  await expect(page.locator('.face').getByText('+', { exact: true })).toBeVisible();
  await expect(row(page, 'The eccentric-cam')).toBeInViewport({ ratio: 1 });
  await touch(page, 0.76, 0.5);
  await expect(echo(page)).toHaveText('mark +6 (90°)');
  await touch(page, 0.3, 0.4);
  await expect(echo(page)).toHaveText(/^mark −\d/);
  const letters = await echo(page).evaluate((output) => Number.parseFloat(getComputedStyle(output).fontSize));
  expect(letters).toBeGreaterThanOrEqual(26);
  await page.getByRole('button', { name: 'Type it' }).tap();
  const marks = page.getByLabel('marks');
  await marks.fill('3');
  await expect(echo(page)).toHaveText('mark +3 (45°)');
  await page.getByRole('button', { name: 'Change the sign' }).tap();
  await expect(echo(page)).toHaveText('mark −3 (−45°)');
  await marks.fill('9');
  await expect(page.getByRole('alert')).toContainText('from −6 to 6 marks');
  await expect(echo(page)).toHaveText('mark −3 (−45°)');
  await page.getByRole('button', { name: 'Drawing' }).tap();
  await page.getByRole('button', { name: 'One step up' }).tap();
  await expect(echo(page)).toHaveText('mark −2 (−30°)');
  await page.getByRole('button', { name: 'Set', exact: true }).tap();
  await expect(row(page, 'The eccentric-cam')).toContainText('mark −2');

  // Nobody said which way its marks count: none is drawn on a side, the place of its point is touched.
  await up(page, 'No side on file');
  await expect(page.locator('.face').getByText(/^[+−]$/)).toHaveCount(0);
  await touch(page, 0.9, 0.5);
  await expect(echo(page)).toHaveText('6 marks outboard from the middle');

  await up(page, 'The indexed-cam');
  await touch(page, 0.5, 0.9);
  await expect(echo(page)).toHaveText('number 5');
  // It has turned so that its number is at the notch: touched there it stays.
  await touch(page, 0.5, 0.2);
  await expect(echo(page)).toHaveText('number 5');

  // Turns and flats, six of them a turn.
  await up(page, 'The threaded-rod');
  await touch(page, 0.05, 0.5);
  await expect(echo(page)).toHaveText('6 turns shorter');
  await page.getByRole('button', { name: 'One step up' }).tap();
  await expect(echo(page)).toHaveText('5 turns 5½ flats shorter');
  await page.getByRole('button', { name: 'Type it' }).tap();
  await page.getByLabel('turns').fill('-1');
  await page.getByLabel('flats').fill('3');
  await expect(echo(page)).toHaveText('1 turn 3 flats shorter');

  // A kind without a drawing of where it stands is typed.
  await up(page, 'The shim-pack');
  await expect(page.locator('.face')).toHaveCount(0);
  await page.getByRole('button', { name: 'Type it' }).tap();
  await page.getByLabel('mm').fill('4.5');
  await expect(echo(page)).toHaveText('4.5 mm');

  await expect(page.getByText('saved', { exact: true })).toBeVisible();
  await page.reload();
  for (const [name, place] of [
    ['The eccentric-cam', 'mark −2'],
    ['No side on file', '6 marks outboard'],
    ['The indexed-cam', 'number 5'],
    ['The threaded-rod', '1 turn 3 flats shorter'],
    ['The shim-pack', '4.5 mm'],
  ] as const) {
    await expect(row(page, name)).toContainText(place);
  }
});
