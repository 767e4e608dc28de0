/** Every tool of the bench, offline: figures typed, the app opened again, the figures there, one touch into the open visit. */
import type { Page } from '@playwright/test';
import type { Spec } from '../../core/contract.ts';
import { openCarFile } from './car-file.ts';
import { expect, goOffline, longTest, openApp, test, waitForServiceWorker } from './harness.ts';
import { visitBench, yardCar } from './yard.ts';

test.use({ serviceWorkers: 'allow', viewport: { width: 360, height: 740 } });

const car = yardCar('beam-linked');
const spec: Spec = { front: { camber: { low: -1, high: 0 } } };

interface Case {
  readonly tool: string;
  readonly press?: readonly string[];
  /** Labels, of several alike the last too, and what is typed. */
  readonly type: readonly (readonly [label: string, text: string])[];
  /** What the visit then says of it. */
  readonly says: RegExp;
}
const INTO = 'Into the visit of Yard car';
const CASES: readonly Case[] = [
  { tool: 'heights', type: [['LF, mm', '350']], says: /350/ },
  {
    ...{ tool: 'run-out', press: ['Two'], says: /LF camber: .*± 0\.07°/ },
    type: [
      ['1', '-0.5'],
      ['3', '-0.9'],
    ],
  },
  {
    ...{ tool: 'across', says: /toe: tape across, ± 0\.\d\d°/ },
    type: [
      ['A ahead, mm', '1500'],
      ['B behind, mm', '1503'],
      ['Diameter of the rim, mm', '573'],
    ],
  },
  {
    ...{ tool: 'strings', press: ['Set parallel to the centre line'], says: /LR toe: string, ± 0\.\d\d°/ },
    type: [
      ['LR A, mm', '102'],
      ['LR B, mm', '100'],
    ],
  },
  {
    ...{ tool: 'rough', press: ['Ahead of it'], says: /LF, RF toe: tape across/ },
    type: [
      ['A ahead, mm', '1520'],
      ['B behind, mm', '1500'],
      ['Longer by, each turn, mm', '1.5'],
      ['R, rod end to steering axis, mm', '120'],
    ],
  },
  { tool: 'slip', press: ['Rear'], type: [['S, m/km or mm/m; + out', '3']], says: /LR, RR toe: side slip/ },
  {
    ...{ tool: 'camber', says: /LF camber: plumb line/ },
    type: [
      ['A above, mm', '100'],
      ['B below, mm', '96'],
    ],
  },
  {
    ...{ tool: 'sweep', press: ['RF'], says: /RF caster: steering sweep, ± 0\.\d\d°/ },
    type: [
      ['Turned by, degrees', '20'],
      ['Camber there', '1.61'],
    ],
  },
  {
    ...{ tool: 'axle', press: ['Pinion angle'], says: /pinion angle: level, ± 0\.\d\d°/i },
    type: [
      ['C shows; + nose up', '3.4'],
      ['Turned round', '-3'],
    ],
  },
];

async function type(page: Page, { press = [], type, tool }: Case): Promise<void> {
  for (const name of press) await page.getByRole('button', { name, exact: true }).click();
  for (const [label, text] of type) {
    const boxes = page.getByLabel(label, { exact: true });
    await boxes.first().fill(text);
    // The other end of a sweep is not the same.
    if (tool === 'sweep') await boxes.last().fill(label.startsWith('Turned') ? '18' : '-1.13');
  }
}

test('every tool works offline, keeps what was typed, and hands it to the visit in one touch', async ({
  page,
  site,
}) => {
  test.setTimeout(180_000);
  await openApp(page, site);
  await waitForServiceWorker(page);
  await goOffline(page, site);
  await openCarFile(page, { car, spec });
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('link', { name: 'Measure with what I have' })).toBeVisible();
  const visit = page.url().split('/').at(-1)!;
  for (const one of CASES) {
    await page.evaluate((hash) => {
      location.hash = hash;
    }, `#/bench/${one.tool}/${visit}`);
    await type(page, one);
    await expect(page.getByRole('button', { name: INTO }), one.tool).toBeVisible();
    await expect(page.locator('.save-mark')).toHaveText('saved');
    await page.reload();
    for (const [label, text] of one.type)
      await expect(page.getByLabel(label, { exact: true }).first(), one.tool).toHaveValue(text);
    await page.getByRole('button', { name: INTO }).click();
    await expect(page.locator('.sheet').getByText(one.says).first(), one.tool).toBeVisible();
  }
});

test('where to look for a bent part is drawn, goes into the visit in one touch, and stays', async ({ page, site }) => {
  await openApp(page, site);
  await visitBench(page, { car, spec }, /^What is bent/);
  for (const [label, text] of [
    ['LR camber', '1.4'],
    ['RR camber', '-0.2'],
    ['LR toe', '0.8'],
    ['RR toe', '-0.4'],
  ] as const)
    await page.getByLabel(label, { exact: true }).fill(text);
  await expect(
    page.getByText(/The left wheel leans out 1\.60° more than the right: look at the axle tube/),
  ).toBeVisible();
  await expect(page.getByText(/Both rear wheels point to the right, by 0\.60°/)).toBeVisible();
  await expect(page.locator('.card svg title').first()).toContainText('An axle from behind');
  await page.getByRole('button', { name: 'Note it in the visit' }).click();
  await expect(page.getByRole('button', { name: 'Noted in the visit' })).toBeDisabled();
  await expect(page.locator('.save-mark')).toHaveText('saved');
  await page.getByRole('button', { name: 'All tools' }).click();
  await page.getByRole('button', { name: 'Back to the visit' }).click();
  await page.reload();
  await expect(page.getByText('Where to look for a bent part is noted here.')).toBeVisible();
  await page.getByRole('button', { name: /^Before you measure/ }).click();
  await expect(page.getByText(/From the bench, where to look: Rear axle: The left wheel/)).toBeVisible();
});

test('the keyboard’s own key goes on to the next box', async ({ page, site }) => {
  await openApp(page, site, '#/bench/across');
  await page.getByLabel('Diameter of the rim, mm').fill('573');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('A ahead, mm')).toBeFocused();
  await page.keyboard.type('1500');
  await page.keyboard.press('Enter');
  await page.keyboard.type('1503');
  await expect(page.locator('.bench-large')).toContainText('0.30°');
});

// In `npm test` tests/core/measure has what a phone that is turned round tells.
longTest(
  'a phone that lies still says one thing once; one that says nothing of being turned is dead',
  async ({ page, site }) => {
    await openApp(page, site, '#/bench/phone');
    const use = page.getByRole('button', { name: 'Use the sensor' }).first();
    const take = page.getByRole('button', { name: 'Take A' });
    // Touched until it listens. A browser tells an orientation when it changes, and not again.
    await expect(async () => {
      if (await use.isVisible()) await use.click({ timeout: 2_000 });
      await page.evaluate(() => {
        dispatchEvent(new DeviceOrientationEvent('deviceorientation', { alpha: 10, beta: 91.2, gamma: 0.5 }));
      });
      await expect(take).toBeVisible({ timeout: 2_000 });
    }).toPass();
    await take.click();
    await expect(page.getByText(/^A taken: 1\.20°, 30 readings/)).toBeVisible();
    await page.getByRole('button', { name: 'Take B' }).click();
    await expect(page.getByRole('alert')).toContainText('The sensor says nothing', { timeout: 20_000 });
    await expect(page.getByText(/^B taken/)).toHaveCount(0);
  },
);
