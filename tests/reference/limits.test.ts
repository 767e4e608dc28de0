/**
 * Limits that makers and the services publish (figures: section by section beside each test), kept by every plan. Each
 * case first shows that without the limit the plan would break it.
 */
import { describe, expect, it } from 'vitest';
import type { Adjuster, AxleSpec, Car, CarSettings, Plan, Suspension } from '../../core/contract.ts';
import { adjusterPositions, planMoves, shimStack } from '../../core/index.ts';
import published from '../../fixtures/published/upper-arm-shims.json' with { type: 'json' };
import { LAYOUTS } from '../tools/random-cars.ts';

const wheel = { camber: 0, caster: 3, toe: 0.1 };
const exactly = (aim: number) => ({ low: aim - 0.01, aim, high: aim + 0.01 });

function plan(suspension: Suspension, adjusters: Adjuster[], front: AxleSpec, settings: CarSettings = {}): Plan {
  const axle = { suspension, adjusters, steered: true };
  const rear = {
    suspension: { kind: 'beam-rear', points: { wheelCentre: [-2500, 780, 310] as const }, camber: 0, toe: 0 },
    ...{ adjusters: [], steered: false },
  };
  const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: axle, rear };
  return planMoves({ car, spec: { front }, reading: { LF: wheel, RF: wheel }, settings });
}

describe('Nissan D21 1997: packs up to 8.0 mm, front and rear within 3.0 mm, fewer than four shims at a bolt', () => {
  const suspension = published.suspension as unknown as Suspension;
  const sizes = [1, 1.6, 2, 4];
  const bare = (id: string, at: string, max: number): Adjuster => ({
    ...{ id, kind: 'shim-pack', at, direction: [0, 1, 0], sizes, reference: 2 },
    max,
  });
  const free = [bare('front', 'upperFront', 20), bare('rear', 'upperRear', 20)];
  const kept: Adjuster[] = [
    { ...bare('front', 'upperFront', 8), maxCount: 3, pair: { with: 'rear', most: 3 } },
    { ...bare('rear', 'upperRear', 8), maxCount: 3 },
  ];
  // Far more caster than shims make, and more camber.
  const far: AxleSpec = { caster: exactly(9), camber: exactly(2) };
  const stands = (made: Plan) => made.positions.LF as { front: number; rear: number };

  it('without them the plan goes beyond all three', () => {
    const { front, rear } = stands(plan(suspension, free, far));
    expect(Math.max(front, rear)).toBeGreaterThan(8);
    expect(Math.abs(front - rear)).toBeGreaterThan(3);
    expect(shimStack(Math.max(front, rear), sizes).count).toBeGreaterThan(3);
  });

  it('with them it keeps all three, and says what it falls short by', () => {
    const made = plan(suspension, kept, far);
    const { front, rear } = stands(made);
    expect(made.inWindow).toBe(false);
    expect(made.shortfall.map(({ angle }) => angle)).toContain('caster');
    expect(Math.max(front, rear)).toBeLessThanOrEqual(8);
    expect(Math.abs(front - rear)).toBeLessThanOrEqual(3 + 1e-9);
    for (const pack of [front, rear]) expect(shimStack(pack, sizes).count).toBeLessThan(4);
  });

  it('a pack that four shims alone would make is none of the positions', () => {
    // 4 + 2 + 1.6 is three shims; 6.2 needs four, 1.6 + 1.6 + 1 + 2.
    expect(adjusterPositions(kept[0]!)).toContain(7.6);
    expect(adjusterPositions(kept[0]!)).not.toContain(6.2);
    expect(adjusterPositions({ ...kept[0]!, maxCount: 4 })).toContain(6.2);
  });

  describe('a pair of packs that stands 5 mm apart', () => {
    const settings = { LF: { front: 0, rear: 5 }, RF: { front: 0, rear: 5 } };
    const unpaired = kept.map(({ pair: _, ...pack }) => pack);
    const apart = (made: Plan) => stands(made).rear - stands(made).front;

    it('may stay so where the wheels are as they are wanted', () => {
      const made = plan(suspension, kept, { caster: exactly(wheel.caster), camber: exactly(wheel.camber) }, settings);
      expect(made.moves).toEqual([]);
      expect(made.inWindow).toBe(true);
    });

    it('is not driven further, where without the limit it would be', () => {
      const spec = { caster: exactly(-9) };
      expect(apart(plan(suspension, unpaired, spec, settings))).toBeGreaterThan(5 + 1e-9);
      expect(apart(plan(suspension, kept, spec, settings))).toBeCloseTo(5, 9);
    });
  });
});

describe('US Army TM 9-2320-280 series: tie rods within 3 mm of each other', () => {
  const rod: Adjuster = {
    ...{ id: 'rod', kind: 'threaded-rod', links: ['tieInner'] },
    ...{ lead: 1.5, stepTurns: 0.25, range: [-4, 4], reference: 0 },
  };
  const suspension = published.suspension as unknown as Suspension;
  // Left wheel in, right wheel out: a steering wheel that is off centre.
  const spec: AxleSpec = { left: { toe: exactly(1.2) }, right: { toe: exactly(-1.1) } };
  const apart = (made: Plan) => 1.5 * Math.abs((made.positions.LF.rod as number) - (made.positions.RF.rod as number));

  it('without the limit they part by more', () => {
    expect(apart(plan(suspension, [rod], spec))).toBeGreaterThan(3);
  });

  it('with it they do not, whether or not the window can be reached', () => {
    const limited = { ...rod, maxSideDifference: 3 };
    expect(apart(plan(suspension, [limited], spec))).toBeLessThanOrEqual(3 + 1e-9);
    const total = plan(suspension, [limited], { totalToe: exactly(0.5), thrustAngle: { low: -0.6, high: 0.6 } });
    expect(apart(total)).toBeLessThanOrEqual(3 + 1e-9);
  });
});

describe('US Navy NAVEDTRA 14050A: wedges in ½° steps to about 4°, one a side, never stacked, sides within 1°', () => {
  const wedge: Adjuster = {
    ...{ id: 'wedge', kind: 'axle-wedge', reference: 0 },
    degrees: [0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4],
  };
  const suspension = { kind: 'beam-front', points: LAYOUTS['beam-front'] ?? {}, camber: 0, toe: 0 };
  const stands = (made: Plan) => [made.positions.LF.wedge, made.positions.RF.wedge] as [number, number];

  it('has those, and none at all, for positions', () => {
    expect(adjusterPositions(wedge)).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4]);
  });

  it('the plan picks one, the same on both sides, nearest to both aims', () => {
    const made = plan(suspension, [wedge], { left: { caster: exactly(5.5) }, right: { caster: exactly(4.5) } });
    expect(stands(made)).toEqual([2, 2]);
    expect(made.predicted.LF?.caster).toBeCloseTo(5, 9);
    for (const { instruction } of made.moves) expect(instruction).toContain('one a side, never stacked');
  });

  it('sides that stand apart are brought together, or at least no further apart', () => {
    const settings = { LF: { wedge: 0.5 }, RF: { wedge: 1.5 } };
    const [left, right] = stands(
      plan(suspension, [wedge], { left: { caster: exactly(2) }, right: { caster: exactly(6) } }, settings),
    );
    expect(Math.abs(left - right)).toBeLessThanOrEqual(1);
  });
});
