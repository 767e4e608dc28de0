/**
 * A car and a visit that were begun by mistake, a car by another name, a visit forgotten on the rack: each at one touch, each
 * with its undo; and what the sheet and the table file then say.
 */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { fill } from './fill.ts';
import { expect, longTest, openApp, type Site, test } from './harness.ts';
import { press, typeOnKeypad } from './phone.ts';
import { car, spec } from './practice.ts';

const DAY = 24 * 60 * 60 * 1000;
const ago = (ms: number): string => new Date(Date.now() - ms).toISOString();
const marl: CarRecord = { id: 'marl', car: { ...car, id: 'marl', label: 'Marl estate' }, spec, changed: ago(9 * DAY) };
const visit = (id: string, opened: string, more: Partial<VisitRecord> = {}): VisitRecord => ({
  ...{ id, carId: 'marl', opened },
  ...more,
});
const reading = (of: string) => ({
  ...{ id: `reading-${of}`, visitId: of, at: ago(8 * DAY), settings: {}, typed: {} },
  reading: { LF: { camber: -0.5 }, RF: { camber: -0.4 } },
});

async function begin(page: Page, site: Site, records: Parameters<typeof fill>[1]): Promise<void> {
  await openApp(page, site);
  await fill(page, { cars: [marl], ...records });
  await expect(page.getByText('Marl estate')).toBeVisible();
}
const bar = (page: Page) => page.locator('.undo-bar');

test('a visit begun by mistake is deleted at a touch, undone at another, and found again in the settings', async ({
  page,
  site,
}) => {
  await begin(page, site, {});
  await page.getByText('Marl estate').click();
  await press(page, 'New visit');
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  await typeOnKeypad(page, '4.1');
  const address = page.url();

  await press(page, 'Delete this visit');
  await expect(bar(page)).toContainText('deleted.');
  await expect(page.getByText('No visit yet')).toBeVisible();
  await press(page, 'Undo');
  await expect(page.getByText('Next: measure')).toBeVisible();
  await expect(bar(page)).toBeHidden();

  // Once more, and this time it stays; what was typed in it as well.
  await press(page, 'Delete this visit');
  await expect(page.getByRole('button', { name: 'New visit' })).toBeVisible();
  await page.goto(address);
  await expect(page.getByText('It is still on file')).toBeVisible();
  await page.goto(`${site.url}#/settings`);
  await page.getByRole('button', { name: /^Bring back Visit of/ }).click();
  await expect(page.getByText('Nothing is deleted.')).toBeVisible();
  await page.reload();
  await page.goto(address);
  await expect(page.getByRole('button', { name: 'LF Caster: 4.1' })).toBeVisible();
});

test('a car is deleted with its visits and brought back with them', async ({ page, site }) => {
  await begin(page, site, {
    visits: [visit('v', ago(8 * DAY), { closed: ago(8 * DAY) })],
    readings: [reading('v')],
  });
  await page.getByText('Marl estate').click();
  await press(page, 'Delete the car');
  await expect(bar(page)).toContainText('Marl estate deleted.');
  await expect(page.locator('.card', { hasText: 'Marl estate' })).toHaveCount(0);
  await press(page, 'Undo');
  await page.locator('.card', { hasText: 'Marl estate' }).click();
  await press(page, 'Delete the car');
  await expect(bar(page)).toBeVisible();
  await press(page, 'Settings');
  await expect(page.getByText(/^1 car, 0 visits/)).toBeVisible();
  await expect(page.getByText('with 1 visit')).toBeVisible();
  await page.getByRole('button', { name: 'Bring back Marl estate' }).click();
  await press(page, 'To the cars');
  // What was just done is no longer offered.
  await expect(bar(page)).toBeHidden();
  await page.locator('.card', { hasText: 'Marl estate' }).click();
  await expect(page.getByText(/^Visit of/)).toBeVisible();
});

test('what was done to a deleted visit on another phone keeps it, and a person says what is right', async ({
  page,
  site,
}) => {
  const gone = visit('v', ago(8 * DAY), { closed: ago(8 * DAY), deleted: [{ at: ago(DAY), knew: 0 }] });
  await begin(page, site, { visits: [gone], readings: [reading('v')] });
  await page.getByText('Marl estate').click();
  const said = page.locator('.card', { hasText: 'Visit deleted on another phone' });
  await expect(said).toBeVisible();
  await expect(page.getByText(/^Visit of/)).toBeVisible();
  await said.getByRole('button', { name: 'Keep it' }).click();
  await expect(said).toBeHidden();
  await expect(page.getByText(/^Visit of/)).toBeVisible();
});

test('a car is renamed from its page: one touch, and the name is under the thumb', async ({ page, site }) => {
  await begin(page, site, {});
  await page.getByText('Marl estate').click();
  await press(page, 'Name and plate');
  const name = page.getByLabel('Name');
  await expect(name).toBeFocused();
  await name.fill('');
  await press(page, 'Save the name');
  await expect(page.getByText('Name is missing')).toBeVisible();
  await name.fill('<b>Whin</b> coupé');
  await page.getByLabel('Plate').fill('WHN 1');
  // Put away half way, what was typed is still there.
  await expect(page.locator('.save-mark')).toHaveText('saved');
  await page.reload();
  await expect(name).toHaveValue('<b>Whin</b> coupé');
  await press(page, 'Save the name');
  await expect(page.getByRole('heading', { name: '<b>Whin</b> coupé' })).toBeVisible();
  await expect(page.locator('.top-bar .plate')).toHaveText('WHN 1');
});

test('a visit that nobody has touched for days is closed from the list at one touch, and its sheet says so', async ({
  page,
  site,
}) => {
  const draft = { id: 'reading:old', texts: { 'LF.camber': '−0.5' }, cursor: 'LF.camber', changed: ago(8 * DAY) };
  await begin(page, site, {
    visits: [visit('old', ago(8 * DAY))],
    readings: [reading('old')],
    drafts: [draft],
  });
  const close = page.getByRole('button', { name: 'Close the visit of Marl estate as it stands' });
  await expect(page.getByText(/^Open since \d+ \w+\./)).toBeVisible();
  await close.click();
  await expect(close).toBeHidden();
  await expect(bar(page)).toContainText('not signed off');
  await page.locator('.card', { hasText: 'Marl estate' }).click();
  await expect(page.getByText('not signed off')).toBeVisible();
  await page.getByText(/^Visit of/).click();
  await expect(page.getByText('Closed as it stood: not signed off.')).toBeVisible();
  // What was half typed is still there when it is opened again.
  await press(page, 'Open again');
  await expect(page.getByRole('button', { name: 'LF Camber: −0.5' })).toBeVisible();
});

test('and stands open again at another touch', async ({ page, site }) => {
  await begin(page, site, { visits: [visit('old', ago(8 * DAY))], readings: [reading('old')] });
  await page.getByRole('button', { name: /^Close the visit/ }).click();
  await expect(page.getByText('On the rack.')).toBeHidden();
  await press(page, 'Undo');
  // That was a touch: it is not forgotten any more.
  await expect(page.getByText('On the rack.')).toBeVisible();
  await expect(bar(page)).toBeHidden();
});

test('one that was touched today is not said to be forgotten', async ({ page, site }) => {
  await begin(page, site, {
    visits: [visit('old', ago(8 * DAY))],
    readings: [{ ...reading('old'), at: ago(DAY / 2) }],
  });
  await expect(page.getByText('On the rack.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Close the visit/ })).toHaveCount(0);
});

// In `npm test` tests/state/typing.test.ts types heights, visit-notes.test.ts reads the others, history-table.test.ts has all.
longTest(
  'ride heights, odometer, technician and shop: typed, on the sheet, and in the table file',
  async ({ page, site }) => {
    await begin(page, site, { preferences: [{ id: 'shop', value: { name: '=Bench & Marl' } }] });
    await page.getByText('Marl estate').click();
    await press(page, 'New visit');
    await page.getByRole('button', { name: /^Before you measure/ }).click();
    await page.getByLabel('Odometer, km').fill('84,210');
    await page.getByLabel('Technician').fill('A. Ostler');
    await page.getByLabel('Technician').blur();
    await page.getByRole('checkbox', { name: /^Ride heights too/ }).check();
    await expect(page.getByRole('button', { name: 'LF Ride height: empty' })).toHaveAttribute('aria-pressed', 'true');
    for (const height of ['385', '380.5', '402', '402']) {
      await typeOnKeypad(page, height);
      await press(page, 'Next');
    }
    await typeOnKeypad(page, '4.10');
    await expect(page.getByRole('button', { name: 'LF Caster: 4.10' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'RR Ride height: 402' })).toBeVisible();
    for (let left = 9; left > 0; left -= 1) await page.getByRole('button', { name: 'Skip', exact: true }).tap();
    await press(page, 'Where the adjusters stand');
    await page
      .getByRole('button', { name: /right|as they stand/i })
      .last()
      .click();
    await page.getByRole('button', { name: /^As found/ }).click();
    await expect(page.getByText('front ride height, left less right')).toBeVisible();
    await expect(page.getByText(/^\+4\.5.mm$/)).toBeVisible();

    const id = await page.evaluate(() => location.hash.split('/').pop());
    await page.goto(`${site.url}#/car/marl/history`);
    const [file] = await Promise.all([page.waitForEvent('download'), press(page, 'Table file')]);
    expect(file.suggestedFilename()).toBe('marl-estate.csv');
    const rows = readFileSync(await file.path(), 'utf8').split('\r\n');
    expect(rows[0]).toContain('Shop,Technician,Car,Plate,Odometer,Odometer in,"LF ride height, mm"');
    expect(rows[1]).toContain(`no,'=Bench & Marl,A. Ostler,Marl estate,`);
    expect(rows[1]).toContain(',84210,km,385,380.5,');
    expect(rows).toHaveLength(4);

    // The next visit is by the same.
    await page.goto(`${site.url}#/visit/${id}`);
    await page.goto(`${site.url}#/car/marl`);
    await press(page, 'Delete this visit');
    await press(page, 'New visit');
    await page.getByRole('button', { name: /^Before you measure/ }).click();
    await expect(page.getByLabel('Technician')).toHaveValue('A. Ostler');
    await expect(page.getByLabel('Odometer, km')).toHaveValue('');
  },
);

test('in inches with a comma, a body that leans is asked about', async ({ page, site }) => {
  const value = { length: 'inch', decimal: ',', heights: true };
  await begin(page, site, { preferences: [{ id: 'units', value }] });
  await page.getByText('Marl estate').click();
  await press(page, 'New visit');
  await expect(page.getByText('inch, where the maker has it taken')).toBeVisible();
  for (const height of ['15.25', '16.5']) {
    await typeOnKeypad(page, height);
    await press(page, 'Next');
  }
  await expect(page.getByRole('button', { name: 'LF Ride height: 15,25' })).toBeVisible();
  const skip = page.getByRole('button', { name: 'Skip', exact: true });
  for (let left = 12; left > 0; left -= 1) await skip.tap();
  // 1.25 in is 31.75 mm.
  await expect(page.getByText('Ride height at the front differs by 1 1/4 in, left to right.')).toBeVisible();
});
