/** One simulated car: how many re-measures it takes by each of the methods. */
import type { AxleSpec, Corner, Reading, Settings, Window } from '../../../core/contract.ts';
import { adjusterPositions } from '../../../core/index.ts';
import { stream } from '../../tools/random-cars.ts';
import { carOf, FAMILIES, type Family } from './families.ts';
import { byChart, cornerwright, knowsAll, type Method, ruleOfThumb, type Truth } from './methods.ts';
import { GAUGE, scattered, TrueCorner } from './truth.ts';

const MOST_ROUNDS = 8;
/** How much the cars of a family differ from one another, mm, beside how much they differ from what was entered. */
const VARIETY = 15;
export const TOE = 0.1;
/** It goes for camber and caster only. */
export const ALL_KNOWN = 'all known';
/** Its chance says nothing of what a tape leaves open. */
export const POINTS_EXACT = '  points exact';
export const LEAN = ['camber', 'caster'] as const;
export const ALL = ['camber', 'caster', 'toe'] as const;

function specOf({ aim }: Family, half: number): AxleSpec {
  const window = (middle: number, by: number) => ({ low: middle - by, aim: middle, high: middle + by });
  return {
    camber: window(aim.camber, half),
    ...(aim.caster === undefined ? {} : { caster: window(aim.caster, half) }),
    toe: window(aim.toe, TOE),
  };
}

export function isIn(
  spec: AxleSpec,
  reading: Reading,
  corners: readonly Corner[],
  angles: readonly (typeof ALL)[number][],
) {
  return corners.every((corner) =>
    angles.every((angle) => {
      const window = spec[angle];
      const value = reading[corner]?.[angle];
      return window === undefined || value === undefined || (value >= window.low && value <= window.high);
    }),
  );
}

/** Whether any pair of positions brings camber and caster of the true wheel so far into the window, by trying them all. */
export function canReach(family: Family, spec: AxleSpec, corner: TrueCorner, inside: Inside): boolean {
  const [first, second] = family.adjusters;
  const narrow = {
    camber: narrowed(spec.camber as Window, inside.camber),
    ...(spec.caster && { caster: narrowed(spec.caster, inside.caster) }),
  };
  return adjusterPositions(first).some((i) =>
    adjusterPositions(second).some((j) => {
      const wheel = corner.angles({ [first.id]: i, [second.id]: j });
      return isIn(narrow, { LF: wheel }, ['LF'], LEAN);
    }),
  );
}

/** Degrees from the edges of the windows. */
type Inside = { readonly camber: number; readonly caster: number };
const narrowed = ({ low, high }: Window, by: number): Window => ({ low: low + by, high: high - by });

export interface Outcome {
  /** Re-measures until camber and caster, and until all, are in the window; MOST_ROUNDS + 1 if never. */
  readonly lean: number;
  readonly all: number;
  readonly chance?: number;
}

function play(method: Method, spec: AxleSpec, corners: readonly Corner[], truth: Truth): Outcome {
  const read = (at: Readonly<Partial<Record<Corner, Settings>>>): Reading =>
    Object.fromEntries(corners.map((corner) => [corner, truth[corner]?.read(at[corner] ?? {})]));
  let settings: Readonly<Partial<Record<Corner, Settings>>> = {};
  let reading = read(settings);
  let lean = isIn(spec, reading, corners, LEAN) ? 0 : MOST_ROUNDS + 1;
  let all = isIn(spec, reading, corners, ALL) ? 0 : MOST_ROUNDS + 1;
  let chance: number | undefined;
  for (let round = 1; round <= MOST_ROUNDS && all > MOST_ROUNDS; round++) {
    const step = method(reading, settings);
    settings = step.settings;
    reading = read(settings);
    if (round === 1) chance = step.chance;
    if (isIn(spec, reading, corners, LEAN)) lean = Math.min(lean, round);
    if (isIn(spec, reading, corners, ALL)) all = Math.min(all, round);
  }
  return { lean, all, ...(chance === undefined ? {} : { chance }) };
}

/** What each method makes of a car. */
export interface Played {
  /** Whether its windows can be reached with a standard deviation of the gauge to spare. */
  readonly room: boolean;
  readonly outcomes: Readonly<Record<string, Outcome>>;
}

/**
 * @param half of the windows of camber and caster, degrees
 * @param number of the family
 * @param car its number: the same car whenever and wherever it is played
 * @returns nothing where no position brings its camber and caster into the window
 */
export function playCar(half: number, number: number, car: number): Played | undefined {
  const family = FAMILIES[number] as Family;
  const spec = specOf(family, half);
  const [left, right] = family.corners;
  const axle = left === 'LF' ? 'front' : 'rear';
  const seed = 1 + number * 100_000 + car;
  const random = stream(seed);
  const entered = [0, 1].map(() => scattered(family.suspension, random, VARIETY));
  const [l, r] = entered as [(typeof entered)[0], (typeof entered)[0]];
  // Every method meets the same cars with the same gauge: the stream starts anew for each.
  const truth = (): Truth => {
    const own = stream(seed + 50_000_000);
    return { [left]: new TrueCorner(family, l, own), [right]: new TrueCorner(family, r, own) };
  };
  const once = truth();
  const reached = (inside: Inside): boolean =>
    family.corners.every((corner) => canReach(family, spec, once[corner] as TrueCorner, inside));
  if (!reached({ camber: 0, caster: 0 })) return undefined;
  const exact = (corner: Corner) => ({ ...(once[corner] as TrueCorner).suspension, tolerance: 0 });
  const methods: Record<string, Method> = {
    'rule of thumb': ruleOfThumb(family, spec),
    "kit's chart": byChart(family, spec),
    Cornerwright: cornerwright(carOf(family, l, r), spec, axle, 'practical'),
    '  surest': cornerwright(carOf(family, l, r), spec, axle, 'surest'),
    '  closest': cornerwright(carOf(family, l, r), spec, axle, 'closest'),
    // What these still miss the gauge, the hands and the steps of the adjusters miss.
    [POINTS_EXACT]: cornerwright(carOf(family, exact(left), exact(right)), spec, axle, 'surest'),
    [ALL_KNOWN]: knowsAll(family, spec, once),
  };
  const outcomes = Object.fromEntries(
    Object.entries(methods).map(([name, method]) => [name, play(method, spec, family.corners, truth())]),
  );
  return { room: reached(GAUGE), outcomes };
}
