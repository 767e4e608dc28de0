/** Invented cars with random geometry, seeded: a failing seed is printed and can be run again. */
import type { Adjuster, Axle, Car, Suspension, Vec3 } from '../../core/contract.ts';
import { suspensionKinds } from '../../core/index.ts';
import { starters } from '../../core/starters/catalogue.ts';

/** A seeded stream of numbers in [0, 1): a linear congruential generator (constants of Numerical Recipes, from memory). */
export function stream(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  for (let i = 0; i < 8; i++) next();
  return next;
}

export type Random = () => number;
export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
export const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;

const scattered =
  (random: Random, spread: number) =>
  (point: Vec3): Vec3 =>
    point.map((x) => x + between(random, -spread, spread)) as unknown as Vec3;

const WISHBONE: Readonly<Record<string, Vec3>> = {
  upperFront: [120, 420, 430],
  upperRear: [-130, 430, 420],
  upperBall: [-12, 650, 436],
  lowerFront: [170, 330, 205],
  lowerRear: [-170, 340, 200],
  lowerBall: [9, 705, 188],
  tieInner: [-138, 352, 238],
  tieOuter: [-146, 694, 231],
  wheelCentre: [0, 760, 312],
};
const FIVE: Readonly<Record<string, Vec3>> = {
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
};

const STRUT: Readonly<Record<string, Vec3>> = {
  strutTop: [-32, 545, 850],
  strutLower: [-8, 615, 430],
  lowerFront: [150, 330, 215],
  lowerRear: [-180, 335, 205],
  lowerBall: [8, 700, 195],
  tieInner: [-138, 345, 270],
  tieOuter: [-142, 675, 262],
  wheelCentre: [0, 765, 312],
};
const TRAILING: Readonly<Record<string, Vec3>> = {
  pivotInner: [-2130, 250, 300],
  pivotOuter: [-2080, 560, 290],
  wheelCentre: [-2500, 745, 305],
};
const BEAM_FRONT: Readonly<Record<string, Vec3>> = {
  upperBall: [-8, 660, 420],
  lowerBall: [6, 700, 255],
  tieInner: [-150, 90, 300],
  tieOuter: [-150, 640, 295],
  wheelCentre: [0, 780, 340],
};
/** Upper links that run together towards the axle's middle, so that they hold it sideways where there is no rod. */
const BEAM_LINKED: Readonly<Record<string, Vec3>> = {
  lowerBody: [-2080, 430, 265],
  lowerAxle: [-2600, 560, 245],
  upperBody: [-2170, 430, 425],
  upperAxle: [-2560, 140, 450],
  rodBody: [-2660, -430, 340],
  rodAxle: [-2655, 440, 315],
  wheelCentre: [-2600, 780, 330],
};
/** Middling layouts; each random suspension is one of these or a starter, scattered, half of them without options. */
export const LAYOUTS: Readonly<Record<string, Readonly<Record<string, Vec3>>>> = {
  'double-wishbone': WISHBONE,
  strut: STRUT,
  'five-link': FIVE,
  'trailing-arm': TRAILING,
  'beam-front': BEAM_FRONT,
  'beam-linked': BEAM_LINKED,
  'beam-rear': { wheelCentre: [-2600, 780, 340] },
  unknown: {},
};

const scatter = (random: Random, points: Readonly<Record<string, Vec3>>): Record<string, Vec3> => {
  const move = scattered(random, 25);
  return Object.fromEntries(Object.entries(points).map(([name, point]) => [name, move(point)]));
};

export function randomSuspension(random: Random, kind: string): Suspension {
  const layout = LAYOUTS[kind] ?? starters.find((one) => one.kind === kind)?.points;
  if (!layout) throw new Error(`give ${kind} a starter in core/starters, or a layout here`);
  const points = scatter(random, layout);
  const { optionalPoints = [] } = suspensionKinds[kind] ?? {};
  if (optionalPoints.length > 0 && random() < 0.5) for (const name of optionalPoints) delete points[name];
  return {
    kind,
    points,
    camber: between(random, -2, 1),
    toe: between(random, -0.3, 0.3),
  };
}

const direction = (random: Random): Vec3 => {
  const [x, y, z] = [between(random, -0.2, 0.2), between(random, 0.8, 1.2), between(random, -0.2, 0.2)];
  const length = Math.hypot(x, y, z);
  const sign = random() < 0.5 ? 1 : -1;
  return [(sign * x) / length, (sign * y) / length, (sign * z) / length];
};

export const shims = (random: Random, id: string, at: string, most = 4): Adjuster => ({
  id,
  name: id,
  kind: 'shim-pack',
  at,
  direction: direction(random),
  sizes: [1.5],
  max: 1.5 * most,
  reference: 1.5 * Math.floor(most / 2),
});
export const numbered = (random: Random, id: string, at: string, count = 7): Adjuster => {
  const radius = between(random, 2, 6);
  return {
    id,
    name: id,
    kind: 'indexed-cam',
    at,
    reference: '1',
    positions: Array.from({ length: count }, (_, i) => {
      const turn = (2 * Math.PI * i) / count;
      return { label: String(i + 1), offset: [0, radius * Math.sin(turn), radius * (Math.cos(turn) - 1)] };
    }),
  };
};
export const eccentric = (random: Random, id: string, at: string, marks = 12): Adjuster => ({
  id,
  name: id,
  kind: 'eccentric-cam',
  at,
  direction: direction(random),
  eccentricity: between(random, 2, 6),
  marks,
  zero: oneOf(random, ['middle', 'end'] as const),
  range: [0, 180],
  reference: 360 / marks,
});
export const rod = (id: string, link: string, turns = 1, stepTurns = 1 / 6): Adjuster => ({
  id,
  name: id,
  kind: 'threaded-rod',
  links: [link],
  lead: 1.5,
  stepTurns,
  range: [-turns, turns],
  reference: 0,
});

/** An axle with two leaning adjusters of random kinds and a rod. */
export function randomAxle(random: Random, kind: 'double-wishbone' | 'five-link', steered: boolean, turns = 1): Axle {
  const [first, second, link] =
    kind === 'double-wishbone' ? ['upperFront', 'upperRear', 'tieInner'] : ['inner1', 'inner3', 'inner5'];
  const make = (id: string, at: string): Adjuster =>
    oneOf(random, [() => shims(random, id, at), () => numbered(random, id, at), () => eccentric(random, id, at)])();
  return {
    suspension: randomSuspension(random, kind),
    adjusters: [make('first', first as string), make('second', second as string), rod('rod', link as string, turns)],
    steered,
  };
}

export function randomCar(random: Random, turns = 1): Car {
  const kinds = ['double-wishbone', 'five-link'] as const;
  return {
    id: 'random',
    label: 'Random car',
    wheel: { rimDiameter: 420 },
    front: randomAxle(random, 'double-wishbone', true, turns),
    rear: randomAxle(random, oneOf(random, kinds), false, turns),
  };
}
