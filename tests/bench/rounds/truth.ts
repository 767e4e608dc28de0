/**
 * The car as it really is: hard points that differ from those entered, angles that are off, and a gauge that does not
 * repeat. Poses come from ml-levenberg-marquardt on residuals of tests/tools/general-pose.ts, offsets of the adjusters
 * are worked out here: nothing is shared with the planner but the shapes of its files.
 */
import type { Adjuster, Move, Settings, Suspension, Vec3, WheelReading } from '../../../core/contract.ts';
import { generalPose } from '../../tools/general-pose.ts';
import { between, type Random } from '../../tools/random-cars.ts';
import type { Family } from './families.ts';

/** One standard deviation, degrees, of the gauge and of how far off a car comes in. */
export const GAUGE = { camber: 0.03, caster: 0.08, toe: 0.015 } as const;
const FOUND = { camber: 0.8, caster: 0.8, toe: 0.5 } as const;
/** The most that a taped coordinate is off, mm. */
const TAPE = 5;
/** How exactly a move is made: one standard deviation in the adjuster's unit (mm, degrees, turns). Trade practice. */
const MADE: Readonly<Record<string, number>> = {
  'shim-pack': 0.05,
  slide: 0.25,
  'eccentric-cam': 1,
  'threaded-rod': 0.025,
};

export interface Wheel {
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
}

export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** The same points with every coordinate off by up to `by` mm. */
export function scattered(suspension: Suspension, random: Random, by: number): Suspension {
  const points = Object.entries(suspension.points).map(([name, point]) => [
    name,
    point.map((x) => x + between(random, -by, by)) as unknown as Vec3,
  ]);
  return { ...suspension, points: Object.fromEntries(points) };
}

/** mm that the adjuster's point moves along its direction, or its rod grows, at a position. */
function travel(adjuster: Adjuster, position: number): number {
  if (adjuster.kind === 'eccentric-cam') return adjuster.eccentricity * Math.sin((position * Math.PI) / 180);
  return adjuster.kind === 'threaded-rod' ? position * adjuster.lead : position;
}

/** Angles of a corner at these positions, degrees, with the camber and toe of its points at the reference. */
export function poseAt(suspension: Suspension, adjusters: readonly Adjuster[], settings: Settings): Wheel {
  const moved: Record<string, Vec3> = {};
  const longer: Record<string, number> = {};
  for (const adjuster of adjusters) {
    const by =
      travel(adjuster, (settings[adjuster.id] ?? adjuster.reference) as number) -
      travel(adjuster, adjuster.reference as number);
    if (adjuster.kind === 'threaded-rod') {
      longer[adjuster.links[0]] = by;
      continue;
    }
    const from = moved[adjuster.at] ?? (suspension.points[adjuster.at] as Vec3);
    moved[adjuster.at] = from.map((x, i) => x + by * adjuster.direction[i]) as unknown as Vec3;
  }
  const { camber, toe, caster = 0, residual } = generalPose(suspension, { moved, longer });
  if (!(residual < 1e-6)) throw new Error(`the true car has no pose: residual ${residual} mm`);
  return { camber, caster, toe };
}

/** One true corner, its points off what was entered by a tape's tolerance or by what is said: what its rack shows at given positions. */
export class TrueCorner {
  /** Its true hard points. */
  readonly suspension: Suspension;
  private readonly reference: Wheel;
  private readonly found: Wheel;
  private readonly known = new Map<string, Wheel>();
  private readonly asked: Record<string, Settings[string]> = {};
  private readonly stands: Record<string, number> = {};

  constructor(
    private readonly family: Family,
    entered: Suspension,
    private readonly random: Random,
    off = TAPE,
  ) {
    const { aim } = family;
    this.found = {
      camber: aim.camber + FOUND.camber * normal(random),
      caster: (aim.caster ?? 0) + FOUND.caster * normal(random),
      toe: aim.toe + FOUND.toe * normal(random),
    };
    this.suspension = { ...scattered(entered, random, off), camber: this.found.camber, toe: this.found.toe };
    this.reference = poseAt(this.suspension, family.adjusters, {});
  }

  /** Without the gauge. */
  angles(settings: Settings): Wheel {
    const key = JSON.stringify(settings);
    let wheel = this.known.get(key);
    if (!wheel) {
      const pose = poseAt(this.suspension, this.family.adjusters, settings);
      wheel = { camber: pose.camber, toe: pose.toe, caster: this.found.caster + pose.caster - this.reference.caster };
      this.known.set(key, wheel);
    }
    return wheel;
  }

  /**
   * As a hand makes a move: by its mark, or turned until the gauge, off by what it is off just then, shows a value or the
   * travel ends.
   * @returns where it stands as it is read off it
   */
  make({ adjuster: id, to, setBy }: Pick<Move, 'adjuster' | 'to' | 'setBy'>): number {
    const adjuster = this.family.adjusters.find((one) => one.id === id) as Adjuster;
    const made = (): number => (MADE[adjuster.kind] as number) * normal(this.random);
    this.asked[id] = to;
    if (!setBy) {
      this.stands[id] = (to as number) + made();
      return to as number;
    }
    const value = setBy.value - GAUGE[setBy.angle] * normal(this.random);
    const [low, high] = adjuster.range as readonly [number, number];
    const off = (at: number): number => this.angles({ ...this.stands, [id]: at })[setBy.angle] - value;
    // Secants: a hand that watches goes back and forth like that.
    let [a, b] = [to as number, (to as number) + (high - low) / 500];
    let before = off(a);
    for (let i = 0; i < 8 && Math.abs(b - a) > 1e-6; i++) {
      const now = off(b);
      [a, b, before] = [b, Math.min(high, Math.max(low, b - (now * (b - a)) / (now - before))), now];
    }
    this.stands[id] = b;
    const read = Math.min(high, Math.max(low, b + made()));
    this.asked[id] = read;
    return read;
  }

  /** As the rack shows it once the adjusters were set there: what was moved stands where the hand left it. */
  read(settings: Settings): WheelReading {
    for (const adjuster of this.family.adjusters) {
      const asked = (settings[adjuster.id] ?? adjuster.reference) as number;
      if (asked === (this.asked[adjuster.id] ?? adjuster.reference)) continue;
      this.asked[adjuster.id] = asked;
      this.stands[adjuster.id] = asked + (MADE[adjuster.kind] as number) * normal(this.random);
    }
    const { camber, caster, toe } = this.angles(this.stands);
    return {
      camber: camber + GAUGE.camber * normal(this.random),
      ...(this.family.aim.caster === undefined ? {} : { caster: caster + GAUGE.caster * normal(this.random) }),
      toe: toe + GAUGE.toe * normal(this.random),
    };
  }
}
