/**
 * What readings teach, against general-purpose libraries: ml-levenberg-marquardt with what is known before as further
 * residuals, mathjs for the covariance, and for a chart a Kalman filter written with mathjs' matrices.
 */

import { add, identity, inv, type Matrix, matrix, multiply, subtract, transpose } from 'mathjs';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import type { Adjuster, LearnedPart, Settings, Suspension, Vec3, WheelReading } from '../../core/contract.ts';
import { learn, solveCorner } from '../../core/index.ts';
import { cam, pack } from '../tools/learn-cars.ts';
import { LAYOUTS, rod, stream } from '../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, normal, roundsOf, shown } from '../tools/read-car.ts';

const ANGLES = ['camber', 'caster', 'toe'] as const;

interface Case {
  readonly kind: string;
  readonly adjusters: readonly Adjuster[];
  /** From the reference. */
  readonly moves: readonly (readonly number[])[];
}
const CASES: readonly Case[] = [
  {
    kind: 'double-wishbone',
    adjusters: [pack('front', 'upperFront', 0.1), pack('rear', 'upperRear', 0.1), rod('rod', 'tieInner', 6)],
    moves: [
      [1.5, 0, 0],
      [4.5, -3, 1],
      [4.5, 3, -2],
      [-6, 3, -2],
    ],
  },
  {
    kind: 'five-link',
    adjusters: [cam('upper', 'inner1', 2), cam('lower', 'inner4', 2), rod('rod', 'inner5', 6)],
    moves: [
      [0, 0, 0],
      [45, 0, 1],
      [45, -30, 1],
      [-60, -30, -2],
    ],
  },
];

const lowerOf = (square: readonly (readonly number[])[]): number[] => square.flatMap((row, i) => row.slice(0, i + 1));

describe.each(CASES)('a $kind by its points', ({ kind, adjusters, moves }) => {
  const entered: Suspension = { kind, points: LAYOUTS[kind]!, camber: -0.4, toe: 0.06, tolerance: 5 };
  const random = stream(kind.length);
  const sights = moves.map((by) =>
    Object.fromEntries(adjusters.map(({ id, reference }, i) => [id, (reference as number) + by[i]!])),
  );
  const truth = builtWithin(entered, 4, random);
  const read = sights.map((settings) => shown(truth, adjusters, settings, random));
  const angles = ANGLES.filter((angle) => read[0]![angle] !== undefined);
  const coordinates = Object.keys(entered.points).flatMap((name) => [0, 1, 2].map((axis) => [name, axis] as const));
  const sigma = 5 / Math.sqrt(3);
  // Each time that an adjuster is set it is off anew.
  const events = adjusters.flatMap(({ id, tolerance, kind: of }) => {
    const by = ((tolerance as number | undefined) ?? (of === 'threaded-rod' ? 0.05 : Number.NaN)) / 2;
    let now = 0;
    const of_ = sights.map((settings, i) => (i > 0 && settings[id] !== sights[i - 1]![id] ? ++now : now));
    return Array.from({ length: now }, (_, n) => ({ id, by, at: of_.map((event) => event === n + 1) }));
  });
  const count = coordinates.length;

  const places = (z: readonly number[]): Suspension => {
    const points = structuredClone(entered.points) as Record<string, [number, number, number]>;
    coordinates.forEach(([name, axis], i) => {
      const point = points[name] as number[];
      point[axis] = (point[axis] as number) + sigma * (z[i] as number);
    });
    return { ...entered, points: points as Record<string, Vec3> };
  };
  const poseOf = (suspension: Suspension, settings: Settings): WheelReading => {
    const pose = solveCorner(suspension, roomy, settings);
    if (!pose.reachable) throw new Error('no pose there');
    return pose;
  };
  const roomy = adjusters.map((one) => (one.range ? { ...one, range: [one.range[0] - 9, one.range[1] + 9] } : one));
  /** The car whose wheel leans as it was first read. */
  const leaning = (suspension: Suspension): Suspension => {
    let now = suspension;
    for (let i = 0; i < 8; i++) {
      const pose = poseOf(now, sights[0]!);
      now = {
        ...now,
        camber: now.camber + read[0]!.camber! - pose.camber!,
        toe: now.toe + read[0]!.toe! - pose.toe!,
      };
    }
    return now;
  };
  /** Residuals in standard deviations: readings, what was known of the points, what is known of the moves. */
  const residuals = (p: readonly number[]): number[] => {
    const z = p.slice(0, count);
    const made = p.slice(count, count + events.length);
    const stood = p.slice(count + events.length);
    const car = leaning(places(z));
    const own = sights.flatMap((settings, s) => {
      const at: Record<string, number> = { ...(settings as Record<string, number>) };
      events.forEach((event, e) => {
        if (event.at[s]) at[event.id]! += event.by * made[e]!;
      });
      const pose = poseOf(car, at);
      return angles.map((angle, a) => (read[s]![angle]! - pose[angle]! - stood[a]!) / GAUGE[angle]);
    });
    return [...own, ...z, ...made];
  };

  const start = Array.from({ length: count + events.length + angles.length }, () => 0);
  const x = residuals(start).map((_, i) => i);
  const { parameterValues: found } = levenbergMarquardt(
    { x, y: x.map(() => 0) },
    (p) => {
      const all = residuals(p);
      return (i) => all[i]!;
    },
    {
      initialValues: start,
      damping: 1e-6,
      gradientDifference: 1e-4,
      centralDifference: true,
      maxIterations: 40,
      errorTolerance: 1e-12,
    },
  );
  const best = found as number[];
  const model = learn(
    frontCar(entered, adjusters),
    roundsOf(
      'LF',
      sights.map((at, i) => [at, read[i]!] as const),
    ),
    GAUGE,
  );
  const part = model.learned?.parts.find(({ corners }) => corners[0] === 'LF') as LearnedPart;

  it('is the same estimate within a thousandth', () => {
    const learned = coordinates.map(
      ([name, axis]) => (model.front.suspension.points[name]![axis]! - entered.points[name]![axis]!) / sigma,
    );
    const size = Math.hypot(...best.slice(0, count));
    expect(size).toBeGreaterThan(0.3);
    expect(Math.hypot(...learned.map((one, i) => one - best[i]!)) / size).toBeLessThan(1e-3);
  });

  it('is the same covariance within a hundredth', () => {
    expect(part.unknowns).toEqual(coordinates.map(([name, axis]) => `LF.${name}.${'xyz'[axis]}`));
    const slope = (k: number): number[] => {
      const at = (by: number) => residuals(best.map((value, i) => (i === k ? value + by : value)));
      const [high, low] = [at(1e-3), at(-1e-3)];
      return high.map((value, i) => (value - low[i]!) / 2e-3);
    };
    const columns = matrix(best.map((_, k) => slope(k)));
    const all = inv(multiply(columns, transpose(columns))).toArray() as number[][];
    const told = lowerOf(all.slice(0, count).map((row) => row.slice(0, count).map((value) => value * sigma * sigma)));
    const scale = Math.hypot(...told);
    expect(Math.hypot(...told.map((value, i) => value - part.covariance[i]!)) / scale).toBeLessThan(0.01);
    // Something was learned: what is left of the best known mixture of points is less than half of what there was.
    const whitened = matrix(all.slice(0, count).map((row) => row.slice(0, count)));
    const rest = subtract(identity(count) as Matrix, whitened).toArray() as number[][];
    expect(rest.reduce((sum, row, i) => sum + row[i]!, 0)).toBeGreaterThan(2);
    coordinates.forEach((_, i) => {
      expect(part.covariance[(i * (i + 3)) / 2]! / told[(i * (i + 3)) / 2]!).toBeCloseTo(1, 2);
    });
  });
});

describe('a car that has charts', () => {
  const chart = (id: string, perStep: Readonly<Record<string, number>>): Adjuster => ({
    id,
    kind: 'effect-table',
    perStep,
    range: [-12, 12],
    reference: 0,
    tolerance: 30,
  });
  const printed = [
    { camber: 0.2, caster: 0.05, toe: 0.04 },
    { camber: -0.05, caster: 0.3, toe: 0 },
  ];
  const real = [
    { camber: 0.26, caster: 0.01, toe: -0.02 },
    { camber: 0.04, caster: 0.24, toe: 0.05 },
  ];
  const adjusters = printed.map((one, i) => chart(`chart-${i}`, one));
  const steps = [
    [0, 0],
    [4, 0],
    [4, 5],
    [-6, 5],
    [-6, -3],
  ];
  const random = stream(7);
  const read = steps.map((at): WheelReading => {
    const value = (angle: (typeof ANGLES)[number]): number =>
      0.3 + at[0]! * real[0]![angle] + at[1]! * real[1]![angle] + GAUGE[angle] * normal(random);
    return { camber: value('camber'), caster: value('caster'), toe: value('toe') };
  });
  const car = frontCar({ kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters);
  const sights = steps.map((at) => ({ 'chart-0': at[0]!, 'chart-1': at[1]! }));
  const model = learn(
    car,
    roundsOf(
      'LF',
      sights.map((at, i) => [at, read[i]!] as const),
    ),
    GAUGE,
  );

  // The largest angle of a chart is the one beside which the others are off.
  const main = printed.map((one) =>
    ANGLES.reduce((most, angle) => (Math.abs(one[angle]) > Math.abs(one[most]) ? angle : most)),
  );
  /** Degrees a step of each chart: 3 slopes each, then where the three angles stood. */
  const kalman = (): { readonly x: number[]; readonly p: number[][] } => {
    const share = 30 / 2 / 100;
    const slopes = printed.flatMap((one, i) => ANGLES.map((angle) => [one[angle], one[main[i]!]] as const));
    let x = [...slopes.map(([own]) => own), 0, 0, 0];
    const spread = [...slopes.map(([own, most]) => share ** 2 * (own ** 2 + most ** 2)), 1e4, 1e4, 1e4];
    let p = matrix(spread.map((value, i) => spread.map((_, j) => (i === j ? value : 0))));
    steps.forEach((at, s) => {
      const h = matrix(
        ANGLES.map((_, a) =>
          x.map((_, i) => (i < 6 ? (i % 3 === a ? at[Math.floor(i / 3)]! : 0) : i - 6 === a ? 1 : 0)),
        ),
      );
      const noise = matrix(ANGLES.map((one, a) => ANGLES.map((_, b) => (a === b ? GAUGE[one] ** 2 : 0))));
      const innovation = add(multiply(multiply(h, p), transpose(h)), noise) as Matrix;
      const gain = multiply(multiply(p, transpose(h)), inv(innovation)) as Matrix;
      const off = ANGLES.map((angle, a) => read[s]![angle]! - (multiply(h, x).toArray() as number[])[a]!);
      x = (add(x, multiply(gain, off)) as unknown as Matrix).toArray() as number[];
      p = multiply(subtract(identity(9) as Matrix, multiply(gain, h)), p) as Matrix;
    });
    return { x, p: p.toArray() as number[][] };
  };
  const { x, p } = kalman();

  it('learns their effects, cross-effects too, as a Kalman filter does', () => {
    model.front.adjusters.forEach((one, i) => {
      ANGLES.forEach((angle, a) => {
        const slope = (one.perStep as Record<string, number>)[angle]!;
        expect(Math.abs(slope - x[3 * i + a]!)).toBeLessThan(1e-3 * Math.max(...x.slice(0, 6).map(Math.abs)));
        expect(Math.abs(slope - real[i]![angle])).toBeLessThan(0.02);
      });
    });
    expect(car.front.adjusters).toBe(adjusters);
  });

  it('knows as well how sure they are', () => {
    const [{ unknowns, covariance }] = (model.learned?.parts ?? []) as unknown as [LearnedPart];
    const between = (a: number, b: number): number =>
      covariance[(Math.max(a, b) * (Math.max(a, b) + 1)) / 2 + Math.min(a, b)]!;
    printed.forEach((one, i) => {
      ANGLES.forEach((angle, a) => {
        const [own, beside] = [angle, `${angle} beside`].map((name) => unknowns.indexOf(`LF.chart-${i}.${name}`)) as [
          number,
          number,
        ];
        const [f, g] = [one[angle], one[main[i]!]];
        const variance = f * f * between(own, own) + 2 * f * g * between(own, beside) + g * g * between(beside, beside);
        expect(variance / p[3 * i + a]![3 * i + a]!).toBeCloseTo(1, 2);
      });
    });
  });
});
