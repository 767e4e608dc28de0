/**
 * A rigid axle on four links: against plain trigonometry where the links are parallel, and against a general-purpose
 * least-squares library where they are not.
 */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Axle, Suspension, Vec3 } from '../../core/contract.ts';
import { type AxlePose, adjusterEffects, axleEffects, solveAxle, solveCorner } from '../../core/index.ts';
import { generalAxle, type SideDisturbance } from '../tools/general-axle.ts';
import { between, LAYOUTS, oneOf, type Random, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { anyDirection } from '../tools/samples.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

function posed(...[axle, settings]: Parameters<typeof solveAxle>): AxlePose {
  const pose = solveAxle(axle, settings);
  if (!pose.reachable) throw new Error(pose.message);
  return pose;
}

/** Half the distance between the links of the two sides, and the height of the upper ones above the lower ones, mm. */
const [HALF, RISE] = [440, 200];
/** Level links along the car, above and below the axle; a level rod square to it. */
const parallel: Suspension = {
  kind: 'beam-linked',
  points: {
    lowerBody: [-2050, HALF, 230],
    lowerAxle: [-2600, HALF, 230],
    upperBody: [-2100, HALF, 230 + RISE],
    upperAxle: [-2600, HALF, 230 + RISE],
    rodBody: [-2600, -430, 330],
    rodAxle: [-2600, 450, 330],
    wheelCentre: [-2600, 780, 330],
  },
  camber: -0.4,
  toe: 0.1,
};
const thread = (id: string, ...links: string[]): Adjuster => ({ ...rod(id, links[0] as string, 8), links, lead: 1 });
const square: Axle = {
  suspension: parallel,
  adjusters: [
    thread('lower', 'lowerBody'),
    thread('upper', 'upperBody'),
    thread('both', 'lowerBody', 'upperBody'),
    thread('rod', 'rodBody'),
  ],
  steered: false,
};

describe('parallel links', () => {
  it.each([-6, -2, 1.5, 6])('both left links %f mm longer: the axle turns by asin(d / distance of the sides)', (d) => {
    const pose = posed(square, { left: { both: d } });
    // The left wheel goes back: the axle points to the left.
    const turned = degrees(Math.asin(d / (2 * HALF)));
    expect(pose.thrustAngle).toBeCloseTo(-turned, 5);
    expect(pose.left.toe).toBeCloseTo(0.1 - turned, 5);
    expect(pose.right.toe).toBeCloseTo(0.1 + turned, 5);
    expect(pose.pinionAngle).toBeCloseTo(0, 4);
    expect(pose.strain).toBeLessThan(1e-3);
    expect(posed(square, { right: { both: d } }).thrustAngle).toBeCloseTo(turned, 5);
  });

  it.each([-6, -1, 3, 6])('both upper links %f mm longer: the nose goes up by asin(d / height between them)', (d) => {
    const pose = posed(square, { left: { upper: d }, right: { upper: d } });
    expect(pose.pinionAngle).toBeCloseTo(degrees(Math.asin(d / RISE)), 3);
    expect(posed(square, { left: { lower: d }, right: { lower: d } }).pinionAngle).toBeCloseTo(-pose.pinionAngle, 3);
    expect(pose.thrustAngle).toBeCloseTo(0, 6);
  });

  it('all links as much longer push the axle back, square and upright', () => {
    const pose = posed(square, { left: { both: 5 }, right: { both: 5 } });
    expect(pose.left.wheelCentre?.[0]).toBeCloseTo(-2605, 4);
    expect(pose.right.wheelCentre?.[0]).toBeCloseTo(-2605, 4);
    expect([pose.thrustAngle, pose.pinionAngle]).toEqual([expect.closeTo(0, 5), expect.closeTo(0, 5)]);
  });

  it('the rod as much longer pushes the axle aside as it grows, towards the side where it holds the axle', () => {
    const pose = posed(square, { left: { rod: 4 } });
    expect(pose.lateral).toBeCloseTo(4, 3);
    expect(pose.left.wheelCentre?.[1]).toBeCloseTo(784, 3);
    expect(pose.right.wheelCentre?.[1]).toBeCloseTo(776, 3);
    expect(pose.thrustAngle).toBeCloseTo(0, 4);
  });

  it('one link alone: four springs share it, a quarter each, and the axle takes the mean of the sides', () => {
    const d = 2;
    const pose = posed(square, { left: { upper: d } });
    expect(pose.strain).toBeCloseTo(d / 4, 3);
    expect(pose.thrustAngle).toBeCloseTo(-degrees(d / 2 / (2 * HALF)), 3);
    expect(pose.pinionAngle).toBeCloseTo(degrees(d / 2 / RISE), 2);
  });

  it('solveCorner moves one side alone; the effects tell of both wheels', () => {
    const alone = solveCorner(parallel, square.adjusters, { both: 3 });
    const pose = posed(square, { left: { both: 3 } });
    expect(alone).toMatchObject({ camber: pose.left.camber, toe: pose.left.toe });
    const effect = adjusterEffects(parallel, square.adjusters).find(({ adjuster }) => adjuster === 'both');
    const turned = degrees(Math.asin(1 / (2 * HALF)));
    expect(effect?.toe).toBeCloseTo(-turned, 6);
    expect(effect?.otherWheel?.toe).toBeCloseTo(turned, 6);
  });

  it('a right side of its own: each step does what the whole axle does, and is not taken for a mirror', () => {
    const { rodAxle: _, rodBody: __, ...own } = parallel.points;
    const nearer = Object.entries(own).map(([name, [x, y, z]]): [string, Vec3] => [
      name,
      name.startsWith('lower') ? [x, y - 60, z + 12] : [x, y, z],
    ]);
    const axle = { ...square, rightSuspension: { ...parallel, points: Object.fromEntries(nearer) } };
    const effects = axleEffects(axle);
    for (const side of ['left', 'right'] as const) {
      const other = side === 'left' ? 'right' : 'left';
      for (const { adjuster, camber, toe, otherWheel } of effects[side]) {
        const one = { [side]: { [adjuster]: 1 } };
        const [before, after] = [posed(axle, {}), posed(axle, one)];
        expect(camber).toBeCloseTo(after[side].camber - before[side].camber, 9);
        expect(toe).toBeCloseTo(after[side].toe - before[side].toe, 9);
        expect(otherWheel?.toe).toBeCloseTo(after[other].toe - before[other].toe, 9);
      }
    }
    expect(effects.right.some(({ adjuster }) => adjuster === 'rod')).toBe(false);
    const lower = (side: 'left' | 'right') => effects[side].find(({ adjuster }) => adjuster === 'lower')?.toe ?? 0;
    expect(Math.abs(lower('left') - lower('right'))).toBeGreaterThan(1e-4);
  });

  it('one wheel bumped alone rolls the axle: camber by the roll on both sides', () => {
    const pose = solveCorner(parallel, [], {}, { travel: 20 });
    if (!pose.reachable) throw new Error(pose.message);
    expect(pose.wheelCentre?.[2]).toBeCloseTo(350, 4);
    expect(pose.camber).toBeCloseTo(parallel.camber - degrees(Math.asin(20 / 1560)), 2);
  });
});

const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);
const WITHIN = 1e-4; // degrees, and mm

/** A side with rods and plates at random positions, in both tongues. */
function disturb(random: Random, suspension: Suspension, names: readonly string[]) {
  const settings: Record<string, number> = {};
  const adjusters: Adjuster[] = [];
  const moved: Record<string, Vec3> = {};
  const longer: Record<string, number> = {};
  for (const name of names) {
    if (name.endsWith('Body')) {
      adjusters.push({ ...rod(`rod-${name}`, name, 4), lead: 1.5 });
    }
    const direction = anyDirection(random);
    const own = { at: name, direction, step: 1, range: [-4, 4], reference: 0 };
    adjusters.push({ id: `at-${name}`, kind: 'slide', ...own });
  }
  const at = (): { settings: Record<string, number>; general: SideDisturbance } => {
    const own: Record<string, number> = {};
    const general = { moved: { ...moved }, longer: { ...longer } };
    for (const one of adjusters) {
      const position = between(random, -2, 2);
      own[one.id] = position;
      if (one.kind === 'slide') general.moved[one.at] = one.direction.map((x: number) => x * position);
      else general.longer[one.links[0]] = position * one.lead;
    }
    return { settings: { ...settings, ...own }, general };
  };
  return { adjusters, at, suspension };
}

const ROD = ['rodBody', 'rodAxle'];
const LINKS = ['lowerBody', 'lowerAxle', 'upperBody', 'upperAxle'];

function withRod(random: Random, wanted: boolean): Suspension {
  const given = randomSuspension(random, 'beam-linked');
  const points = Object.fromEntries(Object.entries(given.points).filter(([name]) => !ROD.includes(name)));
  const own = Object.fromEntries(ROD.map((name) => [name, LAYOUTS['beam-linked']?.[name]]));
  return { ...given, points: wanted ? { ...points, ...(own as Record<string, Vec3>) } : points };
}

describe.each([
  ['with a rod', true],
  ['without one', false],
] as const)('60 random geometries %s', (_, wanted) => {
  it.each(SEEDS)('seed %i: ml-levenberg-marquardt agrees', (seed) => {
    const random = stream(seed * 131 + (wanted ? 1 : 0));
    const suspension = withRod(random, wanted);
    const rightSuspension = oneOf(random, [undefined, withRod(random, false)]);
    const links = disturb(random, suspension, LINKS);
    const once = disturb(random, suspension, wanted ? ROD : []);
    const [l, r, o] = [links.at(), links.at(), once.at()];
    const axle: Axle = {
      suspension,
      ...(rightSuspension && { rightSuspension }),
      adjusters: [...links.adjusters, ...once.adjusters],
      steered: false,
    };
    const pose = posed(axle, { left: { ...l.settings, ...o.settings }, right: r.settings });
    const theirs = generalAxle(
      suspension,
      rightSuspension ?? suspension,
      {
        moved: { ...l.general.moved, ...o.general.moved },
        longer: { ...l.general.longer, ...o.general.longer },
      },
      r.general,
    );
    if (!wanted) expect(theirs.strain, 'the library did not converge').toBeLessThan(1e-7);
    for (const side of ['left', 'right'] as const) {
      expect(Math.abs(pose[side].camber - theirs[side].camber)).toBeLessThan(WITHIN);
      expect(Math.abs(pose[side].toe - theirs[side].toe)).toBeLessThan(WITHIN);
    }
    expect(Math.abs(pose.thrustAngle - (theirs.left.toe - theirs.right.toe) / 2)).toBeLessThan(WITHIN);
    expect(Math.abs(pose.pinionAngle - theirs.pinionAngle)).toBeLessThan(WITHIN);
    expect(Math.abs(pose.lateral - theirs.lateral)).toBeLessThan(WITHIN);
    expect(Math.abs(pose.strain - theirs.strain)).toBeLessThan(WITHIN);
    expect(pose.left.wheelCentre?.[2]).toBeCloseTo(suspension.points.wheelCentre?.[2] ?? NaN, 4);
  });
});
