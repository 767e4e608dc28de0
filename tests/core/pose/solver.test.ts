/**
 * Which of the poses that satisfy the links is the one, and when there is none. References: the two crossings of circles,
 * where a knuckle on an upright kingpin is held by its tie rod; a least-squares library, where links are strained.
 */
import { describe, expect, it } from 'vitest';
import type { Axle, Suspension, Vec3 } from '../../../core/contract.ts';
import { solveAxle, solveCorner } from '../../../core/index.ts';
import { generalAxle } from '../../tools/general-axle.ts';
import { between, LAYOUTS, rod, stream } from '../../tools/random-cars.ts';

type Point = readonly [x: number, y: number];
const KINGPIN: Point = [0, 660];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
const long = (a: Point): number => Math.hypot(...a);

interface Knuckle {
  /** Length of the steering arm, and of the tie rod, mm. */
  readonly arm: number;
  readonly rod: number;
  /** Inner end of the tie rod. */
  readonly inner: Point;
  /** On which side of the line from the kingpin to the inner end the arm stands. */
  readonly side: 1 | -1;
}

/** Where the outer end of the tie rod is with the inner one pushed outboard; nothing where the circles do not meet. */
function outerEnd({ arm, rod, inner, side }: Knuckle, push = 0): Point | undefined {
  const to = minus([inner[0], inner[1] + push], KINGPIN);
  const apart = long(to);
  const along = (arm ** 2 - rod ** 2 + apart ** 2) / (2 * apart);
  const square = arm ** 2 - along ** 2;
  if (square < 0) return undefined;
  const across = side * Math.sqrt(square);
  const [x, y] = [to[0] / apart, to[1] / apart];
  return [KINGPIN[0] + along * x + across * y, KINGPIN[1] + along * y - across * x];
}

/** All of it at one height, on a rigid front axle. */
function suspensionOf(knuckle: Knuckle): Suspension {
  const at = (point: Point | undefined, z: number): Vec3 => {
    if (!point) throw new Error('the tie rod does not reach');
    return [...point, z];
  };
  const points = {
    ...{ upperBall: at(KINGPIN, 420), lowerBall: at(KINGPIN, 255), wheelCentre: [0, 780, 340] as const },
    ...{ tieInner: at(knuckle.inner, 295), tieOuter: at(outerEnd(knuckle), 295) },
  };
  return { kind: 'beam-front', points, camber: 0, toe: 0 };
}

/** mm from where the circles cross to where the outer end is said to be; nothing where there is said to be no pose. */
function missed(knuckle: Knuckle, suspension: Suspension, push: number): number | undefined {
  const pose = solveCorner(suspension, [], {}, { rack: push });
  if (!pose.reachable) return undefined;
  const [x = NaN, y = NaN, z = NaN] = pose.points.tieOuter ?? [];
  expect(z).toBeCloseTo(295, 6);
  return long(minus([x, y], outerEnd(knuckle, push) ?? [NaN, NaN]));
}

const KNUCKLES: readonly Knuckle[] = [
  { arm: 151, rod: 550, inner: [-150, 90], side: 1 },
  { arm: 151, rod: 550, inner: [150, 90], side: -1 },
  { arm: 120, rod: 400, inner: [-90, 260], side: 1 },
];

describe('a knuckle whose tie rod pushes it round', () => {
  it.each(KNUCKLES)('$arm mm of arm, $rod mm of rod: stays the way round that it is put together', (knuckle) => {
    const suspension = suspensionOf(knuckle);
    let pushed = 0;
    for (const way of [1, -1]) {
      // To where rod and arm are in line, mm by mm: there the two ways of putting it together meet.
      for (let push = way; outerEnd(knuckle, push); push += way) {
        pushed++;
        expect(missed(knuckle, suspension, push), `pushed by ${push} mm`).toBeLessThan(1e-5);
      }
    }
    expect(pushed).toBeGreaterThan(200);
  });

  it.each(KNUCKLES)('$arm mm of arm, $rod mm of rod: a push beyond where they are in line has no pose', (knuckle) => {
    const suspension = suspensionOf(knuckle);
    for (const way of [1, -1]) {
      let end = 0;
      while (outerEnd(knuckle, end)) end += way;
      for (const beyond of [0, 1, 10, 50]) {
        const pose = solveCorner(suspension, [], {}, { rack: end + way * beyond });
        expect(pose).toMatchObject({ reachable: false, verdict: { converged: false, reason: 'cannot-reach' } });
      }
    }
  });

  it('is followed past a place where rod and arm come within a hundredth of a millimetre of being in line', () => {
    // The inner end passes the kingpin at 150 mm; at 149.99 mm the rod would lie along the arm.
    const knuckle: Knuckle = { arm: 150, rod: 150 + 149.99, inner: [-150, 460], side: -1 };
    const suspension = suspensionOf(knuckle);
    for (let push = 210; push <= 600; push += 10) {
      expect(missed(knuckle, suspension, push), `pushed by ${push} mm`).toBeLessThan(1e-5);
    }
  });
});

describe('a rigid axle whose links do not agree', () => {
  const { rodBody, rodAxle, ...points } = LAYOUTS['beam-linked'] as Record<string, Vec3>;
  const left: Suspension = {
    ...{ kind: 'beam-linked', camber: 0, toe: 0 },
    points: { ...points, rodBody: rodBody as Vec3, rodAxle: rodAxle as Vec3 },
  };
  const threads = [rod('lower', 'lowerBody', 60), rod('upper', 'upperBody', 60)];
  const axle: Axle = { suspension: left, adjusters: threads, steered: false };

  it('has a pose as long as no bush has to take up more than 10 mm', () => {
    const random = stream(31);
    const seen = { held: 0, torn: 0 };
    for (let i = 0; i < 150; i++) {
      const [l, r] = [0, 1].map(() => ({ lower: between(random, -16, 16), upper: between(random, -16, 16) }));
      const [onLeft, onRight] = [l, r].map((own) => ({
        longer: { lowerBody: 1.5 * (own?.lower ?? 0), upperBody: 1.5 * (own?.upper ?? 0) },
      }));
      const { strain } = generalAxle(left, left, onLeft ?? {}, onRight ?? {});
      const pose = solveAxle(axle, { left: l ?? {}, right: r ?? {} });
      expect(pose.reachable, `${strain} mm`).toBe(strain < 10);
      if (strain > 8 && strain < 10) seen.held++;
      if (strain > 10 && strain < 12) seen.torn++;
    }
    expect(Math.min(seen.held, seen.torn)).toBeGreaterThan(3);
  });
});
