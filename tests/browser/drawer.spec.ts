/** Shims that are counted: from the settings to the packs that a plan proposes. */
import type { Plan, Reading, ShimCount } from '../../core/index.ts';
import { expect, longTest, openApp, test } from './harness.ts';
import { planned } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

const TYPED = ['3.50', '4.10', '0.40', '0.20', '0.30', '0.10', '-1.20', '-1.20', '0.15', '0.15'];
const wheel = (caster: number, camber: number, toe: number) => ({ caster, camber, toe });
const rear = { camber: -1.2, toe: 0.15 };
const FOUND: Reading = { LF: wheel(3.5, 0.4, 0.3), RF: wheel(4.1, 0.2, 0.1), LR: rear, RR: rear };

const planWith = (drawer: readonly ShimCount[]): Plan =>
  planned({ car, spec, reading: FOUND, settings: {} }, { drawer });
const counts = (three: number, oneAndHalf: number, one: number): ShimCount[] => [
  { size: 3, count: three },
  { size: 1.5, count: oneAndHalf },
  { size: 1, count: one },
];

// In `npm test` tests/property/drawer.test.ts serves plans from a drawer.
longTest(
  'a plan takes no more shims than the drawer has, shows which, and says when they are what is missing',
  async ({ page, site }) => {
    await openApp(page, site, '#/settings');
    const size = (name: string) => page.getByRole('region', { name: `Shims of ${name}`, exact: true });
    await expect(page.getByText('Plans take it that every shim is at hand.')).toBeVisible();
    await page.getByRole('button', { name: 'counted', exact: true }).click();
    // The sizes of the packs of the car on file.
    for (const name of ['3 mm', '1.5 mm', '1 mm']) await page.getByRole('button', { name, exact: true }).click();
    await expect(page.getByRole('group', { name: 'Add a size' })).toHaveCount(0);
    await expect(page.getByRole('button', { name: 'One 3 mm shim less' })).toBeDisabled();
    for (const button of await size('3 mm').getByRole('button').all()) {
      const { width = 0, height = 0 } = (await button.boundingBox()) ?? {};
      expect(Math.min(width, height)).toBeGreaterThanOrEqual(56);
    }

    await page.goto(`${site.url}#/`);
    await toTheMoves(page, TYPED);
    const none = planWith(counts(0, 0, 0));
    expect(none.inWindow).toBe(false);
    expect(none.notes[0]).toMatch(/^The shims in the drawer keep the windows out of reach/);
    await expect(page.getByText(none.notes[0] ?? 'no note')).toBeVisible();

    await page.goto(`${site.url}#/settings`);
    for (let i = 0; i < 3; i++) await page.getByRole('button', { name: 'One 3 mm shim more' }).click();
    for (let i = 0; i < 2; i++) await page.getByRole('button', { name: 'One 1.5 mm shim more' }).click();
    await page.getByRole('button', { name: 'One 3 mm shim less' }).click();
    await page.getByRole('button', { name: 'Take 1 mm off the list' }).click();
    await expect(size('1 mm')).toHaveCount(0);
    await page.getByRole('button', { name: '1 mm', exact: true }).click();
    await page.reload();
    await expect(size('3 mm').getByRole('status')).toHaveText('2');
    await expect(size('1 mm').getByRole('status')).toHaveText('0');

    const some = planWith(counts(2, 2, 0));
    const [move] = some.moves;
    expect(move?.shims).toBeDefined();
    await page.goto(`${site.url}#/`);
    await page.getByText('Practice car').click();
    await expect(page.locator('.card-form')).toContainText(move?.instruction ?? 'no move');
    // Drawn are the shims of the plan: what is kept and what is put in, no more and no less.
    const stack = move?.shims?.flatMap(({ size, count }) => Array(count).fill(String(size)));
    const drawn = page.locator('.card-form .shim:not(.shim-out) .shim-size');
    expect((await drawn.allTextContents()).sort()).toEqual(stack?.sort());
  },
);

test('sizes are shown in the chosen unit of length', async ({ page, site }) => {
  await openApp(page, site, '#/settings');
  await page.getByRole('button', { name: 'inch', exact: true }).last().click();
  await page.getByRole('button', { name: 'counted', exact: true }).click();
  await page.getByRole('button', { name: '0.0591 in', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Shims of 0.0591 in' })).toBeVisible();
});
