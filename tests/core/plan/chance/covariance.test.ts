/** How far a change may be off: by a closed form where it is linear, else by differences of the prediction. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_TOLERANCE } from '../../../../core/adjuster/unknowns.ts';
import type { Adjuster, Car, CarSettings, Corner, Settings, Suspension, Vec3 } from '../../../../core/contract.ts';
import { predictReading } from '../../../../core/index.ts';
import { Uncertainty } from '../../../../core/plan/chance/covariance.ts';
import { compileCar } from '../../../../core/pose/car-model.ts';
import { chartSigmas } from '../../../tools/chart-error.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

const GAUGE = { camber: 0.02, caster: 0.05, toe: 0.01, pinionAngle: 0.1, lateral: 0.5 };
const CERTAIN = { camber: 0, caster: 0, toe: 0, pinionAngle: 0, lateral: 0 };
const bare: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };

function carOf(suspension: Suspension, adjusters: readonly Adjuster[]): Car {
  return {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: { suspension, adjusters, steered: true },
    rear: { suspension: bare, adjusters: [], steered: false },
  };
}
function uncertaintyOf(car: Car, from: Settings, gauge = GAUGE, corner: Corner = 'LF') {
  const assembly = compileCar(car).find(({ corners }) => corners.includes(corner));
  if (!assembly) throw new Error('a car without this wheel');
  return new Uncertainty(
    assembly,
    assembly.corners.map(() => from),
    gauge,
  );
}
const square = (rows: readonly (readonly number[])[]): number[] => rows.flat();

describe('printed charts', () => {
  const chart = (id: string, perStep: Readonly<Record<string, number>>, tolerance?: number): Adjuster => ({
    id,
    kind: 'effect-table',
    perStep,
    range: [-9, 9],
    reference: 0,
    ...(tolerance !== undefined && { tolerance }),
  });
  const first = chart('first', { camber: 0.1, caster: -0.3, toe: 0.02 }, 30);
  const second = chart('second', { toe: 0.08, camber: 0.05 }, 10);
  const car = carOf(bare, [first, second]);

  it('where nothing moves only the gauge is in doubt, twice as it reads twice', () => {
    const own = uncertaintyOf(car, { first: 2, second: -1 }).covariance([{ first: 2, second: -1 }]);
    square([
      [2 * 0.02 ** 2, 0, 0],
      [0, 2 * 0.05 ** 2, 0],
      [0, 0, 2 * 0.01 ** 2],
    ]).forEach((value, k) => {
      expect(own[k]).toBeCloseTo(value, 15);
    });
  });

  it.each([
    [
      { first: 2, second: -1 },
      { first: 5, second: -1 },
    ],
    [
      { first: 2, second: -1 },
      { first: 5, second: 4 },
    ],
    [{}, { first: -3, second: 1 }],
  ] as const)('from %j to %j: each angle by a share of what it changes and of the largest change', (from, to) => {
    const own = uncertaintyOf(car, from).covariance([to]);
    const gone = (id: 'first' | 'second') => to[id] - ((from as Record<string, number>)[id] ?? 0);
    const stays = { camber: 0, caster: 0, toe: 0 };
    const [one, other] = [gone('first'), gone('second')];
    const a = one === 0 ? stays : chartSigmas({ camber: 0.1 * one, caster: -0.3 * one, toe: 0.02 * one }, 30);
    const b = other === 0 ? stays : chartSigmas({ toe: 0.08 * other, camber: 0.05 * other }, 10);
    const diagonal = (['camber', 'caster', 'toe'] as const).map(
      (angle) => 2 * GAUGE[angle] ** 2 + a[angle] ** 2 + b[angle] ** 2,
    );
    own.forEach((value, k) => {
      expect(value).toBeCloseTo(k % 4 === 0 ? (diagonal[k / 4] ?? Number.NaN) : 0, 12);
    });
  });

  it('a move that is made exactly adds nothing', () => {
    const exact = carOf(bare, [chart('first', { toe: 0.1 }, 0)]);
    expect([...uncertaintyOf(exact, {}, CERTAIN).covariance([{ first: 5 }])]).toEqual(Array(9).fill(0));
    expect(uncertaintyOf(exact, {}).errors(0, 'first', 5)).toEqual([]);
  });

  it('has no points that could be off', () => {
    const own = uncertaintyOf(car, {});
    expect(own.coordinates).toBe(0);
    expect(own.size).toBe(3);
    expect(own.slopes([{ first: 1 }])).toHaveLength(0);
    expect(own.errors(0, 'first', 0)).toEqual([]);
  });
});

/** Camber, caster and toe of a corner that goes to some positions, all having been read as 0. */
function anglesAt(car: Car, corner: Corner, from: CarSettings, to: CarSettings): number[] {
  const wheel = predictReading(car, { [corner]: { camber: 0, caster: 0, toe: 0 } }, from, to)[corner];
  return [wheel?.camber, wheel?.caster, wheel?.toe].map((x) => x ?? Number.NaN);
}

describe('a wheel on links', () => {
  const points = LAYOUTS['double-wishbone'] as Record<string, Vec3>;
  const suspension = (more: object = {}): Suspension => ({
    kind: 'double-wishbone',
    points,
    camber: 0,
    toe: 0,
    ...more,
  });
  const adjusters: Adjuster[] = [
    { ...rod('rod', 'tieInner', 6, 0.25), tolerance: 0.3 },
    {
      id: 'slide',
      kind: 'slide',
      at: 'upperFront',
      direction: [0, 1, 0],
      step: 1,
      range: [-8, 8],
      reference: 0,
      tolerance: 1.5,
    },
  ];
  const nudged = (name: string, axis: number, by: number): Suspension => {
    const point = (points[name] as Vec3).map((x, i) => (i === axis ? x + by : x)) as unknown as Vec3;
    return suspension({ points: { ...points, [name]: point } });
  };
  const coordinates = Object.keys(points).flatMap((name) => [0, 1, 2].map((axis) => [name, axis] as const));

  /** Covariance with every coordinate anywhere within ± `tolerance`: by central differences. */
  function byDifferences(from: Settings, to: Settings, tolerance: number): number[] {
    const h = 0.4;
    const errors = coordinates.map(([name, axis]) => {
      const [up, down] = [h, -h].map((by) =>
        anglesAt(carOf(nudged(name, axis, by), adjusters), 'LF', { LF: from }, { LF: to }),
      );
      return [0, 1, 2].map((k) => (tolerance / Math.sqrt(3)) * (((up?.[k] ?? NaN) - (down?.[k] ?? NaN)) / (2 * h)));
    });
    const car = carOf(suspension(), adjusters);
    const there = anglesAt(car, 'LF', { LF: from }, { LF: to });
    for (const { id, tolerance: own } of adjusters) {
      const [stood, goes] = [(from[id] ?? 0) as number, (to[id] ?? 0) as number];
      if (stood === goes) continue;
      const beyond = anglesAt(car, 'LF', { LF: from }, { LF: { ...to, [id]: goes + own / 2 } });
      // At the end of all moves: what they do to one another is of second order, and so are the hundredths below.
      errors.push(beyond.map((x, k) => x - (there[k] ?? NaN)));
    }
    const sum = (i: number, j: number) => errors.reduce((total, one) => total + (one[i] ?? NaN) * (one[j] ?? NaN), 0);
    return [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => sum(i, j)));
  }

  it.each([
    [{}, { rod: 3, slide: 0 }, 5],
    [{ rod: -1, slide: 2 }, { rod: -1, slide: -5 }, 5],
    [{ rod: 1, slide: -2 }, { rod: -2, slide: 4 }, 2],
    [{ rod: 1, slide: -2 }, { rod: -2, slide: 4 }, 0],
  ] as const)('from %j to %j, points to ± %d mm', (from, to, tolerance) => {
    const car = carOf(suspension({ tolerance }), adjusters);
    const own = uncertaintyOf(car, from, CERTAIN);
    expect(own.coordinates).toBe(tolerance === 0 ? 0 : coordinates.length);
    const wanted = byDifferences(from, to, tolerance);
    const covariance = own.covariance([to]);
    const largest = Math.max(...wanted);
    expect(largest).toBeGreaterThan(0);
    wanted.forEach((value, k) => {
      expect(Math.abs((covariance[k] ?? NaN) - value)).toBeLessThan(0.04 * largest);
    });
  });

  it('is known to ± 5 mm where nothing is said', () => {
    expect(DEFAULT_TOLERANCE).toBe(5);
    const [said, silent] = [{ tolerance: 5 }, {}].map((more) =>
      uncertaintyOf(carOf(suspension(more), adjusters), {}).covariance([{ rod: 2 }]),
    );
    expect(silent).toEqual(said);
  });

  it('is as uncertain on the right as on the left, and whichever way it is asked first', () => {
    const car = carOf(suspension(), adjusters);
    const left = uncertaintyOf(car, {});
    const right = uncertaintyOf(car, {}, GAUGE, 'RF');
    left.covariance([{ rod: 5 }]);
    const [a, b] = [left, right].map((one) => one.covariance([{ rod: 2, slide: 1 }]));
    a?.forEach((value, k) => {
      expect(b?.[k]).toBeCloseTo(value, 12);
    });
  });

  it('tells nothing where the links do not reach', () => {
    const car = carOf(suspension(), [{ ...rod('rod', 'tieInner', 60, 5), lead: 4 }]);
    const own = uncertaintyOf(car, {}, CERTAIN);
    expect(own.slopes([{ rod: 60 }])).toBeUndefined();
    expect(own.errors(0, 'rod', 60)).toEqual([]);
    expect([...own.covariance([{ rod: 60 }])]).toEqual(Array(9).fill(0));
  });
});

describe('a sleeve that is turned', () => {
  it.each([0, 60, 135])('to %i° is off by what a turn too far adds to degrees·cos φ and degrees·sin φ', (to) => {
    const sleeve: Adjuster = { id: 'sleeve', kind: 'offset-sleeve', degrees: 1, marks: 24, reference: 0, tolerance: 8 };
    const points = LAYOUTS['beam-front'] as Suspension['points'];
    const car = carOf({ kind: 'beam-front', points, camber: 0, toe: 0, tolerance: 0 }, [sleeve]);
    const from = 30;
    const size = 3;
    const own = uncertaintyOf(car, { sleeve: from }, CERTAIN).covariance(
      [{ sleeve: to }, { sleeve: from }].slice(0, 1),
    );
    const [at, off] = [to, to + 8 / 2].map((angle) => (angle * Math.PI) / 180) as [number, number];
    // The tie rod turns the wheel a little by the way.
    expect(Math.sqrt(own[0]!)).toBeCloseTo(Math.abs(Math.cos(off) - Math.cos(at)), 2);
    expect(Math.sqrt(own[size + 1]!)).toBeCloseTo(Math.abs(Math.sin(off) - Math.sin(at)), 2);
  });
});
