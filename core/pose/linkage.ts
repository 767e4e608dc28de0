/**
 * A suspension compiled for solving: its kind's links and lines written as constraint rows in one parameter array,
 * and, for every point and link, where in that array it stands, so that an adjuster's effect is a few additions.
 *
 * One rigid body carries one wheel, or both wheels of a rigid axle. Its frame is the left corner's; what stands on the
 * right of an axle is mirrored into it.
 */
import type { Suspension, Vec3 } from '../contract.ts';
import { cross, distance, middle, mirrored, normalised, sub } from '../geometry/vector.ts';
import { InputError } from '../input-error.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { linksOf, type SuspensionKind } from '../suspension/kind.ts';
import { DISTANCE, HEIGHT, LINE, ROW_SIZE, type Row, type RowType } from './rows.ts';
import { PoseSolver } from './solver.ts';

const CENTRE = 'wheelCentre';

/** One wheel, and where what carries it stands in the parameter array. */
export interface Wheel {
  readonly suspension: Suspension;
  /** −1 on the right of a rigid axle: outboard is the other way. */
  readonly outboard: 1 | -1;
  /** First parameter of a point's coordinates, one entry for every row that uses it. */
  readonly slots: ReadonlyMap<string, readonly number[]>;
  /** Whether a point is fixed in the body that moves (else on the car's). */
  readonly onUpright: ReadonlySet<string>;
  /** Parameter of a link's length, by its body point. */
  readonly lengths: ReadonlyMap<string, number>;
  /** First parameter of each normal that holds a clamped strut's line. */
  readonly normals: readonly number[];
  /** Parameter of the wheel-centre height; absent where the wheel goes with an axle. */
  readonly height?: number;
  /** First of the angles at the end: see the places below. */
  readonly angles: number;
}

export interface Linkage {
  readonly kind: SuspensionKind;
  /** Absent where the wheel is fixed to what carries it. */
  readonly solver?: PoseSolver;
  readonly reference: Float64Array;
  /** The body's origin in the reference pose: the wheel centre, or the middle between two. */
  readonly home: Vec3;
  /** One, or the left and the right one of a rigid axle. */
  readonly wheels: readonly Wheel[];
}

/** Places after `Wheel.angles`: the spin axis by camber and toe; what is added to the angles; a strut's tilt. */
export const SPIN_CAMBER = 0;
export const SPIN_TOE = 1;
export const ADD_CAMBER = 2;
export const ADD_CASTER = 3;
export const ADD_TOE = 4;
export const TILT = 5;
const ANGLE_COUNT = 6;

/** The kind's description; refuses a kind that is not in the catalogue. */
export function kindOf(suspension: Suspension, field = 'suspension'): SuspensionKind {
  const kind = suspensionKinds[suspension.kind];
  if (!kind) {
    const names = Object.values(suspensionKinds).map(({ name }) => name);
    const rule = { is: 'one-of', of: Object.keys(suspensionKinds), names } as const;
    throw new InputError(`${field}.kind`, suspension.kind, rule);
  }
  return kind;
}

/** Two unit vectors square to `axis` and to each other. */
function squareTo(axis: Vec3): [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const first = normalised(cross(axis, helper));
  return [first, cross(axis, first)];
}

/**
 * Compiles validated points: one suspension, or the left and the right one of a rigid axle.
 * @param field where the (left) suspension stands in what was given, for messages
 * @throws InputError if the links leave the wheel free to move (links that fall together)
 */
export function compile(sides: readonly Suspension[], field = 'suspension'): Linkage {
  const given = sides[0]!;
  const kind = kindOf(given, field);
  const centres = sides.map(({ points }, side) => turned(points[CENTRE] ?? [0, 0, 0], outboardOf(side)));
  const home = centres.length === 1 ? centres[0]! : middle(centres[0]!, centres[1]!);
  const params: number[] = [];
  const rows: Row[] = [];
  const held = sides.map((side, i) => holdWheel(kind, side, i, home, params, rows));
  const wheels = held.map((wheel): Wheel => {
    const angles = params.length;
    params.push(...new Array<number>(ANGLE_COUNT).fill(0));
    return { ...wheel, angles };
  });
  const reference = Float64Array.from(params);
  const base = { kind, reference, home, wheels };
  if (rows.length === 0) return base;
  const solver = new PoseSolver(rows, reference, home);
  if (!solver.holds()) {
    throw new InputError(`${field}.points`, given.points, { is: 'holds-the-wheel' });
  }
  return { ...base, solver };
}

const outboardOf = (side: number): 1 | -1 => (side === 0 ? 1 : -1);
/** From a corner's frame to the body's, and back. */
export const turned = (v: Vec3, outboard: 1 | -1): Vec3 => (outboard === 1 ? v : mirrored(v));

/** Writes the rows that hold one wheel to the end of `rows`, their parameters to the end of `params`. */
function holdWheel(
  kind: SuspensionKind,
  suspension: Suspension,
  side: number,
  home: Vec3,
  params: number[],
  rows: Row[],
): Omit<Wheel, 'angles'> {
  const outboard = outboardOf(side);
  const point = (name: string): Vec3 => turned(suspension.points[name]!, outboard);
  const { seats = [], lines = [] } = kind;
  // What an axle has once is held with its left side.
  const once = side === 0 ? [] : (kind.rigidAxle?.once ?? []);
  const links = linksOf(kind, suspension.points).filter(([inner]) => !once.includes(inner));
  const onBody = new Set([...seats, ...links.map(([inner]) => inner), ...lines.map(([body]) => body)]);
  const slots = new Map<string, number[]>();
  const onUpright = new Set<string>([CENTRE]);
  const lengths = new Map<string, number>();
  const normals: number[] = [];
  const place = (name: string, coordinates: Vec3): void => {
    const list = slots.get(name) ?? [];
    list.push(params.length);
    slots.set(name, list);
    params.push(...coordinates);
  };
  const row = (type: RowType, write: () => void): void => {
    const at = params.length;
    write();
    if (params.length !== at + ROW_SIZE[type]) throw new Error('a constraint row does not fill its parameters');
    rows.push({ type, at });
  };
  /** A point of the upright. One that sits in a seat is moved by its seat, so that its own place stays as it was. */
  const upright = (name: string): void => {
    if (onBody.has(name)) {
      params.push(...sub(point(name), home));
      return;
    }
    onUpright.add(name);
    place(name, sub(point(name), home));
  };

  for (const [inner, outer] of links) {
    row(DISTANCE, () => {
      place(inner, point(inner));
      upright(outer);
      lengths.set(inner, params.length);
      params.push(distance(point(inner), point(outer)));
    });
  }
  for (const seat of seats) {
    for (const axis of AXES) {
      row(LINE, () => {
        place(seat, point(seat));
        upright(seat);
        params.push(...axis);
      });
    }
  }
  for (const [body, through] of lines) {
    for (const normal of squareTo(normalised(sub(point(body), point(through))))) {
      row(LINE, () => {
        place(body, point(body));
        upright(through);
        if (kind.clamped) normals.push(params.length);
        params.push(...normal);
      });
    }
  }
  let height: number | undefined;
  if (kind.height) {
    row(HEIGHT, () => {
      place(CENTRE, sub(point(CENTRE), home));
      height = params.length;
      params.push(point(CENTRE)[2]);
    });
  }
  const base = { suspension, outboard, slots, onUpright, lengths, normals };
  return height === undefined ? base : { ...base, height };
}

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
