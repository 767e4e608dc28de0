/** Charts and history on paper: all of it, on as many pages as it takes, each with the car and the day. */
import type { Page } from '@playwright/test';
import type { Adjuster, Axle } from '../../core/contract.ts';
import { adjusterPositions, axleCharts } from '../../core/index.ts';
import { makeHistory } from '../tools/past-visits.ts';
import { fill } from './fill.ts';
import { expect, openApp, test } from './harness.ts';
import { measure } from './measure.ts';
import { car, spec } from './practice.ts';

const at = '2026-05-04T08:00:00.000Z';
/** A car of which a rod is one of the two that are charted, and which was left with both moved. */
const [pack, , tie] = car.front.adjusters as readonly [Adjuster, Adjuster, Adjuster];
const front: Axle = { ...car.front, adjusters: [pack, tie] };
const charted = { ...car, id: 'charted', label: 'Charted car', plate: 'PAPER 1', front };
const stands = { [pack.id]: 4.5, [tie.id]: 0.5 };
const RECORDS = {
  cars: [{ id: charted.id, car: charted, spec, changed: at }],
  visits: [{ id: 'visit', carId: charted.id, opened: at }],
  readings: [
    {
      ...{ id: 'reading', visitId: 'visit', at, reading: { LF: { camber: -1 } }, typed: {} },
      settings: { LF: stands, RF: stands },
    },
  ],
};

/** A4 and US Letter: no page may be too tall or too wide for either. */
const PAPERS = ['A4', 'Letter'] as const;

/** The pages as the screen makes them for the printer: what stands at the head of each, and what is in its table. */
const pagesOf = (page: Page) =>
  page.evaluate(() => {
    dispatchEvent(new Event('beforeprint'));
    return [...document.querySelectorAll('.printed-page')].map((one) => ({
      head: one.querySelector('.printed-head')?.textContent ?? '',
      rows: [...one.querySelectorAll('tr')].map((row) => [...row.children].map((cell) => cell.textContent ?? '')),
    }));
  });

async function isWholeOnPaper(
  page: Page,
  pages: readonly { readonly head: string }[],
  of: { readonly label: string; readonly plate?: string },
): Promise<void> {
  const today = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }).format(new Date());
  for (const [i, { head }] of pages.entries()) {
    for (const text of [of.label, of.plate ?? '', today, `page ${i + 1} of ${pages.length}`])
      expect(head).toContain(text);
  }
  for (const format of PAPERS) {
    const pdf = (await page.pdf({ format })).toString('latin1');
    // One sheet a page: none is left without its head.
    expect(pdf.match(/\/Type\s*\/Page\b/g), format).toHaveLength(pages.length);
  }
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: Math.floor((186 / 25.4) * 96), height: 900 });
  await pagesOf(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 'wider than A4').toBe(0);
  await page.emulateMedia({ media: 'screen' });
}

test('a chart opens where the adjusters stand, in flats, with toe, and is whole on paper', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, RECORDS);
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`${site.url}#/car/${charted.id}/chart`);
  await expect(page.getByText('Caster over camber over toe, degrees gained')).toBeVisible();
  const here = page.locator('.chart-scroll td[aria-current]');
  await expect(here).toBeInViewport();
  await expect(here).toHaveText('0.000.000.00');
  await expect(page.locator('.chart-scroll thead .chart-now')).toHaveText('4.5 mmnow');
  await expect(page.locator('.chart-scroll tbody .chart-now')).toHaveText('now');
  await expect(page.locator('.chart-scroll tr:has(.chart-now) + tr th').last()).toHaveText(/^\d flats? longer$/);
  await page.getByRole('button', { name: 'rear' }).click();
  await expect(page.getByText('Camber over toe, degrees gained')).toBeVisible();

  const pages = await pagesOf(page);
  const { across, down } = axleCharts(front, { left: stands, right: stands })[0]!.chart!;
  // Every column of every row, once, of both axles.
  const cells = pages.flatMap(({ rows }) => {
    const [head = [], ...body] = rows;
    return body.flatMap(([name, ...row]) => row.map((text, i) => `${head[i + 1]} / ${name}: ${text}`));
  });
  expect(new Set(cells).size).toBe(cells.length);
  const [bolt, cam] = charted.rear.adjusters as readonly [Adjuster, Adjuster];
  const ofRear = adjusterPositions(bolt).length * adjusterPositions(cam).length;
  expect(cells).toHaveLength(across.positions.length * down.positions.length + ofRear);
  await isWholeOnPaper(page, pages, charted);
});

/** Figures and words on paper that go on in the next line without a hyphen, or leave their cell. */
const broken = (page: Page) =>
  page.evaluate(() => {
    const range = document.createRange();
    const walker = document.createTreeWalker(document.querySelector('.printed')!, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const cell = node.parentElement!.closest('th, td, p, header, div')!.getBoundingClientRect();
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[\p{L}\p{N}.,−°′+/]{2,}/gu)) {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const boxes = [...range.getClientRects()].filter((box) => box.width > 0);
        if (new Set(boxes.map((box) => Math.round(box.top))).size > 1) found.push(`“${word}” is broken in two`);
        if (boxes.some((box) => box.left < cell.left - 1 || box.right > cell.right + 1))
          found.push(`“${word}” leaves its cell`);
      }
    }
    return [...new Set(found)];
  });

const INCHES = { angle: 'degrees-minutes', toe: 'inch', toeParts: '32', length: 'inch', decimal: ',' } as const;

test('in a shop of inches, a comma and minutes no figure on paper is broken or of another shop', async ({
  page,
  site,
}) => {
  const { cars, visits, readings } = makeHistory(50);
  await openApp(page, site);
  await fill(page, { cars, visits, readings, preferences: [{ id: 'units', value: INCHES, changed: at }] });
  for (const [place, shown] of [
    ['chart', '.chart-table'],
    ['history', '.angle-line'],
  ] as const) {
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${site.url}#/car/history-50/${place}`);
    await expect(page.locator(shown).first()).toBeVisible();
    await page.setViewportSize({ width: 360, height: 740 });
    expect(await measure(page), place).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.floor((186 / 25.4) * 96), height: 900 });
    const pages = await pagesOf(page);
    expect(pages.length).toBeGreaterThan(1);
    expect(await broken(page), place).toEqual([]);
    const texts = pages.flatMap(({ rows }) => rows.flat());
    expect(texts.filter((text) => /\bmm\b|\d\.\d|\d,\d+\s?°/.test(text))).toEqual([]);
    expect(texts.join(' ')).toMatch(/\d°\d\d′/);
    // A fraction by itself says nothing: each page has the unit of its toe, where there is toe on it.
    const told = await page.locator('.printed-page').allTextContents();
    for (const text of told.filter((one) => /\d\/\d/.test(one))) expect(text).toMatch(/toe in inch at the rim/i);
    expect(told.join()).toMatch(/\d\/\d/);
  }
});

/** Boxes of letters of each line that lie over one another or over the drawing. */
const overprinted = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main .angle-line')].flatMap((line) => {
      const boxes = [...line.querySelectorAll('span, svg')].map((one) => ({
        text: one.textContent,
        box: one.getBoundingClientRect(),
      }));
      return boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(({ box }) => box.left < a.box.right && box.right > a.box.left)
          .filter(({ box }) => box.top < a.box.bottom - 0.5 && box.bottom > a.box.top + 0.5)
          .map((b) => `${a.text} over ${b.text}`),
      );
    }),
  );

test('a history of few or many visits prints nothing over anything, and is whole on paper', async ({ page, site }) => {
  await openApp(page, site);
  await page.setViewportSize({ width: 360, height: 740 });
  for (const count of [1, 2, 50, 200]) await fill(page, makeHistory(count), { reload: count === 200 });
  for (const count of [1, 2, 200, 50]) {
    await page.goto(`${site.url}#/car/history-${count}/history`);
    await expect(page.getByText(`${count} visit${count === 1 ? '' : 's'}`, { exact: true })).toBeVisible();
    for (const name of [
      'front cross camber',
      'front cross caster',
      'rear cross camber',
      'rear total toe',
      'thrust angle',
    ])
      await expect(page.getByRole('button', { name })).toHaveCount(1);
    expect(await overprinted(page), `${count} visits`).toEqual([]);
  }
  const pages = await pagesOf(page);
  const { cars, visits, readings } = makeHistory(50);
  const cells = pages.flatMap(({ rows: [head = [], , ...body] }) =>
    body.flatMap(([day, ...row]) => row.map((text, i) => `${head[1 + Math.floor(i / 2)]}, ${i % 2}, ${day}: ${text}`)),
  );
  const figure = (visit: number, round: 0 | 1) => {
    const { LR, RR } = readings[2 * visit + round]!.reading;
    return ((LR?.camber ?? 0) - (RR?.camber ?? 0)).toFixed(2).replace('-', '−');
  };
  const ofCross = cells.filter((cell) => cell.startsWith('rear cross camber, 1'));
  expect(ofCross.map((cell) => cell.split(': ')[1])).toEqual(visits.map((_, i) => figure(i, 1)));
  expect(cells.filter((cell) => cell.endsWith('–'))).toEqual([]);
  await isWholeOnPaper(page, pages, cars[0]!.car);
});
