/**
 * The kinematics against two general-purpose libraries from the registry that know nothing of suspensions:
 * ml-levenberg-marquardt (curve fitting) on the same lengths, and rapier3d (a physics engine) with rods as joints.
 */
import RAPIER from '@dimforge/rapier3d-compat';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Adjuster, Suspension, Vec3 } from '../../core/contract.ts';
import { solveCorner } from '../../core/index.ts';
import { anglesOf, type Disturbance, generalPose } from '../tools/general-pose.ts';
import { between, oneOf, type Random, randomSuspension, stream } from '../tools/random-cars.ts';
import { anyDirection } from '../tools/samples.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

const WITHIN = 1e-4; // degrees
const SEEDS = upTo(60);

interface Position {
  readonly adjusters: Adjuster[];
  readonly settings: Record<string, number>;
  /** The same in the library's tongue. */
  readonly general: Disturbance;
}

/** Collects adjusters at random positions, in both tongues. */
class Disturbing {
  readonly adjusters: Adjuster[] = [];
  readonly settings: Record<string, number> = {};
  readonly moved: Record<string, Vec3> = {};
  readonly longer: Record<string, number> = {};

  constructor(
    readonly random: Random,
    readonly suspension: Suspension,
  ) {}

  /** A plate or pack that has moved a point by up to `most` mm from where it stood. */
  move(kind: 'shim-pack' | 'slide', at: string, direction: Vec3, most: number): void {
    const by = between(this.random, -most, most);
    const point = this.suspension.points[at] as Vec3;
    this.moved[at] = point.map((x, i) => x + by * (direction[i] as number)) as unknown as Vec3;
    const id = `at-${at}`;
    const pack = kind === 'shim-pack';
    this.settings[id] = pack ? most + by : by;
    const own = pack ? { sizes: [1], max: 2 * most, reference: most } : { step: 1, range: [-most, most], reference: 0 };
    this.adjusters.push({ id, kind, at, direction, ...own });
  }

  turn(link: string): void {
    const turns = between(this.random, -2, 2);
    this.longer[link] = turns * 1.5;
    this.settings[`rod-${link}`] = turns;
    const thread = { lead: 1.5, stepTurns: 0.25, range: [-3, 3], reference: 0 };
    this.adjusters.push({ id: `rod-${link}`, kind: 'threaded-rod', links: [link], ...thread });
  }

  position(more: Disturbance = {}): Position {
    const { adjusters, settings, moved, longer } = this;
    return { adjusters, settings, general: { moved, longer, ...more } };
  }
}

function flatDirection(random: Random): Vec3 {
  const angle = between(random, -0.3, 0.3);
  return [Math.sin(angle), Math.cos(angle), 0];
}

const DISTURB: Readonly<Record<string, (at: Disturbing) => Position>> = {
  'double-wishbone': (at) => twoPacks(at, ['upperFront', 'upperRear'], ['lowerFront', 'lowerRear'], 'tieInner'),
  'five-link': (at) => twoPacks(at, ['inner1', 'inner2'], ['inner3', 'inner4'], 'inner5'),
  strut: (at) => {
    const { random } = at;
    at.move('slide', 'strutTop', anyDirection(random), 10);
    at.move('shim-pack', oneOf(random, ['lowerFront', 'lowerRear']), flatDirection(random), 6);
    at.turn('tieInner');
    // A cam bolt in one of the two holes, or the tilt itself; from a reference that is not always zero.
    const reference = oneOf(random, [0, 0.5, -0.75]);
    const tilt = between(random, -2, 2);
    at.settings.clamp = reference + tilt;
    at.adjusters.push({ id: 'clamp', kind: 'clamp-bolt', step: 0.25, range: [-4, 4], reference });
    const cam = between(random, -90, 90);
    at.settings.cam = cam;
    at.adjusters.push({
      id: 'cam',
      kind: 'clamp-bolt',
      step: 15,
      range: [-90, 90],
      reference: 0,
      eccentricity: 1.5,
      spacing: 60,
    });
    const byCam = (Math.asin((1.5 * Math.sin((cam * Math.PI) / 180)) / 60) * 180) / Math.PI;
    return at.position({ tilt: tilt + byCam, travel: between(random, -25, 25) });
  },
  'trailing-arm': (at) => {
    at.move('shim-pack', 'pivotInner', anyDirection(at.random), 8);
    at.move('slide', 'pivotOuter', anyDirection(at.random), 12);
    return at.position({ travel: between(at.random, -40, 40) });
  },
  'beam-front': (at) => {
    at.move('slide', 'upperBall', flatDirection(at.random), 5);
    at.move('shim-pack', 'lowerBall', anyDirection(at.random), 3);
    at.turn('tieInner');
    return at.position();
  },
};

function twoPacks(at: Disturbing, ends: string[], others: string[], link: string): Position {
  for (const name of [oneOf(at.random, ends), oneOf(at.random, others)]) {
    at.move('shim-pack', name, flatDirection(at.random), 6);
  }
  at.turn(link);
  return at.position({ travel: between(at.random, -25, 25) });
}

function disturb(random: Random, suspension: Suspension): Position {
  return (DISTURB[suspension.kind] as (at: Disturbing) => Position)(new Disturbing(random, suspension));
}

function ours(suspension: Suspension, { adjusters, settings, general }: Position) {
  const pose = solveCorner(suspension, adjusters, settings, { travel: general.travel ?? 0 });
  if (!pose.reachable) throw new Error(pose.message);
  return pose;
}

for (const kind of Object.keys(DISTURB)) {
  describe(`${kind}, ${SEEDS.length} random geometries and positions`, () => {
    it.each(SEEDS)('seed %i: ml-levenberg-marquardt agrees', (seed) => {
      const random = stream(seed);
      const suspension = randomSuspension(random, kind);
      const position = disturb(random, suspension);
      const pose = ours(suspension, position);
      const theirs = generalPose(suspension, position.general);
      expect(theirs.residual, 'the library did not converge').toBeLessThan(1e-7);
      expect(Math.abs(pose.camber - theirs.camber)).toBeLessThan(WITHIN);
      expect(Math.abs(pose.toe - theirs.toe)).toBeLessThan(WITHIN);
      expect(Object.keys(theirs).includes('caster')).toBe(pose.caster !== undefined);
      if (theirs.caster === undefined) return;
      expect(Math.abs((pose.caster ?? NaN) - theirs.caster)).toBeLessThan(WITHIN);
      expect(Math.abs((pose.sai ?? NaN) - (theirs.sai ?? NaN))).toBeLessThan(WITHIN);
    });
  });
}

describe('a physics engine, rods as rigid bodies on ball joints', () => {
  beforeAll(() => RAPIER.init());

  it.each(shortOrLong([...upTo(10), 18, 21], upTo(50)))('seed %i: rapier3d agrees', (seed) => {
    const random = stream(seed);
    const kind = seed % 2 ? 'double-wishbone' : 'five-link';
    const suspension = randomSuspension(random, kind);
    const position = disturb(random, suspension);
    const pose = ours(suspension, position);
    const theirs = physicsPose(suspension, position.general);
    expect(Math.abs(pose.camber - theirs.camber)).toBeLessThan(0.02);
    expect(Math.abs(pose.toe - theirs.toe)).toBeLessThan(0.02);
  });
});

const METRE = 0.01; // the engine likes bodies of about its unit: 100 mm are 1
const STEPS = 400;

/** The upright and its links dropped into a world of ball joints, a slider for the height, and let settle. */
function physicsPose(suspension: Suspension, { moved = {}, longer = {}, travel = 0 }: Disturbance) {
  const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
  world.timestep = 1 / 60;
  world.integrationParameters.numSolverIterations = 50;
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const centre = point('wheelCentre');
  const xyz = (v: Vec3, k = METRE) => ({ x: v[0] * k, y: v[1] * k, z: v[2] * k });
  const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  const ground = world.createRigidBody(RAPIER.RigidBodyDesc.fixed());
  const body = (at: Vec3) =>
    world.createRigidBody(
      RAPIER.RigidBodyDesc.dynamic()
        .setTranslation(at[0] * METRE, at[1] * METRE, at[2] * METRE)
        .setAdditionalMassProperties(1, { x: 0, y: 0, z: 0 }, { x: 1, y: 1, z: 1 }, { x: 0, y: 0, z: 0, w: 1 })
        .setLinearDamping(4)
        .setAngularDamping(4)
        .setCanSleep(false),
    );
  const upright = body(centre);
  const pairs =
    suspension.kind === 'double-wishbone'
      ? ([
          'upperFront:upperBall',
          'upperRear:upperBall',
          'lowerFront:lowerBall',
          'lowerRear:lowerBall',
          'tieInner:tieOuter',
        ] as const)
      : ([1, 2, 3, 4, 5].map((n) => `inner${n}:outer${n}`) as string[]);
  for (const pair of pairs) {
    const [inner, outer] = pair.split(':') as [string, string];
    const from = point(inner);
    const to = point(outer);
    const length = Math.hypot(...minus(to, from));
    const grown = 1 + (longer[inner] ?? 0) / length;
    const middle: Vec3 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
    const link = body(middle);
    const inwards = minus(from, middle).map((x) => x * grown) as unknown as Vec3;
    const outwards = minus(to, middle).map((x) => x * grown) as unknown as Vec3;
    world.createImpulseJoint(RAPIER.JointData.spherical(xyz(moved[inner] ?? from), xyz(inwards)), ground, link, true);
    world.createImpulseJoint(RAPIER.JointData.spherical(xyz(minus(to, centre)), xyz(outwards)), upright, link, true);
  }
  // Height: the wheel centre on a plate that slides in the plane z = centre + travel.
  const plane: Vec3 = [centre[0], centre[1], centre[2] + travel];
  const free = RAPIER.JointAxesMask.LinZ;
  world.createImpulseJoint(
    RAPIER.JointData.generic(xyz(plane), { x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, free),
    ground,
    upright,
    true,
  );
  for (let i = 0; i < STEPS; i++) world.step();
  const q = upright.rotation();
  const turn = (v: Vec3): Vec3 => {
    const u: Vec3 = [q.x, q.y, q.z];
    const cross = (a: Vec3, b: Vec3): Vec3 => [
      a[1] * b[2] - a[2] * b[1],
      a[2] * b[0] - a[0] * b[2],
      a[0] * b[1] - a[1] * b[0],
    ];
    const t = cross(u, v).map((x) => 2 * x) as unknown as Vec3;
    const w = cross(u, t);
    return [v[0] + q.w * t[0] + w[0], v[1] + q.w * t[1] + w[1], v[2] + q.w * t[2] + w[2]];
  };
  const at = upright.translation();
  const angles = anglesOf(suspension, turn, (name) => {
    const arm = turn(minus(point(name), centre));
    return [at.x / METRE + arm[0], at.y / METRE + arm[1], at.z / METRE + arm[2]];
  });
  world.free();
  return angles;
}
