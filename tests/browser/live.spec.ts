/**
 * Moves that the rack leads, in the built app: a known car from found to left on the practice car's own rack, with the browser
 * killed between touches; what the rack shows beside, typed; and a shop whose rack shows nothing live.
 */
import type { Page } from '@playwright/test';
import type { Moved } from '../../core/contract.ts';
import { formatAngle } from '../../core/index.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { expect as expectSoon, longTest, MADE, openApp, REMEASURE, type Site, test } from './harness.ts';
import { Phone, press, touchesOf, typeOnKeypad } from './phone.ts';
import { asked, planned } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

/** A plan is worked out first; on a busy machine that takes its time. */
const expect = expectSoon.configure({ timeout: 40_000 });

/** Camber and toe of every wheel out, caster in: rear cams and rods, front packs and rods. */
const READING = {
  LF: { caster: 4.6, camber: 0.1, toe: 0.35 },
  RF: { caster: 4.8, camber: -0.7, toe: -0.15 },
  LR: { camber: -1.75, toe: 0.38 },
  RR: { camber: -1.3, toe: 0.02 },
};
const TYPED = ['4.60', '4.80', '0.10', '-0.70', '0.35', '-0.15', '-1.75', '-1.30', '0.38', '0.02'];

/** The moves in the database, in the order in which they were booked. */
const movesKept = (page: Page): Promise<Moved[]> =>
  page.evaluate(
    () =>
      new Promise((done) => {
        const request = indexedDB.open('cornerwright');
        request.onsuccess = () => {
          const all = request.result.transaction('moves').objectStore('moves').getAll();
          all.onsuccess = () => {
            request.result.close();
            done(all.result.sort((a, b) => (a.at < b.at ? -1 : 1)));
          };
        };
      }),
  );

async function again(phone: Phone, site: Site, page: Page): Promise<Page> {
  await expect(page.locator('.save-mark')).toHaveText('saved');
  await phone.kill();
  const opened = await phone.open(site.url);
  await opened.getByText('Practice car').tap();
  await expect(opened.locator('.card-form')).toBeVisible();
  return opened;
}

test('a known car from found to left on a live rack, killed between touches', async ({ site }) => {
  test.setTimeout(300_000);
  const phone = new Phone();
  try {
    let page = await phone.open(site.url);
    await page.getByText('Practice car').tap();
    await press(page, 'New visit');
    await press(page, 'Take the practice rack’s reading');
    await press(page, 'Where the adjusters stand');
    await press(page, 'These are right');
    await expect(page.getByText('While something is turned this rack shows')).toBeVisible();
    await expect(page.getByRole('button', { name: 'camber', exact: true })).toHaveAttribute('aria-pressed', 'true');
    await expect(page.getByRole('button', { name: 'toe', exact: true })).toHaveAttribute('aria-pressed', 'true');
    let led = 0;
    let others = 0;
    for (;;) {
      const made = page.getByRole('button', { name: MADE });
      await expect(made.or(page.getByRole('heading', { name: REMEASURE })).first()).toBeVisible();
      if (await page.getByRole('heading', { name: REMEASURE }).isVisible()) break;
      const note = (await page.locator('.step-live .step-note').textContent()) ?? '';
      if (await page.locator('.by-rack').isVisible()) {
        led += 1;
        const target = (await page.locator('.by-rack-target strong').textContent()) ?? '';
        expect(target).toMatch(/^−?\d+\.\d\d$/);
        // Largest of the screen.
        const size = (of: string) =>
          page.locator(of).evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));
        expect(await size('.by-rack-target strong')).toBeGreaterThanOrEqual(60);
        await press(page, 'Turn it on the practice rack');
        await expect(page.locator('.by-rack-stand [aria-pressed="true"]')).toHaveCount(1);
        const stand = await page.locator('.by-rack-stand [aria-pressed="true"]').textContent();
        const read = page.locator('.by-rack-then').filter({ hasText: 'it reads' });
        const figures = await read.allTextContents();
        if (led <= 2) {
          page = await again(phone, site, page);
          await expect(page.locator('.by-rack-target strong')).toHaveText(target);
          await expect(page.locator('.by-rack-stand [aria-pressed="true"]')).toHaveText(stand ?? '');
          expect(await page.locator('.by-rack-then').filter({ hasText: 'it reads' }).allTextContents()).toEqual(
            figures,
          );
        }
      }
      const before = await touchesOf(page);
      await page.getByRole('button', { name: MADE }).tap();
      await expect(page.locator('.step-live')).not.toContainText(note);
      others = Math.max(others, (await touchesOf(page)).others - before.others);
    }
    expect(led).toBeGreaterThan(1);
    expect(others, 'touches a move').toBe(1);
    const kept = (await movesKept(page)).filter(({ setBy }) => setBy);
    expect(kept).toHaveLength(led);
    for (const { setBy, to } of kept) {
      expect(setBy).toMatchObject({ angle: expect.stringMatching(/^(camber|toe)$/), value: expect.any(Number) });
      // It was read off, so that it is no guess.
      expect(setBy?.within).toBeUndefined();
      expect(typeof to).toBe('number');
    }
    await press(page, 'Take the practice rack’s reading');
    await press(page, 'Compare with the plan');
    await expect(page.getByText('round 1')).toBeVisible();
    await press(page, 'As left');
    await expect(page.locator('.paper-moves')).toContainText('by the rack');
    await press(page, 'Sign off');
    await press(page, /(They are|It is) torqued/);
    await expect(page.getByText('signed off', { exact: true })).toBeVisible();
    expect(phone.errors).toEqual([]);
  } finally {
    await phone.remove();
  }
});

test('what the rack shows beside it takes one touch and its digits; far off, the rest is planned from there', async ({
  site,
}) => {
  test.setTimeout(300_000);
  const phone = new Phone();
  try {
    const page = await phone.open(site.url);
    await page.getByText('Practice car').tap();
    await press(page, 'New visit');
    for (const text of TYPED) await typeOnKeypad(page, text.replace('-', '−'));
    await press(page, 'Where the adjusters stand');
    await press(page, 'These are right');
    const plan = planned({ car, spec, reading: READING, settings: {} });
    const jobs = jobsIn(plan);
    const first = jobs.findIndex((job) => job.some(({ setBy }) => setBy));
    const move = jobs[first]![0]!;
    const other = move.setBy!.angle === 'toe' ? 'camber' : 'toe';
    for (let i = 0; i < first; i++) {
      await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
      await page.getByRole('button', { name: MADE }).tap();
    }
    await expect(page.getByText(`${first + 1} of ${jobs.length}`)).toBeVisible();
    await expect(page.locator('.by-rack-target')).toContainText(formatAngle(move.setBy!.value));
    await expect(page.locator('.card-form')).toContainText(sentence([move]));
    const expected = move.expectAfter[move.corner]![other]!;
    const card = page.locator('.by-rack-then', { hasText: new RegExp(other, 'i') });
    await expect(card).toContainText(formatAngle(expected));

    // As expected: nothing is said, and it is in the record.
    const text = formatAngle(expected);
    const before = await touchesOf(page);
    await card.tap();
    await typeOnKeypad(page, text);
    await expect(page.locator('.keypad')).toHaveCount(0);
    const after = await touchesOf(page);
    expect(after.digits - before.digits).toBe(text.length);
    expect(after.others - before.others, 'beside its digits').toBe(1);
    await expect(page.getByText('Not as it should be')).toHaveCount(0);

    // Half a degree off: typed anew, it is told, and planned from.
    const far = formatAngle(expected + 0.5);
    await card.tap();
    await typeOnKeypad(page, far);
    await expect(page.getByText('Not as it should be')).toBeVisible();
    await press(page, 'Plan the rest from here');
    await expect(page.locator('.move-made').last()).toContainText('by the rack');
    const kept = (await movesKept(page)).at(-1)!;
    expect(kept).toMatchObject({
      ...{ corner: move.corner, adjuster: move.adjuster, outcome: 'set-to' },
      setBy: { angle: move.setBy!.angle, shown: { [other]: Number(far.replace('−', '-')) } },
    });
    // Left at the guess: so well known.
    expect(kept.setBy?.within).toBeGreaterThan(0);
    const made = jobs
      .slice(0, first)
      .flatMap((job) =>
        job.map(({ corner, adjuster, from, to }) => ({ corner, adjuster, from, to, outcome: 'done' as const })),
      );
    const request = asked({ car, spec, reading: READING, settings: {}, moved: [...made, kept] });
    expect(request.reading[move.corner]?.[other]).toBeCloseTo(expected + 0.5, 2);
    const next = jobsIn(planned({ car, spec, reading: READING, settings: {}, moved: [...made, kept] }))[0];
    if (next) await expect(page.locator('.card-form')).toContainText(sentence(next));
    expect(phone.errors).toEqual([]);
  } finally {
    await phone.remove();
  }
});

// In `npm test` tests/property/live.test.ts has what is not watched go by its mark, and start.spec.ts walks by marks.
longTest(
  'a rack that shows nothing live leads no move; what it shows is said in one touch, and again',
  async ({ page, site }) => {
    test.setTimeout(300_000);
    await openApp(page, site);
    await toTheMoves(page, TYPED);
    const round = { car, spec, reading: READING, settings: {} };
    await expect(page.locator('.card-form')).toBeVisible();
    await page.getByRole('button', { name: 'nothing', exact: true }).click();
    const blind = jobsIn(planned(round, { live: [] }));
    await expect(page.locator('.card-form')).toContainText(sentence(blind[0]!));
    await expect(page.getByText(`1 of ${blind.length}`)).toBeVisible();
    await expect(page.getByText(/until (toe|camber)/)).toHaveCount(0);
    for (const [i] of blind.entries()) {
      await expect(page.getByText(`${i + 1} of ${blind.length}`)).toBeVisible();
      await expect(page.locator('.by-rack')).toHaveCount(0);
      if (i + 1 < blind.length) await page.getByRole('button', { name: MADE }).click();
    }
    // At the foot of the moves it is changed again, and it stands in the settings.
    await page.getByRole('button', { name: 'toe', exact: true }).click();
    await expect(page.getByRole('button', { name: 'toe', exact: true })).toHaveAttribute('aria-pressed', 'true');
    await page.goto(`${site.url}#/settings`);
    await expect(page.getByRole('button', { name: 'toe', exact: true })).toHaveAttribute('aria-pressed', 'true');
    await expect(page.getByRole('button', { name: 'camber', exact: true })).toHaveAttribute('aria-pressed', 'false');
  },
);
