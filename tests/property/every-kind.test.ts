/**
 * What stays true of every suspension kind with every adjuster kind that fits it. The table is built from the two
 * catalogues: a new kind is in it as soon as it has a layout (random-cars.ts) or a sample (samples.ts).
 */
import { describe, expect, it } from 'vitest';
import type { Suspension, Vec3 } from '../../core/contract.ts';
import {
  type Adjuster,
  type Axle,
  type Car,
  CORNERS,
  type CornerPose,
  type Position,
  type Reading,
  type Settings,
} from '../../core/contract.ts';
import {
  adjusterEffects,
  adjusterKinds,
  adjusterPositions,
  predictReading,
  suspensionKinds,
} from '../../core/index.ts';
import { apart, poseOf } from '../tools/pose.ts';
import { between, oneOf, type Random, randomSuspension, stream } from '../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../tools/samples.ts';

const SEEDS = Array.from({ length: 12 }, (_, i) => i + 1);
const ANGLES = ['camber', 'caster', 'toe', 'sai'] as const;

interface Case {
  readonly random: Random;
  readonly suspension: Suspension;
  readonly one: Adjuster;
}

/** The same check of a dozen random geometries, each with its own random adjuster. */
function each({ suspension, adjuster }: (typeof FITTING)[number], check: (given: Case) => void): void {
  for (const seed of SEEDS) {
    const random = stream(seed * 7919);
    const given = randomSuspension(random, suspension);
    check({ random, suspension: given, one: sampleAdjuster(random, adjuster, given) });
  }
}

/** mm by which a position makes links longer, by their body points. */
const lengthened = ({ one, suspension }: Case, position: Position): Readonly<Record<string, number>> =>
  adjusterKinds[one.kind]?.effect(one, position, suspension).lengthen ?? {};

const somewhere = ({ random, one }: Case): Position => oneOf(random, adjusterPositions(one));
const at = ({ suspension, one }: Case, position: Position, options = {}): CornerPose =>
  poseOf(suspension, [one], { [one.id]: position }, options);

describe('the catalogues', () => {
  it.each(Object.keys(suspensionKinds))('%s has a layout, and something that adjusts it', (kind) => {
    expect(Object.keys(randomSuspension(stream(1), kind).points).length > 0).toBe(kind !== 'unknown');
    expect(FITTING.some((pair) => pair.suspension === kind)).toBe(true);
  });

  it.each(Object.keys(adjusterKinds))('%s fits something', (kind) => {
    expect(FITTING.some((pair) => pair.adjuster === kind)).toBe(true);
  });
});

describe.each(FITTING)('$suspension with $adjuster', (pair) => {
  it('at its reference changes nothing', () => {
    each(pair, (given) => {
      const [bare, fitted] = [poseOf(given.suspension), at(given, given.one.reference)];
      for (const angle of ANGLES) {
        if (bare[angle] === undefined) expect(fitted[angle]).toBeUndefined();
        else expect(fitted[angle]).toBeCloseTo(bare[angle], 10);
      }
      expect(fitted.camber).toBeCloseTo(given.suspension.camber, 9);
      expect(fitted.toe).toBeCloseTo(given.suspension.toe, 9);
      for (const [name, point] of Object.entries(bare.points))
        expect(apart(fitted.points[name], point)).toBeLessThan(1e-9);
    });
  });

  it('does something somewhere, and one step of it is shown', () => {
    let most = 0;
    each(pair, (given) => {
      const here = at(given, given.one.reference);
      for (const position of adjusterPositions(given.one)) {
        const there = at(given, position);
        for (const angle of ANGLES) most = Math.max(most, Math.abs((there[angle] ?? 0) - (here[angle] ?? 0)));
      }
      const [effect] = adjusterEffects(given.suspension, [given.one]);
      expect(effect?.adjuster).toBe(given.one.id);
      expect(Math.abs(effect?.camber ?? NaN) + Math.abs(effect?.toe ?? NaN)).toBeLessThan(20);
    });
    expect(most).toBeGreaterThan(0.03);
  });

  it('is continuous: a hundred-thousandth of a step changes no angle by a ten-thousandth of a degree', () => {
    let tried = 0;
    each(pair, (given) => {
      const position = somewhere(given);
      const near = nudged(given.one, position);
      if (near === undefined) return;
      tried++;
      const [here, there] = [at(given, position), at(given, near)];
      for (const angle of ANGLES) {
        expect(Math.abs((there[angle] ?? 0) - (here[angle] ?? 0)), `${position} → ${near}`).toBeLessThan(1e-4);
      }
    });
    // Labels, and wedges of given sizes, have nothing between them.
    let between = 0;
    each(pair, ({ one }) => {
      if (adjusterPositions(one).some((position, i, all) => isBetween(one, position, all[i + 1]))) between++;
    });
    expect(tried > 0).toBe(between > 0);
  });

  it('leaves the upright rigid and every link its length', () => {
    each(pair, (given) => {
      const position = somewhere(given);
      const travel = between(given.random, -20, 20);
      const { points, verdict } = at(given, position, { travel });
      // Where there are more links than freedoms, bushes take up what is left.
      if (!suspensionKinds[given.suspension.kind]?.rigidAxle) expect(verdict.residual).toBeLessThan(1e-9);
      const give = verdict.residual + 1e-7;
      const { links = [], seats = [], lines = [] } = suspensionKinds[given.suspension.kind] ?? {};
      const was = (name: string) => given.suspension.points[name] as Vec3;
      const now = (name: string) => points[name] as Vec3;
      for (const [inner, outer] of links) {
        if (!(inner in points)) continue;
        const grown = (lengthened(given, position)[inner] ?? 0) - (lengthened(given, given.one.reference)[inner] ?? 0);
        expect(Math.abs(apart(now(inner), now(outer)) - apart(was(inner), was(outer)) - grown)).toBeLessThan(give);
      }
      const onBody = new Set([...links.map(([inner]) => inner), ...lines.map(([body]) => body), ...seats]);
      // What joins two knuckles has ends on both.
      const joint = isKnuckled(given.suspension) ? onceOf(given.suspension) : [];
      const upright = Object.keys(points).filter(
        (name) => (!onBody.has(name) || seats.includes(name)) && !joint.includes(name),
      );
      for (const a of upright)
        for (const b of upright) expect(apart(now(a), now(b))).toBeCloseTo(apart(was(a), was(b)), 7);
      // It turns the line itself.
      if (adjusterKinds[given.one.kind]?.touches(given.one).line) return;
      for (const [body, through] of lines) {
        for (const name of upright) {
          const distance = fromLine(was(name), was(body), was(through));
          expect(fromLine(now(name), now(body), now(through))).toBeCloseTo(distance, 6);
        }
      }
    });
  });

  it('is mirrored: what left and right exchange they exchange to the last digit that counts', () => {
    each(pair, (given) => {
      const [p, q] = [0, 1].map(() => ({ [given.one.id]: somewhere(given) })) as [Settings, Settings];
      const [l, r] = isOnce(given) ? [p, {}] : [p, q];
      const [otherL, otherR] = isOnce(given) ? [p, {}] : [q, p];
      const after = bothSides(given, l, r);
      const flipped = bothSides(mirrored(given), otherL, otherR);
      for (const [here, there] of [
        ['LF', 'RF'],
        ['RF', 'LF'],
        ['LR', 'RR'],
        ['RR', 'LR'],
      ] as const) {
        for (const [angle, value] of Object.entries(after[here] ?? {})) {
          expect(flipped[there]?.[angle as 'toe']).toBeCloseTo(value, 9);
        }
      }
    });
  });

  it('the same positions on both sides give the same angles, and no cross values', () => {
    if (suspensionKinds[pair.suspension]?.rigidAxle) return expectSymmetry(pair);
    each(pair, (given) => {
      const there = { [given.one.id]: somewhere(given) };
      const after = bothSides(given, there, there);
      for (const corner of CORNERS) expect(after[corner]).toEqual(after.LF);
    });
  });

  it('there and back, by way of anywhere, is where it was', () => {
    each(pair, (given) => {
      const car = carOf({ suspension: given.suspension, adjusters: [given.one], steered: true });
      const wheel = { camber: -0.4, caster: 3, toe: 0.1 };
      const [a, b, c] = [0, 1, 2].map(() => whereFitted(given, { [given.one.id]: somewhere(given) }));
      const go = (reading: object, from: object, to: object) => predictReading(car, reading, from, to);
      const round = go(go({ LF: wheel }, a!, b!), b!, c!);
      const straight = go({ LF: wheel }, a!, c!);
      for (const angle of ['camber', 'caster', 'toe'] as const) {
        expect(round.LF?.[angle]).toBeCloseTo(straight.LF?.[angle] ?? NaN, 9);
      }
      expect(JSON.stringify([round, straight])).not.toMatch(/NaN|null/);
    });
  });
});

/** Reading of a car with such a front and rear axle after its left and its right sides have gone to these positions. */
function bothSides({ suspension, one }: Omit<Case, 'random'>, left: Settings, right: Settings): Reading {
  const wheel = { camber: -0.4, caster: 3, toe: 0.1, sai: 12 };
  const to = { LF: left, RF: right, LR: left, RR: right };
  return predictReading(carOf({ suspension, adjusters: [one], steered: true }), allCorners(wheel), {}, to);
}

/**
 * What a rigid axle has once is not mirrored by itself; without it the axle is as even as any pair of corners. Knuckles
 * cannot do without their rods: those turn them, and leave the axes on which they turn alone.
 */
function expectSymmetry(pair: (typeof FITTING)[number]): void {
  let tried = 0;
  each(pair, ({ random, suspension, one }) => {
    const knuckled = isKnuckled(suspension);
    if (!knuckled && onceOf(suspension).some((name) => name in suspension.points)) return;
    tried++;
    const there = { [one.id]: somewhere({ random, suspension, one }) };
    const after = bothSides({ suspension, one }, there, isOnce({ suspension, one }) ? {} : there);
    for (const corner of CORNERS) {
      for (const [angle, value] of Object.entries(after.LF ?? {})) {
        if (!knuckled || angle === 'caster') expect(after[corner]?.[angle as 'toe']).toBeCloseTo(value, 9);
      }
    }
  });
  expect(tried).toBeGreaterThan(2);
}

const onceOf = ({ kind }: Suspension): readonly string[] => suspensionKinds[kind]?.rigidAxle?.once ?? [];
const isKnuckled = ({ kind }: Suspension): boolean => suspensionKinds[kind]?.rigidAxle?.knuckles !== undefined;
const isOnce = ({ suspension, one }: Omit<Case, 'random'>): boolean =>
  [one.at, ...(one.links ?? [])].some((name) => onceOf(suspension).includes(name));
/** The same positions at every corner that has the adjuster. */
const whereFitted = (given: Case, settings: Settings) =>
  isOnce(given) ? { LF: settings, LR: settings } : allCorners(settings);
const flip = ([x, y, z]: Vec3): Vec3 => [x, -y, z];

/** The same car in a mirror: a corner's numbers stay, those of what an axle has once are turned round. */
function mirrored({ suspension, one }: Case): Omit<Case, 'random'> {
  const { points } = suspension;
  const turned = Object.fromEntries(
    onceOf(suspension).flatMap((name) => (points[name] ? [[name, flip(points[name])]] : [])),
  );
  const other = {
    ...one,
    ...(one.direction && { direction: flip(one.direction) }),
    ...(one.kind === 'indexed-cam' && {
      positions: one.positions.map((at: { offset: Vec3 }) => ({ ...at, offset: flip(at.offset) })),
    }),
  };
  return {
    suspension: { ...suspension, points: { ...points, ...turned } },
    one: isOnce({ suspension, one }) ? other : one,
  };
}

const carOf = (axle: Axle): Car => ({
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: axle,
  rear: { ...axle, steered: false },
});
const allCorners = <T>(settings: T) => Object.fromEntries(CORNERS.map((corner) => [corner, settings]));

/** Whether an adjuster can stand half way between two of its positions: numbers, or angles of a disc such as `0.5@90`. */
function isBetween(one: Adjuster, a: Position, b: Position | undefined): boolean {
  const [disc, from] = String(a).includes('@') ? String(a).split('@') : [undefined, a];
  const [other, to] = String(b).includes('@') ? String(b).split('@') : [undefined, b];
  const half = (Number(from) + Number(to)) / 2;
  if (b === undefined || disc !== other || Number.isNaN(half) || (typeof a === 'string' && !disc)) return false;
  return adjusterKinds[one.kind]?.accepts(one, disc ? `${disc}@${half}` : half) ?? false;
}

const TINY = 1e-5;
/** A position beside this one that the adjuster can take; none where nothing lies between its positions. */
function nudged(one: Adjuster, position: Position): Position | undefined {
  const wedge = /^([\d.]+)@([\d.]+)$/.exec(String(position));
  const beside = [TINY, -TINY].map((by) => {
    if (wedge) return `${wedge[1]}@${(Number(wedge[2]) + by).toFixed(5)}`;
    return typeof position === 'number' ? position + by : position;
  });
  return beside.find((near) => near !== position && adjusterKinds[one.kind]?.accepts(one, near));
}

/** mm from a point to the line through two others. */
function fromLine(p: Vec3, a: Vec3, b: Vec3): number {
  const [dx, dy, dz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [x, y, z] = [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  return Math.hypot(dy * z - dz * y, dz * x - dx * z, dx * y - dy * x) / Math.hypot(dx, dy, dz);
}
