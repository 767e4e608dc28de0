/**
 * The best plan by trying every combination, with nothing but `predictReading`, the contract's formula, and the limits
 * as the contract words them. Written apart from the planner, to judge it by.
 */
import {
  type Adjuster,
  type Axle,
  type AxleSpec,
  type Car,
  CORNERS,
  type Corner,
  type PlanRequest,
  type PlanStyle,
  type Reading,
  type Settings,
  type Spec,
  type Window,
} from '../../core/contract.ts';
import { adjusterKinds, adjusterPositions, predictReading, suspensionKinds } from '../../core/index.ts';
import { between, type Random } from './random-cars.ts';

type Pair = readonly [Corner, Corner];
export const PAIRS = { front: ['LF', 'RF'], rear: ['LR', 'RR'] } as const satisfies Record<string, Pair>;

const window = (random: Random, aim: number, half: number): Window => {
  const width = half * between(random, 0.6, 1.4);
  return { low: aim - width, aim: aim + between(random, -0.3, 0.3) * width, high: aim + width };
};

export function randomSpec(random: Random, caster: boolean): AxleSpec {
  const maybe = <T>(value: T): T | undefined => (random() < 0.6 ? value : undefined);
  const spec = {
    camber: window(random, -0.5, 0.6),
    caster: caster ? maybe(window(random, 3, 0.7)) : undefined,
    toe: maybe(window(random, 0.05, 0.3)),
    totalToe: maybe(window(random, 0.1, 0.4)),
    crossCamber: maybe(window(random, 0, 0.5)),
    crossCaster: caster ? maybe(window(random, 0, 0.6)) : undefined,
    thrustAngle: maybe(window(random, 0, 0.2)),
    left: maybe({ camber: window(random, -0.4, 0.6) }),
  };
  return Object.fromEntries(Object.entries(spec).filter(([, value]) => value !== undefined));
}

export const randomReading = (random: Random, spread: number): Reading =>
  Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      {
        camber: -0.5 + between(random, -spread, spread),
        ...(corner.endsWith('F') ? { caster: 3 + between(random, -spread, spread) } : {}),
        toe: between(random, -spread, spread) / 2,
      },
    ]),
  );

/** Written from the contract, not from the planner. */
function values(spec: Spec, reading: Reading): { value: number; window: Window }[] {
  const all: { value: number; window: Window }[] = [];
  const add = (value: number | undefined, given: Window | undefined): void => {
    if (given && value !== undefined) all.push({ value, window: given });
  };
  for (const axle of ['front', 'rear'] as const) {
    const own = spec[axle];
    if (!own) continue;
    const [left, right] = PAIRS[axle].map((corner) => reading[corner]);
    for (const angle of ['camber', 'caster', 'toe'] as const) {
      add(left?.[angle], own.left?.[angle] ?? own[angle]);
      add(right?.[angle], own.right?.[angle] ?? own[angle]);
    }
    const both = (angle: 'camber' | 'caster' | 'toe', of: (l: number, r: number) => number): number | undefined =>
      left?.[angle] === undefined || right?.[angle] === undefined ? undefined : of(left[angle], right[angle]);
    add(
      both('toe', (l, r) => l + r),
      own.totalToe,
    );
    add(
      both('camber', (l, r) => l - r),
      own.crossCamber,
    );
    add(
      both('caster', (l, r) => l - r),
      own.crossCaster,
    );
    add(
      both('toe', (l, r) => (l - r) / 2),
      own.thrustAngle,
    );
    for (const change of ['pinionChange', 'lateralChange'] as const) add(reading[axle]?.[change] ?? 0, own[change]);
  }
  return all;
}

export function score(spec: Spec, reading: Reading): { inWindow: boolean; distance: number } {
  let inWindow = true;
  let distance = 0;
  for (const { value, window: w } of values(spec, reading)) {
    if (value < w.low - 1e-9 || value > w.high + 1e-9) inWindow = false;
    distance += ((value - (w.aim ?? (w.low + w.high) / 2)) / ((w.high - w.low) / 2)) ** 2;
  }
  return { inWindow, distance };
}

const axleOf = (car: Car, corner: Corner): Axle => (corner.endsWith('F') ? car.front : car.rear);

/** The adjusters of a corner: its own list on the right if there is one; what a rigid axle has once stands left. */
export function adjustersAt(car: Car, corner: Corner): readonly Adjuster[] {
  const { suspension, adjusters: both, rightAdjusters } = axleOf(car, corner);
  const adjusters = corner.startsWith('R') ? (rightAdjusters ?? both) : both;
  const { once = [] } = suspensionKinds[suspension.kind]?.rigidAxle ?? {};
  if (corner.startsWith('L')) return adjusters;
  return adjusters.filter((one) => ![one.at, ...(one.links ?? [])].some((name) => once.includes(name)));
}

/** Every combination of a corner's positions that its own limits allow. */
export function combinations(car: Car, corner: Corner, fixed: readonly string[] = []): Settings[] {
  const adjusters = adjustersAt(car, corner);
  let all: Settings[] = [{}];
  for (const adjuster of adjusters) {
    const positions = fixed.includes(adjuster.id) ? [adjuster.reference] : adjusterPositions(adjuster);
    all = all.flatMap((settings) => positions.map((position) => ({ ...settings, [adjuster.id]: position })));
  }
  return all.filter((settings) => pairsHold(adjusters, settings));
}

/** The most that two packs of a corner may differ by. */
export function pairsHold(adjusters: readonly Adjuster[], settings: Settings): boolean {
  return adjusters.every(({ id, pair }) => {
    if (!pair) return true;
    return Math.abs((settings[id] as number) - (settings[pair.with] as number)) <= pair.most + 1e-9;
  });
}

/**
 * One wedge for both sides; rods that differ by so much at the most, in length where both lengths are given, else in
 * what each has gained since its reference. An adjuster that one side alone has is free.
 */
export function sidesHold(
  adjusters: readonly Adjuster[],
  left: Settings,
  right: Settings,
  onRight: readonly Adjuster[] = adjusters,
): boolean {
  return adjusters.every((one) => {
    const other = onRight.find(({ id }) => id === one.id);
    if (!other) return true;
    if (one.kind === 'axle-wedge') return left[one.id] === right[one.id];
    const limits = [one, other].flatMap(({ maxSideDifference }) => maxSideDifference ?? []);
    if (limits.length === 0) return true;
    const gained = (rod: Adjuster, at: Settings) => ((at[rod.id] as number) - (rod.reference as number)) * rod.lead;
    const known = one.length !== undefined && other.length !== undefined;
    const apart = gained(one, left) - gained(other, right) + (known ? one.length - other.length : 0);
    return Math.abs(apart) <= Math.min(...limits) + 1e-9;
  });
}

/** Predicted angles of one corner at each combination, where corners move one another's only along the thrust line. */
function readings(car: Car, reading: Reading, corner: Corner, list: readonly Settings[]): Reading[] {
  return list.map((settings) => predictReading(car, { [corner]: reading[corner] }, {}, { [corner]: settings }));
}

const minutes = (car: Car, corner: Corner, settings: Settings): number =>
  adjustersAt(car, corner).reduce(
    (sum, one) =>
      sum + (settings[one.id] === one.reference ? 0 : (one.effort ?? adjusterKinds[one.kind]?.effort ?? Number.NaN)),
    0,
  );

export type Score = { inWindow: boolean; distance: number; effort: number };
export const WORST: Score = {
  inWindow: false,
  distance: Number.POSITIVE_INFINITY,
  effort: Number.POSITIVE_INFINITY,
};

export function better(a: Score, b: Score, style: PlanStyle): boolean {
  if (a.inWindow !== b.inWindow) return a.inWindow;
  if (a.inWindow && style === 'least-work' && Math.abs(a.effort - b.effort) > 1e-6) return a.effort < b.effort;
  return a.distance < b.distance - 1e-9;
}

/** The best of every pair of combinations of an axle whose adjusters stand at their reference. */
export function bruteForce(request: PlanRequest, axle: 'front' | 'rear'): Score {
  let best = WORST;
  everyCombination(request, axle, (found) => {
    if (better(found, best, request.style ?? 'closest')) best = found;
  });
  return best;
}

/** Shows every pair of combinations of an axle whose adjusters stand at their reference, one by one. */
export function everyCombination(
  request: PlanRequest,
  axle: 'front' | 'rear',
  show: (found: Score, left: Settings, right: Settings) => void,
): void {
  const { car, reading } = request;
  const spec: Spec = { [axle]: request.spec[axle] };
  const pair: Pair = PAIRS[axle];
  const lists = pair.map((corner) =>
    combinations(
      car,
      corner,
      (request.locked ?? []).filter((one) => one.corner === corner).map((one) => one.adjuster),
    ),
  );
  const joined = suspensionKinds[car[axle].suspension.kind]?.rigidAxle !== undefined;
  const angles = joined ? [] : lists.map((list, i) => readings(car, reading, pair[i] as Corner, list));
  const own = { [pair[0]]: reading[pair[0]], [pair[1]]: reading[pair[1]] };
  lists[0]?.forEach((l, i) => {
    lists[1]?.forEach((r, j) => {
      if (!sidesHold(adjustersAt(car, pair[0]), l, r, adjustersAt(car, pair[1]))) return;
      const after = joined
        ? predictReading(car, own, {}, { [pair[0]]: l, [pair[1]]: r })
        : { ...angles[0]?.[i], ...angles[1]?.[j] };
      const effort = minutes(car, pair[0], l) + minutes(car, pair[1], r);
      show({ ...score(spec, after), effort }, l, r);
    });
  });
}
