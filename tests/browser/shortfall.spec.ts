/** A car whose windows are out of reach: what is short, whether a part is bent, what would free it. */
import type { Reading } from '../../core/contract.ts';
import { whatWouldFree } from '../../core/index.ts';
import { expect, openApp, test } from './harness.ts';
import { planned, takenDown } from './planned.ts';
import { car, spec, toTheMoves } from './practice.ts';

const TYPED = ['4.20', '2.90', '-1.90', '0.90', '0.40', '-0.20', '-1.70', '-0.10', '0.35', '0.05'];
const wheel = (caster: number, camber: number, toe: number) => ({ caster, camber, toe });
const READING: Reading = {
  LF: wheel(4.2, -1.9, 0.4),
  RF: wheel(2.9, 0.9, -0.2),
  LR: { camber: -1.7, toe: 0.35 },
  RR: { camber: -0.1, toe: 0.05 },
};

test('what cannot be reached is told with what is at its stop, what may be bent and what would free it', async ({
  page,
  site,
}) => {
  const plan = planned({ car, spec, reading: READING, settings: {} });
  expect(plan.inWindow).toBe(false);
  const [stuck] = whatWouldFree({ car, spec, reading: takenDown(READING), settings: {} });
  const [change] = stuck?.ways[0] ?? [];
  expect(change?.further).toBeDefined();

  await openApp(page, site);
  await toTheMoves(page, TYPED);

  const card = page.locator('.card-caution', { hasText: 'The windows cannot all be reached' });
  for (const { where, by } of plan.shortfall.filter((one) => one.where === 'RF')) {
    await expect(card).toContainText(
      new RegExp(`${where} \\w+ ${Math.abs(by).toFixed(2)} too ${by > 0 ? 'high' : 'low'}`),
    );
  }
  await expect(card).toContainText('At the end of travel');
  await expect(card).toContainText('Look for a bent part before parts are bought.');
  const { by, unit, way } = change?.further ?? { by: Number.NaN };
  await expect(card).toContainText(`${by} ${unit} further ${way} than it goes`);
  await expect(card).toContainText('Only with parts that the maker of the car or of the kit allows.');
});
