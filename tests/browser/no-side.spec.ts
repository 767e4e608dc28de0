/** No direction is drawn that nobody gave: cams and rods with and without it on file, on their cards and where they stand. */
import type { Page } from '@playwright/test';
import { ENTRY_STEP } from '../../app/state/stage.ts';
import type { Adjuster, Car, Reading, Spec } from '../../core/contract.ts';
import { fill } from './fill.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';
import { measure } from './measure.ts';
import { takenDown } from './planned.ts';
import { car, spec } from './practice.ts';

test.use({ viewport: { width: 360, height: 740 } });

const at = '2026-05-05T08:00:00.000Z';
const BOLT = 'Lower link, eccentric bolt';
const GIVEN: Readonly<Record<string, object>> = {
  'eccentric-cam': { turns: 'clockwise' },
  'threaded-rod': { longerWhen: 'clockwise', seenFrom: 'the wheel end' },
};
/** The practice car with every direction on file, or with none. */
function carWith(given: boolean): Car {
  const one = ({ turns: _, longerWhen: __, seenFrom: ___, ...rest }: Adjuster): Adjuster =>
    ({ ...rest, ...(given && GIVEN[rest.kind]) }) as Adjuster;
  const axle = (of: 'front' | 'rear') => ({ ...car[of], adjusters: car[of].adjusters.map(one) });
  return { ...car, id: 'sides', label: 'Sides', front: axle('front'), rear: axle('rear') };
}
/** Rear camber far out, to windows narrower than the car's own. */
const FOUND: Reading = takenDown({
  LF: { caster: 4.75, camber: -0.6, toe: 0.1 },
  RF: { caster: 4.75, camber: -0.6, toe: 0.1 },
  LR: { camber: -1.9, toe: 0.2 },
  RR: { camber: -0.6, toe: 0.15 },
});
const narrow: Spec = { ...spec, rear: { camber: { low: -1.35, aim: -1.2, high: -1.05 } } };

async function begin(page: Page, site: Parameters<typeof openApp>[1], given: boolean, live: readonly string[]) {
  await openApp(page, site);
  await fill(page, {
    cars: [{ id: 'sides', car: carWith(given), spec: narrow, changed: at }],
    visits: [{ id: 'v', carId: 'sides', opened: at }],
    readings: [{ id: 'r', visitId: 'v', at, reading: FOUND, settings: {}, typed: {} }],
    preferences: [{ id: 'live', value: live, changed: at }],
  });
}

interface Told {
  readonly title: string;
  readonly says: string;
  /** What its drawings have: an arrow round, a mark before or after the turn, something that turns; letters. */
  readonly turned: number;
  readonly letters: readonly string[];
}
const cardNow = (page: Page): Promise<Told> =>
  page.locator('.card-form').evaluate((card) => ({
    title: card.querySelector('h2, h3')?.textContent ?? '',
    says: card.textContent ?? '',
    // The arrows beneath a rod are which way its ends go: that hangs on no thread.
    turned: card.querySelectorAll('.picture-arrow:not(.rod-push), .cam-turn, .eccentric-from, .eccentric-to').length,
    letters: [...card.querySelectorAll('.picture text')].map((text) => text.textContent ?? ''),
  }));

/** All cards of the plan, each as it comes up. */
async function cards(page: Page, url: string): Promise<readonly Told[]> {
  await page.goto(`${url}#/visit/v`);
  const all: Told[] = [];
  const again = page.getByRole('heading', { name: REMEASURE });
  const made = page.getByRole('button', { name: MADE });
  for (;;) {
    // A plan is worked out first; on a busy machine that takes its time.
    await expect(made.or(again).first()).toBeVisible({ timeout: 40_000 });
    if (await again.isVisible()) return all;
    const note = (await page.locator('.step-live .step-note').textContent()) ?? '';
    all.push(await cardNow(page));
    expect(await measure(page), all.at(-1)?.title).toEqual([]);
    await made.tap();
    await expect(page.locator('.step-live')).not.toContainText(note);
  }
}
const SENSE = /clockwise/;
const SIGN = /^[+−]/;
const of = (name: string, all: readonly Told[]): readonly Told[] => {
  const found = all.filter(({ says }) => says.includes(name));
  expect(found.length, name).toBeGreaterThan(0);
  return found;
};

for (const live of [[], ['camber', 'toe']]) {
  const by = live.length > 0 ? 'by the rack' : 'by its marks';
  // In `npm test` by its marks: what is said of a move and what is drawn of it are the same for both.
  (live.length > 0 ? longTest : test)(
    `${by}: what is not on file is neither drawn nor said`,
    async ({ page, site }) => {
      test.setTimeout(120_000);
      await begin(page, site, false, live);
      const all = await cards(page, site.url);
      for (const { says, letters } of all) {
        expect(says).not.toMatch(SENSE);
        expect(letters.filter((text) => SIGN.test(text))).toEqual([]);
      }
      for (const { says, turned } of of(BOLT, all)) {
        expect(turned, says).toBe(0);
        expect(says).toMatch(/so that the link’s inner end goes (in|out)board/);
        // How to see on the rack which way that is.
        expect(says).toMatch(/on the rack (camber|toe) (falls|rises) by|the way that makes (camber|toe) (rise|fall),/);
      }
      if (live.length === 0) for (const { turned } of of('Upper link, numbered cam', all)) expect(turned).toBe(0);
      for (const { says, turned } of of(' rod', all)) {
        expect(says).toMatch(/longer|shorter/);
        expect(turned, says).toBe(0);
      }
    },
  );
}

// In `npm test` tests/core/adjuster says which way each kind with a side goes.
longTest('by its marks: what is on file is drawn and said', async ({ page, site }) => {
  test.setTimeout(120_000);
  await begin(page, site, true, []);
  const all = await cards(page, site.url);
  for (const { says, turned, letters } of of(BOLT, all)) {
    expect(turned, says).toBeGreaterThanOrEqual(4);
    expect(letters).toEqual(expect.arrayContaining(['+', '−']));
    expect(says).toMatch(/clockwise, seen from the bolt head/);
  }
  for (const { says } of of(' rod', all)) expect(says).toMatch(/clockwise seen from the wheel end/);
});

for (const given of [false, true]) {
  // In `npm test` without: with one it stood there before.
  (given ? longTest : test)(
    `${given ? 'with' : 'without'} a side on file, on the build card and where it stands`,
    async ({ page, site }) => {
      await begin(page, site, given, []);
      await page.goto(`${site.url}#/car/sides/build`);
      await page.getByRole('button', { name: /^Rear adjusters/ }).tap();
      const form = page.locator('.adjuster-form', { hasText: BOLT });
      await form.getByRole('button', { name: BOLT }).tap();
      await expect(form.locator('.picture')).toBeVisible();
      const step = form.locator('caption');
      await expect(step).toHaveText(given ? 'One step: 1 mark towards +' : 'One step: 1 mark outboard');
      await expect(form.locator('.picture .picture-arrow')).toHaveCount(given ? 1 : 0);
      await expect(form.locator('.picture text').getByText(SIGN)).toHaveCount(given ? 2 : 0);

      await fill(
        page,
        { visits: [{ id: 'next', carId: 'sides', opened: '2026-05-06T08:00:00.000Z' }] },
        { reload: false },
      );
      const typed = Object.entries(FOUND).flatMap(([corner, wheel]) =>
        typeof wheel === 'object'
          ? Object.entries(wheel).map(([angle, x]) => [`${corner}.${angle}`, String(x).replace('-', '−')])
          : [],
      );
      const texts = { ...Object.fromEntries(typed), [ENTRY_STEP]: 'standing' };
      await fill(page, { drafts: [{ id: 'reading:next', texts, cursor: 'end', changed: at }] });
      await page.goto(`${site.url}#/visit/next`);
      await page.getByRole('button', { name: BOLT }).first().tap();
      const stepper = page.locator('.stepper');
      await expect(stepper.locator('.face svg')).toBeVisible();
      await expect(stepper.getByText(/^[+−]$/)).toHaveCount(given ? 4 : 0);
      await page.getByRole('button', { name: 'One step up' }).tap();
      await expect(stepper.locator('.stepper-value')).toHaveText(given ? /^mark \+/ : /outboard from the middle$/);
      await expect(stepper.locator('.face').locator('.picture-arrow, .eccentric-to')).toHaveCount(given ? 1 : 0);
      await page.getByRole('button', { name: 'Type it' }).tap();
      await expect(stepper.getByLabel(/^marks/)).toHaveAccessibleName(
        given ? 'marks' : /^marks outboard from the middle/,
      );
    },
  );
}
