/** Ways from a reading to the next positions of one axle. */
import { erf } from 'mathjs';
import type {
  Adjuster,
  AxleSpec,
  Car,
  CarFile,
  Corner,
  PlanStyle,
  Reading,
  Settings,
  Visit,
  WheelReading,
} from '../../../core/contract.ts';
import { adjusterPositions, planMoves, planRequest } from '../../../core/index.ts';
import type { Family } from './families.ts';
import { GAUGE, poseAt, type TrueCorner, type Wheel } from './truth.ts';

export interface Step {
  readonly settings: Readonly<Partial<Record<Corner, Settings>>>;
  /** What the method says of its own success, if it does. */
  readonly chance?: number;
}
export type Method = (reading: Reading, settings: Step['settings']) => Step;

const ANGLES = ['caster', 'camber', 'toe'] as const;
type Angle = (typeof ANGLES)[number];

const at = (adjuster: Adjuster, settings: Settings): number => (settings[adjuster.id] ?? adjuster.reference) as number;
const outOf = (spec: AxleSpec, wheel: WheelReading, angle: Angle): boolean => {
  const window = spec[angle];
  const value = wheel[angle];
  return window !== undefined && value !== undefined && (value < window.low || value > window.high);
};

/** The position nearest to a wanted one. */
function nearest(adjuster: Adjuster, wanted: number): number {
  return (adjusterPositions(adjuster) as number[]).reduce((best, one) =>
    Math.abs(one - wanted) < Math.abs(best - wanted) ? one : best,
  );
}

/** Angles of the family's nominal car at positions, relative to its reference: what a handbook or a kit prints. */
function nominal(family: Family, settings: Settings): Wheel {
  const { suspension, adjusters } = family;
  const here = poseAt(suspension, adjusters, settings);
  const zero = poseAt(suspension, adjusters, {});
  return { camber: here.camber - zero.camber, caster: here.caster - zero.caster, toe: here.toe - zero.toe };
}

/** Degrees a unit of position (mm, degree of cam, turn) at the reference. */
function rates(family: Family): readonly Wheel[] {
  return family.adjusters.map((adjuster) => {
    const step = adjuster.kind === 'eccentric-cam' ? 15 : 1;
    const { camber, caster, toe } = nominal(family, { [adjuster.id]: (adjuster.reference as number) + step });
    return { camber: camber / step, caster: caster / step, toe: toe / step };
  });
}

/**
 * One angle at a time by its nominal effect, then the rack again: caster by its adjuster (packs against one another),
 * camber by its own (packs together), toe by the rod. Trade practice without source.
 */
export function ruleOfThumb(family: Family, spec: AxleSpec): Method {
  const [first, second, rod] = family.adjusters;
  const [a, b, t] = rates(family) as [Wheel, Wheel, Wheel];
  const packs = first.kind === 'shim-pack';
  return (reading, settings) => {
    const next: Partial<Record<Corner, Settings>> = {};
    for (const corner of family.corners) {
      const wheel = reading[corner] ?? {};
      const now = settings[corner] ?? {};
      const angle = ANGLES.find((one) => outOf(spec, wheel, one));
      const moved: Record<string, number | string> = { ...now };
      if (angle) {
        const missing = (family.aim[angle] ?? 0) - (wheel[angle] ?? 0);
        const move = (adjuster: Adjuster, by: number): void => {
          moved[adjuster.id] = nearest(adjuster, at(adjuster, now) + by);
        };
        if (angle === 'toe') move(rod, missing / t.toe);
        else if (angle === 'caster' && packs) {
          const by = missing / (a.caster - b.caster);
          move(first, by);
          move(second, -by);
        } else if (angle === 'camber' && packs) {
          const by = missing / (a.camber + b.camber);
          move(first, by);
          move(second, by);
        } else if (angle === 'caster') move(first, missing / a.caster);
        else move(second, missing / b.camber);
      }
      next[corner] = moved;
    }
    return { settings: next };
  };
}

/** The kit's chart, of the nominal car, read by hand: one angle after the other, each with the other adjuster as it is. */
export function byChart(family: Family, spec: AxleSpec): Method {
  const [first, second, rod] = family.adjusters;
  const t = (rates(family)[2] as Wheel).toe;
  const chart = new Map<string, Wheel>();
  const look = (i: number, j: number): Wheel => {
    const key = `${i} ${j}`;
    const known = chart.get(key) ?? nominal(family, { [first.id]: i, [second.id]: j });
    chart.set(key, known);
    return known;
  };
  const pick = (adjuster: Adjuster, miss: (position: number) => number): number =>
    (adjusterPositions(adjuster) as number[]).reduce((best, one) => (miss(one) < miss(best) ? one : best));
  return (reading, settings) => {
    const next: Partial<Record<Corner, Settings>> = {};
    for (const corner of family.corners) {
      const wheel = reading[corner] ?? {};
      const now = settings[corner] ?? {};
      let i = at(first, now);
      let j = at(second, now);
      const zero = look(i, j);
      const miss = (angle: 'caster' | 'camber', x: number, y: number): number =>
        Math.abs((wheel[angle] ?? 0) + look(x, y)[angle] - zero[angle] - (family.aim[angle] ?? 0));
      if (outOf(spec, wheel, 'caster')) i = pick(first, (x) => miss('caster', x, j));
      if (outOf(spec, wheel, 'camber')) j = pick(second, (y) => miss('camber', i, y));
      const toe = (wheel.toe ?? 0) + look(i, j).toe - zero.toe;
      const turns = nearest(rod, at(rod, now) + (family.aim.toe - toe) / t);
      next[corner] = { ...now, [first.id]: i, [second.id]: j, [rod.id]: turns };
    }
    return { settings: next };
  };
}

/** As the app asks: of the car file with its round, which is the car as it was found. */
export function cornerwright(car: Car, spec: AxleSpec, axle: 'front' | 'rear', style: PlanStyle): Method {
  return (reading, settings) => {
    const visit: Visit = {
      id: 'visit',
      carId: car.id,
      opened: '2026-01-01T08:00:00Z',
      rounds: [{ reading, settings }],
    };
    const file: CarFile = { format: 'cornerwright', version: 1, car, spec: { [axle]: spec }, visits: [visit] };
    const { positions, chance } = planMoves(planRequest(file, { style, gauge: GAUGE }));
    return { settings: positions, chance };
  };
}

export type Truth = Readonly<Record<string, TrueCorner>>;

/**
 * What nobody can: knows the true car, and of all positions takes those that have the best chance to read camber and
 * caster in the window; the gauge alone does not repeat for it. No method does better but by luck. It leaves toe alone.
 */
export function knowsAll(family: Family, spec: AxleSpec, truth: Truth): Method {
  const [first, second] = family.adjusters;
  const chance = (angle: Angle, value: number): number => {
    const window = spec[angle];
    if (!window) return 1;
    const below = (limit: number): number => (1 + erf((limit - value) / (GAUGE[angle] * 2))) / 2;
    return below(window.high) - below(window.low);
  };
  const best = (car: TrueCorner, read: WheelReading, settings: Settings): Settings => {
    const stands = car.angles(settings);
    let most = { chance: -1, to: settings };
    for (const i of adjusterPositions(first)) {
      for (const j of adjusterPositions(second)) {
        const to = { [first.id]: i, [second.id]: j };
        const goes = car.angles(to);
        const told = (angle: Angle): number => (read[angle] ?? 0) + goes[angle] - stands[angle];
        const both = chance('camber', told('camber')) * chance('caster', told('caster'));
        if (both > most.chance) most = { chance: both, to };
      }
    }
    return most.to;
  };
  return (reading, settings) => ({
    settings: Object.fromEntries(
      family.corners.map((corner) => [
        corner,
        best(truth[corner] as TrueCorner, reading[corner] ?? {}, settings[corner] ?? {}),
      ]),
    ),
  });
}
