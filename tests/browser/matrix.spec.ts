/**
 * Every screen at every size of glass: nothing cut, nothing overlapping, no target too small for a thumb. `npm test` goes
 * through each screen once and turns the glass there; `npm run test:long` opens each at each size, in each look, with
 * letters as they are and twice as large.
 */
import type { Page } from '@playwright/test';
import { shortOrLong } from '../tools/seeds.ts';
import { fill } from './fill.ts';
import { expect, openApp, test } from './harness.ts';
import { measure } from './measure.ts';
import { open, RECORDS, SCREENS } from './screens.ts';

const SIZES = [
  [360, 740],
  [740, 360],
  [430, 932],
  [820, 1180],
  [1280, 800],
] as const;
/** A phone on its side with its page at 200 %: as low as a glass gets. Keys of 56 px would be higher than it is. */
const LOWEST = [360, 180] as const;
const LOW = { target: 34 };
const LOOKS = ['light', 'dark', 'high contrast'] as const;

/** Letters as large as the owner of the phone has chosen, px. */
async function letters(page: Page, standard: number): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Page.setFontSizes', { fontSizes: { standard, fixed: standard } });
}

const dress = (page: Page, look: (typeof LOOKS)[number]): Promise<void> =>
  page.emulateMedia({
    colorScheme: look === 'dark' ? 'dark' : 'light',
    contrast: look === 'high contrast' ? 'more' : 'no-preference',
    reducedMotion: 'reduce',
  });

/** What is chosen that only the weight of its letters, or nothing, sets off from what is not. */
const unchosen = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const look = (element: Element) => {
      const { backgroundColor, boxShadow, outlineStyle, outlineWidth } = getComputedStyle(element);
      return [backgroundColor, boxShadow, outlineStyle, outlineStyle === 'none' ? '' : outlineWidth].join(' ');
    };
    return [...document.querySelectorAll('[aria-pressed="true"]')].flatMap((one) => {
      const other = [...document.querySelectorAll(`${one.tagName}[aria-pressed="false"]`)].find(
        ({ parentElement }) => parentElement === one.parentElement || parentElement?.tagName === 'TD',
      );
      return other && look(other) === look(one) ? [one.textContent ?? ''] : [];
    });
  });

async function begin(page: Page, site: Parameters<typeof openApp>[1]): Promise<void> {
  await openApp(page, site);
  await fill(page, RECORDS);
}

/** In the short run the phones; `npm run test:long` goes through every look at each size. */
const GLASSES = shortOrLong([SIZES[0], SIZES[1], LOWEST], [...SIZES, LOWEST]);
const third = Math.ceil(SCREENS.length / 3);
for (const [part, screens] of [0, 1, 2].map((i) => SCREENS.slice(i * third, (i + 1) * third)).entries()) {
  test(`nothing is cut or overlaps at any size, part ${part + 1}`, async ({ page, site }) => {
    test.setTimeout(120_000);
    await dress(page, 'light');
    await begin(page, site);
    const found: Record<string, readonly string[]> = {};
    for (const screen of screens) {
      await open(page, screen);
      for (const [width, height] of GLASSES) {
        await page.setViewportSize({ width, height });
        found[`${screen.name} ${width}×${height}`] = await measure(page, height === LOWEST[1] ? LOW : {});
      }
      await page.setViewportSize({ width: SIZES[0][0], height: SIZES[0][1] });
      await letters(page, 32);
      found[`${screen.name}, letters of 200 %`] = await measure(page);
      await letters(page, 16);
      await dress(page, 'high contrast');
      found[`${screen.name}, chosen by more than weight`] = await unchosen(page);
      await dress(page, 'light');
    }
    expect(Object.entries(found).filter(([, list]) => list.length > 0)).toEqual([]);
  });
}

const ALL = [...SIZES, LOWEST].flatMap((glass) =>
  LOOKS.flatMap((look) => (glass === LOWEST ? [16] : [16, 32]).map((size) => ({ glass, look, size }))),
);
for (const { glass, look, size } of shortOrLong([], ALL)) {
  const [width, height] = glass;
  test(`every screen at ${width}×${height}, ${look}, letters of ${size / 0.16} %`, async ({ page, site }) => {
    test.setTimeout(180_000);
    await page.setViewportSize({ width, height });
    await dress(page, look);
    await begin(page, site);
    await letters(page, size);
    const found: Record<string, readonly string[]> = {};
    for (const screen of SCREENS) {
      await open(page, screen);
      found[screen.name] = [
        ...(await measure(page, glass === LOWEST ? LOW : {})),
        ...(look === 'high contrast' ? await unchosen(page) : []),
      ];
    }
    expect(Object.entries(found).filter(([, list]) => list.length > 0)).toEqual([]);
  });
}
