/** Families of invented cars, as they would be entered: nominal points that each car scatters, and their adjusters. */
import type { Adjuster, Car, Corner, Suspension, Vec3 } from '../../../core/contract.ts';

export interface Family {
  readonly name: string;
  readonly corners: readonly [Corner, Corner];
  readonly suspension: Suspension;
  /** The first leans on caster most, the second on camber; the third is the rod. */
  readonly adjusters: readonly [Adjuster, Adjuster, Adjuster];
  /** Aims, degrees; no caster where the kind has none. */
  readonly aim: { readonly camber: number; readonly caster?: number; readonly toe: number };
}

const pack = (id: string, at: string): Adjuster => ({
  id,
  name: id,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0],
  sizes: [0.75],
  max: 12,
  reference: 6,
});
const plate = (id: string, direction: Vec3): Adjuster => ({
  id,
  name: id,
  kind: 'slide',
  at: 'strutTop',
  direction,
  step: 2,
  range: [-24, 24],
  reference: 0,
});
const cam = (id: string, at: string): Adjuster => ({
  id,
  name: id,
  kind: 'eccentric-cam',
  at,
  direction: [0, 1, 0],
  eccentricity: 8,
  marks: 24,
  range: [-90, 90],
  zero: 'middle',
  reference: 0,
});
const rod = (link: string): Adjuster => ({
  id: 'rod',
  name: 'rod',
  kind: 'threaded-rod',
  links: [link],
  lead: 1.5,
  stepTurns: 1 / 12,
  range: [-8, 8],
  reference: 0,
});

export const FAMILIES: readonly Family[] = [
  {
    name: 'double wishbone, two shim packs, tie rod',
    corners: ['LF', 'RF'],
    suspension: {
      kind: 'double-wishbone',
      camber: -0.5,
      toe: 0.05,
      points: {
        upperFront: [125, 420, 432],
        upperRear: [-125, 428, 421],
        upperBall: [-12, 652, 436],
        lowerFront: [172, 332, 206],
        lowerRear: [-168, 336, 201],
        lowerBall: [9, 706, 188],
        tieInner: [-138, 352, 238],
        tieOuter: [-146, 694, 231],
        wheelCentre: [0, 760, 312],
      },
    },
    adjusters: [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('tieInner')],
    aim: { camber: -0.5, caster: 3.5, toe: 0.05 },
  },
  {
    name: 'strut, top plate both ways, tie rod',
    corners: ['LF', 'RF'],
    suspension: {
      kind: 'strut',
      camber: -0.8,
      toe: 0.05,
      points: {
        strutTop: [-32, 566, 872],
        strutLower: [-4, 634, 430],
        lowerFront: [196, 352, 204],
        lowerRear: [-152, 344, 200],
        lowerBall: [8, 702, 190],
        tieInner: [-142, 352, 252],
        tieOuter: [-140, 684, 244],
        wheelCentre: [0, 762, 312],
      },
    },
    adjusters: [plate('fore-aft', [-1, 0, 0]), plate('in-out', [0, 1, 0]), rod('tieInner')],
    aim: { camber: -0.8, caster: 5, toe: 0.05 },
  },
  {
    name: 'five links, two eccentrics, toe rod',
    corners: ['LR', 'RR'],
    suspension: {
      kind: 'five-link',
      camber: -1,
      toe: 0.1,
      points: {
        inner1: [-2480, 380, 430],
        outer1: [-2490, 690, 440],
        inner2: [-2650, 400, 415],
        outer2: [-2520, 690, 435],
        inner3: [-2300, 420, 250],
        outer3: [-2460, 720, 215],
        inner4: [-2620, 360, 220],
        outer4: [-2530, 715, 210],
        inner5: [-2680, 390, 290],
        outer5: [-2640, 700, 285],
        wheelCentre: [-2500, 780, 312],
      },
    },
    adjusters: [cam('upper', 'inner1'), cam('lower', 'inner4'), rod('inner5')],
    aim: { camber: -1, toe: 0.1 },
  },
];

const [wishbone, , links] = FAMILIES as readonly [Family, Family, Family];

/** Those that are played with learning: the same, and two on cams, of which one has no rod. */
export const LEARNERS: readonly Family[] = [
  ...FAMILIES,
  {
    ...wishbone,
    name: 'double wishbone, two eccentrics on the lower arm, tie rod',
    adjusters: [cam('front', 'lowerFront'), cam('rear', 'lowerRear'), rod('tieInner')],
  },
  {
    ...links,
    name: 'five links, two eccentrics, no rod',
    // The second one sets toe, and there is no third.
    adjusters: [cam('upper', 'inner1'), cam('toe', 'inner5')] as unknown as Family['adjusters'],
  },
];

/** A whole car of which one axle is the family's, each side with the points that were entered for it. */
export function carOf(family: Family, left: Suspension, right: Suspension): Car {
  const own = { suspension: left, rightSuspension: right, adjusters: family.adjusters };
  const other = {
    suspension: { kind: 'beam-rear', camber: 0, toe: 0, points: { wheelCentre: [0, 700, 300] as const } },
    adjusters: [],
  };
  const front = family.corners[0] === 'LF';
  return {
    id: 'simulated',
    label: family.name,
    wheel: { rimDiameter: 420 },
    front: { ...(front ? own : other), steered: true },
    rear: { ...(front ? other : own), steered: false },
  };
}
