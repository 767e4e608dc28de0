/** Everywhere that the adjusters of one corner can put its wheel: what the reach picture draws. */

import type { CarSettings, Corner, PlanRequest, Spec, WheelReading, Window } from '../../contract.ts';
import { axleOf } from '../../corners.ts';
import { InputError } from '../../input-error.ts';
import { compileCar } from '../../pose/car-model.ts';
import { CAMBER, CASTER, TOE } from '../../pose/mechanism.ts';
import { outside, windowFor } from '../../reading/spec-terms.ts';
import { Completion } from '../fine/completion.ts';
import { FineSpace, statesOf } from '../fine/fine-space.ts';
import { seedsOf } from '../fine/seeds.ts';
import { lattice, scattered } from '../fine/spread.ts';
import { predictWith } from '../predict.ts';
import { complete } from '../problem.ts';
import type { CornerStand } from '../states/corner-stand.ts';
import { withWheelLevel } from '../straight-wheel.ts';
import { movableAt } from '../subproblem.ts';
import { poissonDisk } from './poisson-disk.ts';

/** A pair for the two axes of the picture: across it (caster or toe), then up (camber). */
export type Both<T> = readonly [across: T, camber: T];
/** Degrees, as the rack would read them. */
export type Place = Both<number>;
/** From the least to the most, degrees. */
export type Range = readonly [low: number, high: number];

/** Places of the picture. */
export interface Reached {
  /** What some combination of positions gives, each; 600 at the most, spread evenly over the view. */
  readonly places: readonly Place[];
  /**
   * Every combination in the view lies in an ellipse of these half axes, degrees, about one of the places; where there are
   * too many to go through, all that were looked at do with room to spare.
   */
  readonly within: Place;
  /** Whether a combination, drawn or not, has both angles in their windows. */
  readonly inWindow: boolean;
}

/** Everywhere that the adjusters of a corner can put its wheel, as the picture of it draws it. Degrees. */
export interface Reach {
  readonly corner: Corner;
  /** Caster where it was measured, else toe. */
  readonly across: 'caster' | 'toe';
  /** How many adjusters of the corner may be moved. */
  readonly adjusters: number;
  /** As it was read. */
  readonly found: Place;
  /** Where the plan puts it, if one was given. */
  readonly planned?: Place;
  /** Of this wheel, half of the axle's where toe is a total. Absent: any angle will do. */
  readonly windows: Both<Window | undefined>;
  /** What is worth drawing: windows and marks with room about them, no further than the reach. */
  readonly view: Both<Range>;
  /** Least and most of each angle over every combination, in the view or not. */
  readonly extent: Both<Range>;
  readonly all: Reached;
  /** Those that have toe in its window as well; absent where toe is an axis, was not read or has no window. */
  readonly withToe?: Reached;
}

const MOST_PLACES = 600;
/** Degrees about windows and marks, at the least. */
const ROOM = 0.5;

/**
 * Every combination of positions of a corner's adjusters, as angles that the rack would read there. Takes validated input.
 * @throws InputError where the corner was not measured for both axes of the picture
 */
export function reachWith(asked: PlanRequest, corner: Corner, to?: CarSettings): Reach {
  const request = withWheelLevel(asked);
  const { reading, spec } = request;
  const wheel = reading[corner];
  const across = wheel?.caster === undefined ? 'toe' : 'caster';
  const found = placeOf(wheel, across, `reading.${corner}`);
  const { states: given, adjusters, end } = reachableStates(request, corner, to);
  const planned = to && placeOf(end, across, `to.${corner}`);
  const toe = given.placeOf(corner, TOE);
  const at: Both<number> = [across === 'toe' ? toe : given.placeOf(corner, CASTER), given.placeOf(corner, CAMBER)];
  const windows: Both<Window | undefined> = [windowOf(spec, corner, across), windowOf(spec, corner, 'camber')];
  const window = across === 'toe' || wheel?.toe === undefined ? undefined : windowOf(spec, corner, 'toe');
  const wanted = [...at.map((place, axis) => ({ place, window: windows[axis] })), { place: toe, window }];
  const states = given instanceof FineSpace ? sampled(given, wanted) : given;
  const { values, stride } = states;
  const value = (state: number, place: number): number => values[state * stride + place]!;
  // What a limit forbids has no first number.
  const real = Uint32Array.from({ length: states.count }, (_, i) => i).filter(
    (state) => !Number.isNaN(value(state, 0)),
  );
  const extent = both((axis) => rangeOf(real, (state) => value(state, at[axis])));
  const view = both((axis) => {
    const { low, high } = windows[axis] ?? { low: found[axis], high: found[axis] };
    return viewOf([low, high, found[axis], planned?.[axis] ?? low], extent[axis]);
  });
  const flat: Flat = {
    windows,
    view,
    slack: states.slack,
    near: (state) => both((axis) => value(state, at[axis])),
    exact: (state) => both((axis) => states.exact(state)[at[axis]]!),
  };
  // Of what is not listed some are looked at all the same.
  const beside = given instanceof FineSpace ? anglesAt(given, scattered(given.axes, LOOKED_AT)) : [];
  const places = (some: readonly Float64Array[]) => some.map((angles) => both((axis) => angles[at[axis]]!));
  return {
    corner,
    across,
    adjusters,
    found,
    windows,
    view,
    extent,
    ...(planned && { planned }),
    all: reached(flat, real, places(beside)),
    ...(window && {
      withToe: reached(
        flat,
        real.filter((state) => outside(value(state, toe), window) === 0),
        places(beside.filter((angles) => outside(angles[toe]!, window) === 0)),
      ),
    }),
  };
}

/** The states of a corner while the others stand where they go, and what its wheel reads when it has gone there too. */
function reachableStates(request: PlanRequest, corner: Corner, to: CarSettings | undefined) {
  const { car, reading } = request;
  const model = compileCar(car);
  const now = complete(request);
  const then = to ? complete({ car, settings: to }) : now;
  const start = { ...then, [corner]: now[corner] };
  const before = predictWith(model, reading, now, start);
  const movable = movableAt(request, corner);
  const assembly = model.find(({ corners }) => corners.includes(corner))!;
  const stand = (one: Corner): CornerStand => ({
    measured: before[one] ?? {},
    current: start[one],
    ties: [],
    movable: one === corner ? movable : [],
  });
  const states = statesOf(assembly, assembly.corners.map(stand));
  return { states, adjusters: movable.length, end: predictWith(model, reading, now, then)[corner] };
}

/** Settings spread over all travels, and looked at beside them, where there are too many for each. */
const SPREAD = 2e4;
const LOOKED_AT = 1500;

interface WantedAt {
  readonly place: number;
  readonly window: Window | undefined;
}

/** States all over, and those that come nearest to the middles of the windows: of the first two, and of all. */
function sampled(states: FineSpace, wanted: readonly WantedAt[]): FineSpace {
  const near = (some: readonly WantedAt[]): number[][] => {
    const terms = some.flatMap(({ place, window }) => {
      if (!window) return [];
      const half = (window.high - window.low) / 2;
      const factors = new Float64Array(states.tables.numbers);
      factors[place] = 1 / half;
      return [{ factors, offset: -(window.low + window.high) / 2 / half }];
    });
    return terms.length > 0 ? seedsOf(new Completion(states.tables, terms)) : [];
  };
  return states.with([...lattice(states.axes, SPREAD), ...near(wanted.slice(0, 2)), ...near(wanted)]);
}

function anglesAt({ tables }: FineSpace, settings: readonly (readonly number[])[]): Float64Array[] {
  const all = settings.map((digits) => {
    const angles = new Float64Array(tables.numbers);
    tables.solveAt(digits, angles);
    return angles;
  });
  return all.filter((angles) => !Number.isNaN(angles[0]!));
}

/** States as the picture sees them. */
interface Flat {
  readonly windows: Both<Window | undefined>;
  readonly view: Both<Range>;
  /** By interpolation, off by `slack` at the most; and by a full solve. */
  readonly near: (state: number) => Place;
  readonly exact: (state: number) => Place;
  readonly slack: number;
}

/** Settings that are not listed may be further from a place than those looked at by this. */
const MORE = 1.5;

/** @param beside some of those that are not listed */
function reached({ windows, view, near, exact, slack }: Flat, among: Uint32Array, beside: readonly Place[]): Reached {
  const width = both((axis) => view[axis][1] - view[axis][0]);
  const spot = (state: number): Place => {
    const place = near(state);
    return both((axis) => (place[axis] - view[axis][0]) / width[axis]);
  };
  const seen = among.filter((state) => spot(state).every((x) => x >= 0 && x <= 1));
  const { picked, spacing } = poissonDisk(seen.length, (i) => spot(seen[i]!), MOST_PLACES);
  const isIn = (place: Place, by: number): boolean =>
    place.every((angle, axis) => Math.abs(outside(angle, windows[axis] ?? ANY)) <= by);
  // What is interpolated may have no pose in full, where the geometry is at its end.
  const places = picked.map((i) => exact(seen[i]!)).filter((place) => !place.some(Number.isNaN));
  const apart = (a: Place, b: Place): number => Math.hypot((a[0] - b[0]) / width[0], (a[1] - b[1]) / width[1]);
  const isSeen = (place: Place): boolean => place.every((x, axis) => x >= view[axis]![0] && x <= view[axis]![1]);
  const furthest = beside
    .filter(isSeen)
    .reduce((most, one) => Math.max(most, MORE * Math.min(...places.map((place) => apart(one, place)))), spacing);
  return {
    places,
    within: both((axis) => furthest * width[axis] + slack),
    inWindow: among.some((state) => isIn(near(state), slack) && isIn(exact(state), 0)),
  };
}

const ANY: Window = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

const both = <T>(make: (axis: 0 | 1) => T): Both<T> => [make(0), make(1)];

function placeOf(wheel: WheelReading = {}, across: 'caster' | 'toe', field: string): Place {
  const angle = (name: 'camber' | 'caster' | 'toe'): number => {
    const value = wheel[name];
    if (value === undefined) throw new InputError(`${field}.${name}`, value, { is: 'measured' });
    return value;
  };
  return [angle(across), angle('camber')];
}

/** The wheel's own window; each wheel has half of a total toe. */
function windowOf(spec: Spec, corner: Corner, angle: 'camber' | 'caster' | 'toe'): Window | undefined {
  const own = windowFor(spec, corner, angle);
  const total = angle === 'toe' ? spec[axleOf(corner)]?.totalToe : undefined;
  return own ?? (total && { low: total.low / 2, high: total.high / 2 });
}

/** Least and most over the states; there is always one, where the adjusters stand. */
function rangeOf(states: Uint32Array, angle: (state: number) => number): Range {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const state of states) {
    low = Math.min(low, angle(state));
    high = Math.max(high, angle(state));
  }
  return [low, high];
}

/** The marks with as much room to each side again, but not beyond what is reached; never nothing. */
function viewOf(marks: readonly number[], [least, most]: Range): Range {
  const [first, last] = [Math.min(...marks), Math.max(...marks)];
  const room = Math.max(ROOM, last - first);
  const low = Math.max(first - room, Math.min(first, least));
  const high = Math.min(last + room, Math.max(last, most));
  const spare = Math.max(0, ROOM - (high - low)) / 2;
  return [low - spare, high + spare];
}
