/**
 * What a chart leaves unknown must not look surer than a car that was measured: the same moves of the same car, once by
 * its points with a tape's tolerance, once by its own chart.
 */
import { describe, expect, test } from 'vitest';
import {
  type Adjuster,
  type AxleName,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type Reading,
  type Spec,
  type Suspension,
} from '../../core/contract.ts';
import {
  adjusterPositions,
  adjustersOf,
  DEFAULT_TOLERANCE,
  predictReading,
  suspensionKinds,
} from '../../core/index.ts';
import { evaluate, problemOf } from '../../core/plan/problem.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { carFile, carFileNames } from '../core/records/fixture.ts';
import { eccentric, numbered, oneOf, type Random, rod, shims, stream } from '../tools/random-cars.ts';

const NO_GEOMETRY: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const READ: Reading = Object.fromEntries(CORNERS.map((corner) => [corner, { camber: 0, caster: 4, toe: 0.1 }]));
const ANGLES = ['camber', 'caster', 'toe'] as const;

/** Places at which arms are shimmed or hang on cams, and the link that sets toe. */
const PLACES: Readonly<Record<string, readonly [first: string, second: string, rod?: string]>> = {
  'double-wishbone': ['upperFront', 'upperRear', 'tieInner'],
  strut: ['lowerFront', 'lowerRear', 'tieInner'],
  'five-link': ['inner1', 'inner3', 'inner5'],
  'trailing-arm': ['pivotInner', 'pivotOuter'],
};

interface Case {
  readonly name: string;
  readonly car: Car;
}

function startersWith(random: Random): Case[] {
  return starters.flatMap(({ kind, axle, points, camber, toe }): Case[] => {
    const [first, second, link] = PLACES[kind] ?? [];
    if (!first || !second) return [];
    const make = () => oneOf(random, [shims, numbered, eccentric]);
    const adjusters = [
      make()(random, 'first', first),
      make()(random, 'second', second),
      ...(link ? [rod('rod', link)] : []),
    ];
    const own = { suspension: { kind, points, camber, toe }, adjusters, steered: axle === 'front' };
    const none = { suspension: NO_GEOMETRY, adjusters: [], steered: false };
    const axles = axle === 'front' ? { front: own, rear: none } : { front: none, rear: own };
    return [{ name: `${kind} ${axle}`, car: { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, ...axles } }];
  });
}

const isMeasured = ({ kind, tolerance = DEFAULT_TOLERANCE }: Suspension): boolean =>
  kind !== 'unknown' && tolerance <= DEFAULT_TOLERANCE && !suspensionKinds[kind]?.rigidAxle;

/** An axle of a fixture that a tape was laid on, alone. */
const fixtures: readonly Case[] = carFileNames.flatMap((name) =>
  (['front', 'rear'] as const).flatMap((axle): Case[] => {
    const { car } = carFile(name);
    const other: AxleName = axle === 'front' ? 'rear' : 'front';
    const none = { suspension: NO_GEOMETRY, adjusters: [], steered: false };
    return isMeasured(car[axle].suspension) ? [{ name: `${name} ${axle}`, car: { ...car, [other]: none } }] : [];
  }),
);

/** Each adjuster as its own chart: what it adds where it goes, after those before it, as the points have it. */
function byChart(car: Car, to: CarSettings): Car {
  const chart = (corner: Corner): Adjuster[] => {
    let stands: Record<string, string | number> = {};
    return adjustersOf(car, corner).map((one): Adjuster => {
      const before = predictReading(car, READ, {}, { [corner]: stands })[corner] ?? {};
      stands = { ...stands, [one.id]: to[corner]?.[one.id] ?? one.reference };
      const after = predictReading(car, READ, {}, { [corner]: stands })[corner] ?? {};
      const adds = Object.fromEntries(ANGLES.map((angle) => [angle, (after[angle] ?? 0) - (before[angle] ?? 0)]));
      const positions = [{ label: 'here' }, { label: 'there', ...adds }];
      return { id: one.id, kind: 'effect-table', name: one.id, reference: 'here', positions };
    });
  };
  const axle = (left: Corner, right: Corner, name: AxleName) => ({
    ...{ suspension: NO_GEOMETRY, steered: car[name].steered },
    ...{ adjusters: chart(left), rightAdjusters: chart(right) },
  });
  return { ...car, front: axle('LF', 'RF', 'front'), rear: axle('LR', 'RR', 'rear') };
}

function compare({ car }: Case, random: Random) {
  const goes = (corner: Corner) =>
    Object.fromEntries(adjustersOf(car, corner).map((one) => [one.id, oneOf(random, adjusterPositions(one))]));
  const to = Object.fromEntries(CORNERS.map((corner) => [corner, goes(corner)])) as Record<
    Corner,
    CarSettings['LF'] & object
  >;
  const predicted = predictReading(car, READ, {}, to);
  if (predicted.unreachable) return undefined;
  const about = (value = 0, half: number) => ({ low: value - half, high: value + half });
  const side = (corner: Corner) => ({
    camber: about(predicted[corner]?.camber, 0.25),
    caster: about(predicted[corner]?.caster, 0.5),
    toe: about(predicted[corner]?.toe, 0.1),
  });
  const spec: Spec = { front: { left: side('LF'), right: side('RF') }, rear: { left: side('LR'), right: side('RR') } };
  const asked = { spec, reading: READ, settings: {} };
  const moved = (corner: Corner, one: Adjuster) => String(to[corner][one.id]) !== String(one.reference);
  const there = Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      Object.fromEntries(adjustersOf(car, corner).map((one) => [one.id, moved(corner, one) ? 'there' : 'here'])),
    ]),
  ) as typeof to;
  return {
    measured: evaluate(problemOf({ ...asked, car }), to),
    charted: evaluate(problemOf({ ...asked, car: byChart(car, to) }), there),
  };
}

/** A chance is a share of 2048 draws: three of its standard deviations at the most. */
const DRAWN = 0.033;

describe.each([...fixtures, ...startersWith(stream(5)), ...startersWith(stream(6)), ...startersWith(stream(7))])(
  '$name',
  (one) => {
    test('is no surer by its chart than by its points', () => {
      const random = stream(one.name.length);
      let seen = 0;
      for (let i = 0; i < 8; i++) {
        const both = compare(one, random);
        if (!both) continue;
        const { measured, charted } = both;
        seen++;
        for (const corner of CORNERS) {
          for (const angle of ANGLES) {
            const known = measured.deviation[corner]?.[angle] ?? 0;
            expect(charted.deviation[corner]?.[angle] ?? 0, `${corner} ${angle}`).toBeGreaterThanOrEqual(known - 1e-9);
          }
        }
        expect(charted.chance).toBeLessThanOrEqual(measured.chance + DRAWN);
      }
      expect(seen).toBeGreaterThan(4);
    });
  },
);
