/**
 * A wheel that two cams of wide marks set, without a rod: what can be turned into the windows by hand, watching the rack, is
 * planned so. Whether it can be is told without the planner: by Newton's method on poses of ml-levenberg-marquardt on residuals of
 * tests/tools/general-pose.ts, with the cams' offsets worked out in tests/bench/rounds/truth.ts.
 */
import { describe, expect, it } from 'vitest';
import type { CarFile, Corner, Plan, PlanRequest, PlanStyle } from '../../../../core/contract.ts';
import { planMoves, planRequest } from '../../../../core/index.ts';
import { carOf, type Family, LEARNERS } from '../../../bench/rounds/families.ts';
import { TrueCorner } from '../../../bench/rounds/truth.ts';
import { windowsTurnedTo } from '../../../bench/rounds/turned-to.ts';
import { stream } from '../../../tools/random-cars.ts';

const family = LEARNERS.at(-1) as Family;
const HALF = { camber: 0.25, toe: 0.08 };
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const spec = { camber: window(family.aim.camber, HALF.camber), toe: window(family.aim.toe, HALF.toe) };
const GAUGE = { camber: 0.03, caster: 0.08, toe: 0.015 };
const LIVE = ['camber', 'toe'] as const;
const CARS = 14;

/** A car whose points are what was entered, its angles off as they come to a rack. */
function carAt(seed: number) {
  const random = stream(seed);
  const truths = family.corners.map(() => new TrueCorner(family, family.suspension, random, 0));
  const suspension = { ...family.suspension, tolerance: 3 };
  const readings = family.corners.map((corner, i) => {
    const { camber, toe } = truths[i]!.angles({});
    return [corner, { camber, toe }] as const;
  });
  const file: CarFile = {
    ...{ format: 'cornerwright', version: 1, car: carOf(family, suspension, suspension), spec: { rear: spec } },
    visits: [
      {
        ...{ id: 'visit', carId: 'simulated', opened: '2026-01-01T08:00:00Z' },
        rounds: [{ reading: Object.fromEntries(readings), settings: {} }],
      },
    ],
  };
  return { truths, file };
}

const planned = (file: CarFile, style: PlanStyle, more: Partial<PlanRequest> = {}): Plan =>
  planMoves({ ...planRequest(file, { style, gauge: GAUGE, live: LIVE }), ...more });

/** Where a hand comes to both aims, so does the plan: within what a twentieth of a mark of either cam does. */
function isOnItsAims(plan: Plan, corner: Corner, truth: TrueCorner): void {
  const exact = { camber: window(family.aim.camber, 0.01), toe: window(family.aim.toe, 0.01) };
  if (!windowsTurnedTo(family, exact, truth)) return;
  const { camber, toe } = truth.angles(plan.positions[corner] as Record<string, number>);
  expect(Math.abs(camber - family.aim.camber)).toBeLessThan(0.03);
  expect(Math.abs(toe - family.aim.toe)).toBeLessThan(0.025);
}

/** The fewest cams of one wheel that can be turned into its windows; undefined where not even both can. */
function leastCams(truth: TrueCorner): number | undefined {
  const ids = family.adjusters.map(({ id }) => id);
  const alone = ids.filter((id) => sweeps(truth, id));
  if (isIn(truth, {})) return 0;
  if (alone.length > 0) return 1;
  return windowsTurnedTo(family, spec, truth) ? 2 : undefined;
}

const isIn = (truth: TrueCorner, settings: Record<string, number>): boolean => {
  const { camber, toe } = truth.angles(settings);
  return (
    Math.abs(camber - family.aim.camber) <= HALF.camber - 0.005 && Math.abs(toe - family.aim.toe) <= HALF.toe - 0.005
  );
};

/** Whether one cam alone does it, degree by degree. */
function sweeps(truth: TrueCorner, id: string): boolean {
  for (let at = -88; at <= 88; at += 2) if (isIn(truth, { [id]: at })) return true;
  return false;
}

describe('two cams without a rod', () => {
  const cars = Array.from({ length: CARS }, (_, n) => carAt(9100 + n));
  const reached = cars.filter(({ truths }) => truths.every((truth) => windowsTurnedTo(family, spec, truth)));

  it('most of the cars are such as no whole marks bring in', () => {
    expect(reached.length).toBeGreaterThan(CARS / 2);
    const blind = reached.filter(({ file }) => planned(file, 'closest', { live: [] }).inWindow);
    expect(blind.length).toBeLessThan(reached.length / 2);
  });

  it.each(['closest', 'surest', 'practical', 'least-work'] as const)('%s: whatever can be turned in is', (style) => {
    for (const { file, truths } of reached) {
      const plan = planned(file, style);
      expect(plan.inWindow).toBe(true);
      family.corners.forEach((corner, side) => {
        const { camber, toe } = truths[side]!.angles(plan.positions[corner] as Record<string, number>);
        expect(Math.abs(camber - family.aim.camber)).toBeLessThanOrEqual(HALF.camber + 1e-6);
        expect(Math.abs(toe - family.aim.toe)).toBeLessThanOrEqual(HALF.toe + 1e-6);
      });
      if (style === 'surest' || style === 'practical') expect(plan.chance).toBeGreaterThan(0.9);
      if (style !== 'closest') continue;
      for (const [side, corner] of family.corners.entries()) isOnItsAims(plan, corner, truths[side]!);
    }
  });

  it('the least work turns no more cams than are needed', () => {
    for (const { file, truths } of reached) {
      const { moves } = planned(file, 'least-work');
      const most = truths.reduce((sum, truth) => sum + leastCams(truth)!, 0);
      expect(moves.length).toBeLessThanOrEqual(most);
    }
  });

  it('what is between marks goes by the rack, and what will not move stays', () => {
    for (const { file } of reached.slice(0, 5)) {
      for (const { to, setBy } of planned(file, 'practical').moves) {
        if (!setBy) expect(Number(to) / 15).toBeCloseTo(Math.round(Number(to) / 15), 6);
      }
      const locked = [{ corner: 'LR' as Corner, adjuster: 'toe' }];
      const held = planned(file, 'practical', { locked });
      expect(held.moves.filter(({ corner, adjuster }) => corner === 'LR' && adjuster === 'toe')).toEqual([]);
    }
  });
});
