/** Readings typed as fast as a thumb can on the real keypad: every figure lands in its own cell. */
import type { Page } from '@playwright/test';
import { type Field, fieldsOf, walkOf } from '../../app/state/fields.ts';
import { GRACE } from '../../app/state/typing.ts';
import { assess, type Reading } from '../../core/index.ts';
import { shortOrLong } from '../tools/seeds.ts';
import { figuresOf, handOf, touchesFor } from '../tools/typed-reading.ts';
import { expect, openApp, test } from './harness.ts';
import { typeOnKeypad } from './phone.ts';
import { car, spec } from './practice.ts';

test.use({ viewport: { width: 360, height: 740 } });

const FIELDS = fieldsOf(car, { sai: false, total: false });
const LABELS: Readonly<Record<string, string>> = { '.': 'decimal point', '±': 'change sign', '⌫': 'rub out' };
const NAMES: Readonly<Record<string, string>> = { caster: 'Caster', camber: 'Camber', toe: 'Toe' };
const nameOf = ({ where, angle }: Field) => `${where} ${NAMES[angle]}`;

async function openEntry(page: Page): Promise<void> {
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  await expect(page.getByRole('group', { name: 'The rack goes' })).toBeVisible();
  // Asked above the first form of all; from then on it stands under the form.
  const asks = page.getByRole('group', { name: /^Your rack shows/ });
  await expect(asks).toHaveCount(1);
  await asks.getByRole('button', { name: '0.00', exact: true }).click();
  await expect(page.getByRole('group', { name: 'Your rack shows angles as' })).toHaveCount(0);
  await expect(page.getByRole('group', { name: 'Your rack shows caster and camber as' })).toBeVisible();
}

interface Order {
  readonly touches: readonly { readonly name: string; readonly after: number }[];
  /** Pressed before, to set the form. */
  readonly choices: readonly string[];
  readonly first: string;
  /** Every cell is emptied before; else other figures are typed over those that are there. */
  readonly empties: boolean;
  /** Waits as long as the hand does between touches, and not only for the page. */
  readonly waits: boolean;
}

/**
 * In the page: sets the form and touches the pad. Each touch has the time of the hand, so that nothing hangs on how fast
 * the page is, and waiting for the hand is left out of most.
 */
async function thumb({ touches, choices, first, empties, waits }: Order): Promise<Record<string, string>> {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const named = (name: string) =>
    [...document.querySelectorAll<HTMLElement>('.keypad-key')].find(
      (key) => (key.ariaLabel ?? key.textContent) === name,
    );
  let at = performance.now();
  const touch = (element: HTMLElement | undefined) => {
    for (const kind of ['pointerdown', 'pointerup', 'click']) {
      const event = new PointerEvent(kind, { bubbles: true, pointerType: 'touch', isPrimary: true });
      Object.defineProperty(event, 'timeStamp', { value: at });
      element?.dispatchEvent(event);
    }
  };
  for (const choice of choices) {
    const [legend, label] = choice.split('|');
    const group = [...document.querySelectorAll('fieldset')].find((one) =>
      one.querySelector('legend')?.textContent?.includes(legend ?? ''),
    );
    touch([...(group?.querySelectorAll('button') ?? [])].find(({ textContent }) => textContent === label));
    await frame();
  }
  const cells = () => [...document.querySelectorAll<HTMLElement>('button.reading-grid-cell')];
  const toCell = async (cell: HTMLElement | undefined) => {
    touch(cell);
    while (!named('7')) await frame();
  };
  for (const cell of empties ? cells() : []) {
    await toCell(cell);
    const text = cell.ariaLabel?.split(': ')[1] ?? '';
    for (let i = 0; i < text.length && text !== 'empty'; i++) touch(named('rub out'));
    await frame();
  }
  await toCell(cells().find(({ ariaLabel }) => ariaLabel?.startsWith(first)));
  await frame();
  for (const { name, after } of touches) {
    await new Promise((done) => setTimeout(done, waits ? after : 0));
    at += after;
    // The last cell's Next is Done; where the pad is gone the touch lands on nothing of it.
    touch(named(name) ?? (name === 'Next' ? named('Done') : undefined));
  }
  await new Promise((done) => setTimeout(done, 50));
  return Object.fromEntries(cells().map(({ ariaLabel }) => (ariaLabel ?? '').split(': ') as [string, string]));
}

const SEED = process.env.CORNERWRIGHT_SEED ?? 'thumb';
const SEQUENCES = shortOrLong(6, 200);
/** Phones that are typed on at the same time. */
const PHONES = shortOrLong(3, 5);

async function typeOne(page: Page, i: number): Promise<string[]> {
  const seed = `${SEED} ${i}`;
  const hand = { ...handOf(seed), gap: 30 };
  const order = i % 2 === 0 ? 'across' : 'wheel';
  const fields = walkOf(FIELDS, order);
  const figures = figuresOf(seed, fields, hand).map((figure, i, { length }) =>
    // The pad goes after the last cell, in the time of a slow machine perhaps before its decimal too many.
    i === length - 1 && hand.shown > hand.set ? { ...figure, text: figure.text.replace(/.$/, '0') } : figure,
  );
  const zeros = `0.${'0'.repeat(hand.set)}`;
  const seen = await page.evaluate(thumb, {
    touches: touchesFor(seed, figures, hand).map(({ key, after }) => ({
      name: key === 'next' ? 'Next' : (LABELS[key] ?? key),
      after,
    })),
    choices: [
      `caster and camber|${zeros}`,
      `and toe|${zeros}`,
      `The rack goes|${order === 'across' ? 'left and right' : 'wheel by wheel'}`,
    ],
    first: nameOf(fields[0] as Field),
    empties: Math.floor(i / PHONES) % 6 === 0,
    waits: Math.floor(i / PHONES) % 10 === 1,
  });
  const numberIn = (text = 'none') => Number(text.replace('−', '-'));
  return figures.flatMap(({ id, text }, at) => {
    const shown = seen[nameOf(fields[at] as Field)];
    return numberIn(shown) === numberIn(text) ? [] : [`${seed} ${JSON.stringify(hand)}: ${id} ${text} shown ${shown}`];
  });
}

test(`${SEQUENCES} readings by hands of every kind, 30 ms a touch, seed ${SEED}`, async ({ browser, site }) => {
  test.setTimeout(SEQUENCES * 4000 + 60_000);
  const phones = Array.from({ length: PHONES }, async (_, phone) => {
    const page = await (await browser.newContext({ viewport: { width: 360, height: 740 } })).newPage();
    await openApp(page, site);
    await openEntry(page);
    const wrong: string[] = [];
    for (let i = phone; i < SEQUENCES; i += PHONES) wrong.push(...(await typeOne(page, i)));
    await page.context().close();
    return wrong;
  });
  expect((await Promise.all(phones)).flat()).toEqual([]);
});

test('a third digit, a Next too many and a skipped cell put nothing on the wrong wheel, and each is told', async ({
  page,
  site,
}) => {
  await openApp(page, site);
  await openEntry(page);
  await page.getByRole('button', { name: 'RF Toe' }).tap();
  await typeOnKeypad(page, '0.150');
  await expect(page.getByRole('button', { name: 'LR Camber: empty' })).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByRole('button', { name: 'RF Toe: 0.150' })).toBeVisible();
  const echo = page.locator('.keypad-echo');
  await expect(echo).toHaveText(/^RF toe 0.150 taken/);
  await expect(echo).toHaveRole('status');
  await page.getByRole('button', { name: 'The rack shows 3 decimals' }).tap();
  await expect(echo).toHaveText('RF toe 0.150 taken');

  await page.getByRole('button', { name: 'Next' }).tap();
  await page.getByRole('button', { name: 'Next' }).tap();
  await expect(page.getByRole('button', { name: 'LR Camber: empty' })).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('Empty: type LR camber, or Skip')).toBeVisible();
  await page.getByRole('button', { name: 'Skip' }).tap();
  await expect(page.getByRole('button', { name: 'LR Camber: skipped' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'RR Camber: empty' })).toHaveAttribute('aria-pressed', 'true');

  // An unlikely figure is asked about although its cell has been left.
  const last = await typeOnKeypad(page, '12.00');
  await expect(echo).toHaveText(/^RR camber 12.00 taken.*unusual/);

  // Where the pad covers the form the figure stands on the pad.
  await page.setViewportSize({ width: 740, height: 360 });
  await typeOnKeypad(page, '0.3', { first: last + 2 * GRACE });
  await expect(page.locator('.keypad-value')).toHaveText('0.3');
  await expect(page.locator('.keypad-value')).toBeInViewport({ ratio: 1 });
  await expect(echo).toBeInViewport({ ratio: 1 });
});

test('the hand’s own time counts, not when a slow page comes to the touch', async ({ page, site }) => {
  await openApp(page, site);
  await openEntry(page);
  const texts = (name: string) => page.getByRole('button', { name });
  let last = await typeOnKeypad(page, '4.35');
  await expect(texts('RF Caster: empty')).toHaveAttribute('aria-pressed', 'true');
  // A third decimal just after the second, while the page is busy for longer than the time of grace.
  const busy = page.evaluate((most) => {
    const until = performance.now() + most;
    while (performance.now() < until);
  }, 2 * GRACE);
  await typeOnKeypad(page, '1', { first: last + GRACE / 4 });
  await busy;
  await expect(texts('LF Caster: 4.351')).toBeVisible();
  await expect(texts('RF Caster: empty')).toBeVisible();

  // Where a click has the time at which the page came to it, the finger's is earlier.
  const seven = page.getByRole('button', { name: '7', exact: true });
  const late = async (type: string, by: number) => {
    await seven.evaluate(
      (key, { type, at }) => {
        const event = new PointerEvent(type, { bubbles: true, pointerType: 'touch', isPrimary: true });
        Object.defineProperty(event, 'timeStamp', { value: at - performance.timeOrigin });
        key.dispatchEvent(event);
      },
      { type, at: last + by },
    );
  };
  await texts('LF Camber: empty').tap();
  last = await typeOnKeypad(page, '0.12');
  await late('pointerdown', GRACE / 2);
  await late('click', 3 * GRACE);
  await expect(texts('LF Camber: 0.127')).toBeVisible();

  // One that the hand makes later begins the next figure, however quick the page is: Next asks whose it is.
  await texts('LF Toe: empty').tap();
  last = await typeOnKeypad(page, '0.15');
  await typeOnKeypad(page, '0', { first: last + 2 * GRACE });
  await expect(texts('LF Toe: 0.15')).toBeVisible();
  await expect(texts('RF Toe: 0')).toHaveAttribute('aria-pressed', 'true');
  await texts('Next').tap();
  await expect(page.getByText('Was that a decimal of LF toe? Next takes it as RF toe.')).toBeVisible();
});

test('the verdict comes before a plan; a copy and left for right are asked about at once', async ({ page, site }) => {
  await openApp(page, site);
  await openEntry(page);
  const FOUND = ['4.10', '5.20', '-0.90', '-0.20', '0.30', '-0.10', '-1.20', '-1.30', '0.15', '0.25'];
  for (const text of FOUND) await page.keyboard.type(text);
  const verdict = page.getByRole('region', { name: 'How it stands' });
  const read: Reading = {
    LF: { caster: 4.1, camber: -0.9, toe: 0.3 },
    RF: { caster: 5.2, camber: -0.2, toe: -0.1 },
    LR: { camber: -1.2, toe: 0.15 },
    RR: { camber: -1.3, toe: 0.25 },
  };
  const { angles } = assess(read, spec);
  const missed = angles.filter(({ by }) => by !== 0).length;
  await expect(verdict).toContainText(`${missed} of ${angles.length} windows missed`);
  for (const row of [
    ['front total toe', '0.20'],
    ['front cross camber', '−0.70'],
    ['front cross caster', '−1.10'],
    ['steer-ahead', '+0.20 right'],
    ['rear total toe', '0.40'],
    ['thrust angle', '−0.05 left'],
  ] as const) {
    const own = verdict.getByRole('listitem').filter({ hasText: row[0] });
    await expect(own).toContainText(row[1]);
    await expect(own).toContainText(/in the window|out of the window|near the edge|not judged/);
  }
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  await page.getByRole('button', { name: 'These are right' }).click();
  await page.getByRole('button', { name: 'Measure now' }).click();

  for (const text of FOUND) await page.keyboard.type(text);
  const questions = page.locator('.card-caution').filter({ hasText: 'Worth a second look' });
  await expect(questions).toContainText('Every figure is as it was before the moves. Was it measured again?');
  await page.getByRole('button', { name: 'Go through them again' }).click();
  for (const text of ['5.20', '4.10', '-0.20', '-0.90', '-0.10', '0.30']) await page.keyboard.type(text);
  await page.getByRole('button', { name: 'RR Toe' }).click();
  await page.keyboard.type('0.25');
  await expect(questions).toContainText('The front wheels look as if left and right were taken one for the other.');
  await expect(questions).not.toContainText('Every figure');
  // Asked, never refused.
  await expect(page.getByRole('button', { name: 'Compare with the plan' })).toBeEnabled();
});
