/** The bench in Chromium: a car whose toe was measured by string only, the phone's own inclinometer, nonsense, all kept. */
import type { Page } from '@playwright/test';
import type { Spec } from '../../core/contract.ts';
import { planOfFile } from '../../core/index.ts';
import { openCarFile } from './car-file.ts';
import { expect, goOffline, longTest, MADE, openApp, REMEASURE, test, waitForServiceWorker } from './harness.ts';
import { toTool, visitBench, yardCar } from './yard.ts';

test.use({ serviceWorkers: 'allow', viewport: { width: 360, height: 740 } });

const rod = { id: 'rod', name: 'track rod', kind: 'threaded-rod', links: ['tieInner'], lead: 1.5, stepTurns: 1 / 12 };
const car = yardCar('beam-rear', [{ ...rod, range: [-8, 8], reference: 0 }]);
const spec: Spec = { front: { toe: { low: -0.12, aim: 0, high: 0.12 } } };

const DIAMETER = 410;
/** What a rule from a parallel string shows at the front edge of a rim that stands so, 100 mm at its rear edge. */
const ahead = (toe: number): string => (100 + DIAMETER * Math.sin((toe * Math.PI) / 180)).toFixed(2);
const FOUND = { LF: 0.62, RF: 0.55, LR: 0, RR: 0 } as const;

async function stringToe(page: Page, toes: Readonly<Record<keyof typeof FOUND, number>>): Promise<void> {
  await toTool(page, /^Strings/);
  await page.getByRole('button', { name: /^Set parallel/ }).click();
  for (const [corner, toe] of Object.entries(toes)) {
    await page.getByLabel(`${corner} A`).fill(ahead(toe));
    await page.getByLabel(`${corner} B`).fill('100');
  }
  await page.getByLabel('Diameter').fill(String(DIAMETER));
  await page.getByRole('button', { name: 'Into the visit of Yard car' }).click();
  await expect(page.getByText('From the bench: LF, RF, LR, RR toe: string, ± 0.06°', { exact: false })).toBeVisible();
}

/** Camber and caster were not measured: their cells are skipped, those of the string are passed. */
async function passTheRest(page: Page): Promise<void> {
  const cell = page.locator('.reading-grid [aria-pressed="true"]');
  await expect(cell).toHaveCount(1);
  while ((await cell.count()) > 0) {
    const caption = (await cell.getAttribute('aria-label')) ?? '';
    const key = /empty|skipped/.test(caption) ? 'Skip' : /^(Next|Done)$/;
    await page.getByRole('button', { name: key, exact: true }).click();
    await expect(page.locator(`.reading-grid [aria-pressed="true"][aria-label="${caption}"]`)).toHaveCount(0);
  }
}

// In `npm test` bench-tools.spec.ts hands the result of every tool to a visit, offline.
longTest('a car whose toe was measured by string only goes from found to left, offline', async ({ page, site }) => {
  test.setTimeout(180_000);
  await openApp(page, site);
  await waitForServiceWorker(page);
  await goOffline(page, site);
  await openCarFile(page, { car, spec });
  await page.getByRole('button', { name: 'New visit' }).click();
  await stringToe(page, FOUND);
  await expect(page.getByRole('button', { name: 'LF Toe: 0.62' })).toBeVisible();
  await passTheRest(page);
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  await page.getByRole('button', { name: 'These are right' }).click();

  // The chance on the screen is that of a string, not of a rack.
  const by = { by: 'string', sd: 0.0593 } as const;
  const reading = {
    ...{ LF: { toe: 0.62 }, RF: { toe: 0.55 }, LR: { toe: 0 }, RR: { toe: 0 }, toeReference: 'centreline' as const },
    methods: { LF: { toe: by }, RF: { toe: by }, LR: { toe: by }, RR: { toe: by } },
  };
  const visits = (read: object) => [
    { id: 'v', carId: car.id, opened: '2026-01-01', rounds: [{ reading: read, settings: {} }] },
  ];
  const plan = planOfFile(
    { format: 'cornerwright', version: 1, car, spec, visits: visits(reading) },
    { style: 'practical' },
  );
  const { methods: _, ...off } = reading;
  const byRack = planOfFile(
    { format: 'cornerwright', version: 1, car, spec, visits: visits(off) },
    { style: 'practical' },
  );
  expect(Math.round(plan.chance * 100)).toBeLessThan(Math.round(byRack.chance * 100));
  const measure = page.getByRole('heading', { name: REMEASURE });
  const made = page.getByRole('button', { name: MADE });
  await expect(made.first()).toBeVisible();
  await expect(page.getByText(`${Math.round(plan.chance * 100)} %`, { exact: false }).first()).toBeVisible();
  for (;;) {
    await expect(made.or(measure).first()).toBeVisible();
    if (await measure.isVisible()) break;
    const note = await page.locator('.step-live .step-note').textContent();
    await made.click();
    await expect(page.locator('.step-live .step-note')).not.toHaveText(note ?? '');
  }

  const { LF, RF } = plan.predicted;
  await stringToe(page, { ...FOUND, LF: LF!.toe!, RF: RF!.toe! });
  await passTheRest(page);
  await page.getByRole('button', { name: 'Compare with the plan' }).click();
  await page.getByRole('button', { name: 'As left' }).click();
  await page.getByRole('button', { name: /^All \d are torqued/ }).click();
  await page.getByRole('button', { name: /^All \d are done/ }).click();
  await page.getByRole('button', { name: 'Sign off' }).click();
  await expect(page.getByText('signed off', { exact: true })).toBeVisible();
  const sheet = page.getByRole('region', { name: 'Before and after' });
  await expect(sheet).toContainText(
    'Found: LF, RF, LR, RR toe: string, ± 0.06°. Left: LF, RF, LR, RR toe: string, ± 0.06°.',
  );
  await expect(sheet).toContainText('wheel nuts checked again after 40 to 80 km');
  await expect(page.locator('.save-mark')).toHaveText('saved');
});

test('what is typed at a tool is there after the app was opened again; started afresh, it comes back', async ({
  page,
  site,
}) => {
  await openApp(page, site, '#/bench/across');
  await page.getByLabel('A ahead, mm').fill('1500');
  await page.getByLabel('B behind, mm').fill('1503');
  await page.getByLabel('Diameter of the rim, mm').fill('573');
  await expect(page.locator('.bench-large')).toContainText('0.30°');
  await expect(page.locator('.save-mark')).toHaveText('saved');
  await page.reload();
  await expect(page.getByLabel('A ahead, mm')).toHaveValue('1500');
  await expect(page.locator('.bench-large')).toContainText('0.30°');
  await page.getByRole('button', { name: 'Start afresh' }).click();
  await expect(page.getByLabel('A ahead, mm')).toHaveValue('');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.getByLabel('B behind, mm')).toHaveValue('1503');
});

test('nonsense is told what is wrong with it', async ({ page, site }) => {
  await openApp(page, site, '#/bench/sweep');
  const [turned, camber] = [page.getByLabel('Turned by, degrees'), page.getByLabel('Camber there')];
  for (const [box, text] of [
    [turned.first(), '0'],
    [camber.first(), '1'],
    [turned.last(), '0'],
    [camber.last(), '-1'],
  ] as const)
    await box.fill(text);
  await expect(page.getByRole('alert')).toContainText('The two places of the steering are 0° apart');
  await turned.first().fill('twenty');
  await expect(page.getByRole('alert').first()).toContainText('Turned by, degrees: not “twenty” but');
  await page.goto(`${site.url}#/bench/across`);
  await page.getByLabel('A ahead, mm').fill('-1500');
  await page.getByLabel('B behind, mm').fill('1503');
  await page.getByLabel('Diameter of the rim, mm').fill('17');
  await expect(page.getByRole('alert')).toContainText('A ahead: not “−1500” but');
  await page.getByLabel('A ahead, mm').fill('1500');
  await expect(page.getByRole('alert')).toContainText('17 in would be 431.8 mm');
});

/** As a phone's sensor tells it, every so often, until the page is told otherwise. */
async function lean(page: Page, beta: number, jump = 0): Promise<void> {
  await page.evaluate(
    ([beta, jump]) => {
      const own = window as unknown as { sensor?: number };
      clearInterval(own.sensor);
      let turn = 0;
      own.sensor = window.setInterval(() => {
        turn += 1;
        const off = jump * (turn % 2) + 0.01 * (turn % 3);
        dispatchEvent(new DeviceOrientationEvent('deviceorientation', { alpha: 10, beta: beta + off, gamma: 0.5 }));
      }, 20);
    },
    [beta, jump] as const,
  );
}

// In `npm test` tests/core/measure has its figures, bench-tools.spec.ts a sensor that lies still.
longTest('the phone’s own inclinometer is zeroed by turning it round', async ({ page, site }) => {
  test.setTimeout(90_000);
  await openApp(page, site, '#/bench/phone');
  await page.getByRole('button', { name: 'Use the sensor' }).first().click();
  // The top leans out by 1.2°, and it shows 0.7° too much.
  await lean(page, 90 + 1.2 + 0.7);
  await expect(page.locator('.bench-live').first()).toContainText('1.9');
  await page.getByRole('button', { name: 'Take A' }).click();
  // It is read by the clock, whichever of its last hundredths is shown then.
  await expect(page.getByText(/^A taken: 1\.9[012]°, 30 readings/)).toBeVisible();
  // A hand that shakes.
  await lean(page, 90, 4);
  await page.getByRole('button', { name: 'Take B' }).click();
  await expect(page.getByRole('alert')).toContainText('The readings jump over 4', { timeout: 20_000 });
  await lean(page, 90 - 1.2 + 0.7);
  await page.getByRole('button', { name: 'Take B' }).click();
  await expect(page.locator('.bench-large')).toContainText(/1\.(19|20|21)°/, { timeout: 20_000 });
  await expect(page.locator('.bench-large')).toContainText('± 0.05°');
  await expect(page.getByText(/its zero, and the scatter of one reading/)).toBeVisible();
});

test('where there is no sensor it says so', async ({ page, site }) => {
  await openApp(page, site, '#/bench/phone');
  await page.getByRole('button', { name: 'Use the sensor' }).first().click();
  // Chromium without one says nothing, or once that there is nothing.
  await expect(page.getByRole('alert').first()).toContainText('no inclinometer', { timeout: 20_000 });
});

test('a phone that asks its owner and is told no', async ({ page, site }) => {
  await page.addInitScript(() => {
    Object.assign(DeviceOrientationEvent, { requestPermission: async () => 'denied' });
  });
  await openApp(page, site, '#/bench/phone');
  await page.getByRole('button', { name: 'Use the sensor' }).first().click();
  await expect(page.getByRole('alert').first()).toContainText('did not allow');
});

test('repeated readings become the ± of every tool', async ({ page, site }) => {
  await openApp(page, site, '#/bench/across');
  await page.getByLabel('A ahead, mm').fill('1500');
  await page.getByLabel('B behind, mm').fill('1503');
  await page.getByLabel('Diameter of the rim, mm').fill('573');
  // √2 · 0.7 mm on 573 mm
  await expect(page.locator('.bench-large')).toContainText('± 0.10°');
  await page.goto(`${site.url}#/bench/repeat`);
  for (const [i, text] of ['1612', '1614', '1610', '1612'].entries())
    await page
      .getByLabel(`${i + 1}, mm`)
      .first()
      .fill(text);
  await expect(page.locator('.bench-large')).toContainText('1.63 mm');
  await page.getByRole('button', { name: 'Use it from now on' }).click();
  await expect(page.getByText('In use until now').locator('xpath=following-sibling::dd[1]')).toHaveText('1.63 mm');
  await page.goto(`${site.url}#/bench/across`);
  await expect(page.locator('.bench-large')).toContainText('± 0.23°');
});

test('ride heights of a visit tell what each angle gains; what is bent is drawn', async ({ page, site }) => {
  await openApp(page, site);
  await visitBench(page, { car, spec }, /^Ride heights/);
  const boxes = (label: string) => page.getByLabel(label);
  for (const [label, text] of [
    ['LF, mm', '350'],
    ['RF, mm', '350'],
  ] as const) {
    await boxes(label).first().fill(text);
    await boxes(label).last().fill('362');
  }
  await expect(page.locator('.bench-large').first()).toContainText('12.0 mm');
  await expect(page.getByRole('row', { name: /^Camber/ })).toContainText(/[−\d]/);
  await page.getByRole('button', { name: 'Into the visit of Yard car' }).click();
  await expect(page.getByRole('button', { name: /LF Ride height: 350/ })).toBeVisible();
  await toTool(page, /^What is bent/);
  await page.getByLabel('Right front further back by').fill('12');
  await expect(page.getByText('12 mm further back than the other', { exact: false })).toBeVisible();
  await expect(page.getByText('Measure the arms before you order parts', { exact: false })).toBeVisible();
});
