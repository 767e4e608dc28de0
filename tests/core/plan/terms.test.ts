import { describe, expect, it } from 'vitest';
import type { Adjuster, AxleSpec, Car, CarSettings, Plan } from '../../../core/contract.ts';
import { planMoves } from '../../../core/index.ts';
import { tieTerms } from '../../../core/plan/terms.ts';
import { LAYOUTS, rod } from '../../tools/random-cars.ts';

/** Tie rods of 1.5 mm a turn that may differ by 3 mm between the sides. */
const limited: Adjuster = { ...rod('rod', 'tieInner', 6, 0.5), maxSideDifference: 3 };
const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
const car: Car = {
  ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
  front: { suspension, adjusters: [limited], steered: true },
  rear: {
    suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 780, 340] }, camber: 0, toe: 0 },
    ...{ adjusters: [], steered: false },
  },
};
const at = (left: number, right: number) => ({ LF: { rod: left }, RF: { rod: right }, LR: {}, RR: {} });

describe('rods that may differ by 3 mm between the sides', () => {
  it.each([
    [0, 0, 3],
    [1, 0, 3],
    [0, 2, 3],
    [4, 0, 6],
    [-1, 4, 7.5],
    [3, -3, 9],
  ])('at %d and %d turns: the difference may go to ±%d mm', (left, right, most) => {
    const terms = tieTerms(car, at(left, right));
    expect(terms).toHaveLength(1);
    expect(terms[0]).toMatchObject({ where: 'front', angle: 'rod', hard: true });
    expect(terms[0]?.window.low).toBeCloseTo(-most, 12);
    expect(terms[0]?.window.high).toBeCloseTo(most, 12);
  });

  function plan(settings: CarSettings, front: AxleSpec): Plan {
    const wheel = { camber: 0, toe: 0.1 };
    return planMoves({ car, spec: { front }, reading: { LF: wheel, RF: wheel }, settings, style: 'least-work' });
  }
  const apart = ({ positions: { LF, RF } }: Plan) => 1.5 * ((LF.rod as number) - (RF.rod as number));

  it.each([
    [5, -1],
    [-1, 5],
  ])('found at %d and %d turns they stay as they are where the wheels are in their windows', (left, right) => {
    const made = plan(at(left, right), { toe: { low: 0, high: 0.2 } });
    expect(made.moves).toEqual([]);
    expect(made.inWindow).toBe(true);
  });

  it.each([
    [3, -1, 1],
    [-1, 3, -1],
  ])('found at %d and %d turns they part no further, however much the windows want it', (left, right, sign) => {
    // One wheel in, the other out: what turns the rods apart, the way that they already are apart, or the other way.
    const apartAsFound = Math.abs(1.5 * (left - right));
    const wanted = [1, -1].map((way) => {
      const toe = (aim: number) => ({ toe: { low: aim - 0.01, high: aim + 0.01 } });
      return apart(plan(at(left, right), { left: toe(way * 2), right: toe(way * -2) }));
    });
    for (const difference of wanted) expect(Math.abs(difference)).toBeLessThanOrEqual(apartAsFound + 1e-9);
    expect(wanted.map((difference) => Math.sign(difference)).sort()).toEqual([-1, 1]);
    expect(Math.max(...wanted.map((difference) => sign * difference))).toBeCloseTo(apartAsFound, 9);
  });
});
