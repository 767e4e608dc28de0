import { describe, expect, it } from 'vitest';
import type { AxleSpec, Reading } from '../../../core/contract.ts';
import { straightness } from '../../../core/plan/straight-wheel.ts';

const total = { low: -0.1, high: 0.3 };
/** A quarter of the total's width to each side: half of it, as the total is of two wheels. */
const HALF = { low: -0.1, aim: 0, high: 0.1 };
const pointing = (degrees: number): Reading => ({ LR: { toe: degrees }, RR: { toe: -degrees } });

describe('a total toe alone', () => {
  it('in front gets a wish for straight ahead, however the wheels stand', () => {
    const reading: Reading = { LF: { toe: 2 }, RF: { toe: -2 } };
    expect(straightness({ front: { totalToe: total } }, reading)).toEqual({ front: { thrustAngle: HALF } });
  });

  it.each([
    [0, 0.1],
    [0.05, 0.1],
    [0.4, 0.4],
    [-0.4, 0.4],
  ])('in the rear gets one that what is found at %d lies in: ± %d', (found, half) => {
    const { rear, front } = straightness({ rear: { totalToe: total } }, pointing(found)) ?? {};
    expect(front).toBeUndefined();
    expect(rear?.totalToe).toBeUndefined();
    expect(rear?.thrustAngle?.low).toBeCloseTo(-half, 12);
    expect(rear?.thrustAngle?.aim).toBe(0);
    expect(rear?.thrustAngle?.high).toBeCloseTo(half, 12);
  });

  it('in the rear as in front where no rear toe was read', () => {
    expect(straightness({ rear: { totalToe: total } }, {})).toEqual({ rear: { thrustAngle: HALF } });
  });
});

it.each<[string, AxleSpec]>([
  ['no total', { camber: total }],
  ['toe of each wheel', { totalToe: total, toe: total }],
  ['toe of the left wheel', { totalToe: total, left: { toe: total } }],
  ['toe of the right wheel', { totalToe: total, right: { toe: total } }],
  ['a thrust angle', { totalToe: total, thrustAngle: total }],
])('of what gives %s nothing is wished', (_, axle) => {
  const spec = { front: axle, rear: axle };
  expect(straightness(spec, pointing(0.5))).toBeUndefined();
});
