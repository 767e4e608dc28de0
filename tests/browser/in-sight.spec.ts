/** What a card comes up for is in sight without a scroll: the move's target figures, the chart's column of now. */
import type { Locator, Page } from '@playwright/test';
import { fill } from './fill.ts';
import { expect, longTest, MADE, openApp, test } from './harness.ts';
import { open, RECORDS, SCREENS } from './screens.ts';

test.use({ viewport: { width: 360, height: 740 } });

const screen = (name: string) => SCREENS.find((one) => one.name === name)!;
/** How far the target figures are from what stands over the paper, px: above 0 where they are free of it. */
const free = (page: Page) =>
  page.evaluate(() => {
    const box = (of: string) => document.querySelector(of)!.getBoundingClientRect();
    const [figures, foot, head] = [box('.card-form .expect'), box('.card-foot'), box('.top-bar')];
    return Math.min(foot.top - figures.bottom, figures.top - head.bottom);
  });

test('what the rack will read after a move is above its answers, however much is told before it', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await fill(page, RECORDS);
  await open(page, screen('moves'));
  await expect(page.locator('.step-live .plan-note').first()).toBeAttached();
  await expect.poll(() => free(page)).toBeGreaterThanOrEqual(0);
  // The next card too, and the one that is planned around what would not move, whose price stays in sight.
  await page.getByRole('button', { name: MADE }).tap();
  await expect(page.getByText(/^2 of /)).toBeVisible();
  await expect.poll(() => free(page)).toBeGreaterThanOrEqual(0);
  await page.getByRole('button', { name: 'Won’t move' }).tap();
  await page.getByRole('button', { name: 'Both' }).or(page.locator('.stuck-cost')).first().tap();
  await expect(page.locator('.stuck-cost')).toBeInViewport({ ratio: 1 });
});

for (const [width, height] of [
  [360, 640],
  [360, 740],
  [740, 360],
] as const) {
  // In `npm test` the lowest glass that it is made for.
  const one = height === 360 ? test : longTest;
  one(
    `the practice rack is there as a first visit begins, with the cell that is typed into, ${width}×${height}`,
    async ({ page, site }) => {
      await page.setViewportSize({ width, height });
      await openApp(page, site);
      await page.getByText('Practice car').tap();
      await page.getByRole('button', { name: 'New visit' }).tap();
      const rack = page.getByRole('button', { name: 'Take the practice rack’s reading' });
      /** px that are free of what stands over the paper, at its top and at its foot. */
      const free = (of: Locator) =>
        of.evaluate((one) => {
          const box = (other: Element) => other.getBoundingClientRect();
          const [own, dock] = [box(one), box(document.querySelector('.dock')!)];
          const foot = dock.left < own.right ? dock.top : innerHeight;
          return Math.min(own.top - box(document.querySelector('.top-bar')!).bottom, foot - own.bottom);
        });
      await expect(rack).toBeVisible();
      for (const of of [rack, page.locator('.reading-grid-active')])
        await expect.poll(() => free(of), String(of)).toBeGreaterThanOrEqual(0);
      // It plays the reading, and no figure is left to type.
      await rack.tap();
      await expect(page.getByRole('button', { name: /: empty$/ })).toHaveCount(0);
      await expect(page.getByRole('button', { name: 'Where the adjusters stand' })).toBeInViewport({ ratio: 1 });
    },
  );
}

/** Of every chart: whether the cell of now is whole, and the first column beside the heads begins there. */
const openedCharts = (page: Page) =>
  page.locator('.chart-scroll').evaluateAll((charts) =>
    charts.map((chart) => {
      const box = (of: string) => chart.querySelector(of)!.getBoundingClientRect();
      const [now, corner, own] = [box('td[aria-current]'), box('thead td'), chart.getBoundingClientRect()];
      const whole = [now.left - corner.right, own.right - now.right, now.top - corner.bottom, own.bottom - now.bottom];
      // What is beside the heads begins there, unless the chart ends first.
      const first = [...chart.querySelectorAll('tbody tr:first-child td')].find(
        (cell) => cell.getBoundingClientRect().right > corner.right + 1,
      );
      const begins = Math.abs(first!.getBoundingClientRect().left - corner.right) < 2;
      const ends = chart.scrollLeft + chart.clientWidth >= chart.scrollWidth - 1;
      return { whole: Math.min(...whole) > -1.5, begins: begins || ends };
    }),
  );

for (const [width, height] of [
  [360, 740],
  [740, 360],
  [430, 932],
] as const) {
  // In `npm test` the lowest glass that it is made for.
  const one = height === 360 ? test : longTest;
  one(
    `a chart opens with the column and the row of now whole beside its heads, ${width}×${height}`,
    async ({ page, site }) => {
      await page.setViewportSize({ width, height });
      await openApp(page, site);
      await fill(page, RECORDS);
      await open(page, screen('chart'));
      const cut = await openedCharts(page);
      expect(cut.length).toBeGreaterThan(0);
      expect(cut.filter(({ whole, begins }) => !whole || !begins)).toEqual([]);
    },
  );
}

test('letters that come late, and a glass that is turned, leave a chart open at now until a hand has moved it', async ({
  page,
  site,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  let come: () => void = () => undefined;
  const late = new Promise<void>((done) => {
    come = done;
  });
  let held = 0;
  await page.route('**/*.woff2', async (route) => {
    held += 1;
    await late;
    await route.continue();
  });
  await openApp(page, site);
  await fill(page, RECORDS);
  // What is asked of it waits for its letters.
  await page.goto(`${site.url}#/car/history-50/chart`);
  await expect(page.locator('.chart-scroll td[aria-current]').first()).toBeVisible();
  const wrong = async () => (await openedCharts(page)).filter(({ whole, begins }) => !whole || !begins);
  const width = () =>
    page
      .locator('.chart-scroll table')
      .first()
      .evaluate(({ scrollWidth }) => scrollWidth);
  const before = await width();
  come();
  await expect.poll(width).not.toBe(before);
  expect(held).toBeGreaterThan(0);
  await expect.poll(wrong).toEqual([]);
  await page.setViewportSize({ width: 740, height: 360 });
  await expect.poll(wrong).toEqual([]);

  const chart = page.locator('.chart-scroll').first();
  await chart.hover();
  const left = () => chart.evaluate(({ scrollLeft }) => scrollLeft);
  const opened = await left();
  await page.mouse.wheel(37, 0);
  await expect.poll(left).toBe(opened + 37);
  await page.setViewportSize({ width: 700, height: 360 });
  await expect.poll(() => page.evaluate(() => innerWidth)).toBe(700);
  expect(await left()).toBe(opened + 37);
});

test('a card that is answered on itself has the whole of a low glass, its answers in a row', async ({ page, site }) => {
  await page.setViewportSize({ width: 740, height: 360 });
  await openApp(page, site);
  await fill(page, RECORDS);
  await open(page, screen('live'));
  const [card, answers] = await page.evaluate(() => {
    const box = (of: string) => document.querySelector(of)!.getBoundingClientRect();
    const tops = [...document.querySelectorAll('.card-foot button')].map((one) => {
      const { top, height } = one.getBoundingClientRect();
      return top + height / 2;
    });
    return [box('.card-form').width, Math.max(...tops) - Math.min(...tops)] as const;
  });
  expect(card).toBeGreaterThan(600);
  expect(answers).toBeLessThan(4);
  await expect(page.locator('.by-rack-target strong')).toBeInViewport({ ratio: 0.9 });
  await expect(page.locator('.top-bar')).toBeInViewport({ ratio: 0.9 });
});

test('what belongs beside each other stands in one row of a narrow glass', async ({ page, site }) => {
  await openApp(page, site);
  await fill(page, RECORDS);
  const rows = (of: string) =>
    page.locator(of).evaluateAll((all) => {
      const tops = (one: Element) =>
        [...one.querySelectorAll('button, input')].map((x) => x.getBoundingClientRect().top);
      return all.map((one) => new Set(tops(one).map(Math.round)).size);
    });
  await open(page, screen('moves'));
  expect(await rows('.live-angles')).toEqual([1]);
  await open(page, screen('Rear windows'));
  const windows = await rows('.window-cells .numbers-row');
  expect(windows.length).toBeGreaterThan(3);
  expect(new Set(windows)).toEqual(new Set([1]));
  await open(page, screen('compare'));
  const beyond = await page
    .locator('.cause-facts')
    .evaluateAll((all) =>
      all.map((one) => one.getBoundingClientRect().right - one.parentElement!.getBoundingClientRect().right),
    );
  expect(Math.max(-1, ...beyond)).toBeLessThanOrEqual(0);
});
