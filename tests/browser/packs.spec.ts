/** Which shims are in a pack is said once; the card then says what comes out. */
import type { Reading } from '../../core/index.ts';
import { planMoves } from '../../core/index.ts';
import { expect, longTest, openApp } from './harness.ts';
import { asked } from './planned.ts';
import { car, spec } from './practice.ts';

const TYPED = ['3.50', '4.10', '0.40', '0.20', '0.30', '0.10', '-1.20', '-1.20', '0.15', '0.15'];
const wheel = (caster: number, camber: number, toe: number) => ({ caster, camber, toe });
const rear = { camber: -1.2, toe: 0.15 };
const READ: Reading = { LF: wheel(3.5, 0.4, 0.3), RF: wheel(4.1, 0.2, 0.1), LR: rear, RR: rear };

// In `npm test` tests/state/packs.test.ts has what is known of a pack and what is left in it.
longTest('the shims of a pack are counted in, and the card says which come out', async ({ page, site }) => {
  const request = asked({ car, spec, reading: READ, settings: {} });
  const plan = planMoves(request);
  const [first] = plan.moves;
  if (first?.act.act !== 'change-shims') throw new Error('the practice car begins with no pack');
  const pack = car.front.adjusters.find(({ id }) => id === first.adjuster)!;
  const size = Math.max(...(pack.sizes as number[]));
  const count = first.act.from / size;
  const packs = { [first.corner]: { [first.adjuster]: [{ size, count }] } };
  const known = planMoves({ ...request, packs }).moves.find((move) => move.adjuster === first.adjuster);
  expect(Number.isInteger(count)).toBe(true);
  const [change] = /\((?:out|in): [^)]*\)/.exec(known?.instruction ?? '') ?? [];
  expect(change).toBeDefined();

  await openApp(page, site, '#/');
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  for (const text of TYPED) await page.keyboard.type(text);
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  const row = page.locator('.standing').filter({ hasText: first.corner }).getByRole('button', { name: pack.name });
  await row.click();
  await page.getByRole('button', { name: 'Which shims' }).click();
  for (const button of await page.locator('.pack-row button').all()) {
    const { width = 0, height = 0 } = (await button.boundingBox()) ?? {};
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(56);
  }
  for (let i = 0; i < count; i++) await page.getByRole('button', { name: `One ${size} mm shim more` }).click();
  await page.getByRole('button', { name: /^These make/ }).click();
  await expect(row).toContainText(Array(count).fill(`${size} mm`).join(' + '));
  await page.getByRole('button', { name: 'These are right' }).click();
  await expect(page.locator('.card-form')).toContainText(change ?? 'none');
});
