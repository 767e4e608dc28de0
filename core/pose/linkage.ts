/**
 * A suspension compiled for solving: its kind's links and lines written as constraint rows in one parameter array,
 * and, for every point and link, where in that array it stands, so that an adjuster's effect is a few additions.
 */

import type { Effect } from '../adjuster/kind.ts';
import type { Suspension, Vec3 } from '../contract.ts';
import { cos, radians, sin } from '../geometry/angle.ts';
import { cross, distance, sub, unit } from '../geometry/vector.ts';
import { InputError } from '../input-error.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { DISTANCE, HEIGHT, LINE, ROW_SIZE, type Row, type RowType } from './rows.ts';
import { PoseSolver } from './solver.ts';

const CENTRE = 'wheelCentre';

/** A sparse change of parameters: what an adjuster at one position does. */
export interface Change {
  readonly at: readonly number[];
  readonly by: readonly number[];
}

export interface Linkage {
  readonly kind: SuspensionKind;
  /** Absent where the wheel is fixed to what carries it. */
  readonly solver?: PoseSolver;
  readonly reference: Float64Array;
  /** First parameter of a point's coordinates, one entry for every row that uses it. */
  readonly slots: ReadonlyMap<string, readonly number[]>;
  /** Whether a point is fixed in the upright (else on the body). */
  readonly onUpright: ReadonlySet<string>;
  /** Parameter of a link's length, by its body point. */
  readonly lengths: ReadonlyMap<string, number>;
  /** First parameter of each normal that holds a clamped strut's line. */
  readonly normals: readonly number[];
  /** Parameter of the wheel-centre height; absent on a rigid axle. */
  readonly height?: number;
  /** First of the angles at the end: see the places below. */
  readonly angles: number;
}

/** Places after `Linkage.angles`: the spin axis by camber and toe; what is added to the angles; a strut's tilt. */
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
  if (!kind)
    throw new InputError(`${field}.kind`, suspension.kind, `one of ${Object.keys(suspensionKinds).join(', ')}`);
  return kind;
}

/** Two unit vectors square to `axis` and to each other. */
function squareTo(axis: Vec3): [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(axis[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const first = unit(cross(axis, helper));
  return [first, cross(axis, first)];
}

/**
 * Compiles validated points.
 * @param field where the suspension stands in what was given, for messages
 * @throws InputError if the links leave the wheel free to move (links that fall together)
 */
export function compile(suspension: Suspension, field = 'suspension'): Linkage {
  const kind = kindOf(suspension, field);
  const point = (name: string): Vec3 => suspension.points[name] as Vec3;
  const home = suspension.points[CENTRE] ?? [0, 0, 0];
  const { links = [], seats = [], lines = [] } = kind;
  const onBody = new Set([...seats, ...links.map(([inner]) => inner), ...lines.map(([body]) => body)]);

  const params: number[] = [];
  const rows: Row[] = [];
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
    for (const normal of squareTo(unit(sub(point(body), point(through))))) {
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
      place(CENTRE, [0, 0, 0]);
      height = params.length;
      params.push(home[2]);
    });
  }
  const angles = params.length;
  params.push(...new Array<number>(ANGLE_COUNT).fill(0));

  const reference = Float64Array.from(params);
  const base = {
    kind,
    reference,
    slots,
    onUpright,
    lengths,
    normals,
    angles,
    ...(height === undefined ? {} : { height }),
  };
  if (rows.length === 0) return base;
  const solver = new PoseSolver(rows, reference, home);
  if (!solver.holds()) {
    const allowed = 'points whose links hold the wheel: these leave it free to move';
    throw new InputError(`${field}.points`, suspension.points, allowed);
  }
  return { ...base, solver };
}

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** `a` without what `b` does: an adjuster's effect relative to its reference. */
export function without(a: Effect, b: Effect): Effect {
  const names = (x = {}, y = {}): string[] => [...new Set([...Object.keys(x), ...Object.keys(y)])];
  const from = <K extends string>(x: Partial<Record<K, number>> | undefined, y: typeof x, keys: readonly K[]) =>
    Object.fromEntries(keys.map((key) => [key, (x?.[key] ?? 0) - (y?.[key] ?? 0)])) as Record<K, number>;
  return {
    shift: Object.fromEntries(
      names(a.shift, b.shift).map((name) => [name, sub(a.shift?.[name] ?? NOWHERE, b.shift?.[name] ?? NOWHERE)]),
    ),
    lengthen: from(a.lengthen, b.lengthen, names(a.lengthen, b.lengthen)),
    tilt: (a.tilt ?? 0) - (b.tilt ?? 0),
    spin: from(a.spin, b.spin, ['camber', 'toe']),
    add: from(a.add, b.add, ['camber', 'caster', 'toe']),
  };
}
const NOWHERE: Vec3 = [0, 0, 0];

/** The parameters that an effect changes. */
export function changeOf(linkage: Linkage, effect: Effect): Change {
  const at: number[] = [];
  const by: number[] = [];
  const put = (slot: number, change: number): void => {
    if (change === 0) return;
    at.push(slot);
    by.push(change);
  };
  const putPoint = (slot: number, by: Vec3): void => {
    for (let i = 0; i < 3; i++) put(slot + i, by[i] as number);
  };
  for (const [name, shift] of Object.entries(effect.shift ?? {})) {
    for (const slot of linkage.slots.get(name) ?? []) putPoint(slot, shift);
  }
  for (const [link, growth] of Object.entries(effect.lengthen ?? {})) put(linkage.lengths.get(link) as number, growth);
  const { spin, add, tilt } = effect;
  put(linkage.angles + TILT, tilt ?? 0);
  put(linkage.angles + SPIN_CAMBER, spin?.camber ?? 0);
  put(linkage.angles + SPIN_TOE, spin?.toe ?? 0);
  put(linkage.angles + ADD_CAMBER, add?.camber ?? 0);
  put(linkage.angles + ADD_CASTER, add?.caster ?? 0);
  put(linkage.angles + ADD_TOE, add?.toe ?? 0);
  return { at, by };
}

/**
 * Writes a clamped strut's normals for its tilt. Tilts of two bolts add up as angles, which changes of the normals
 * themselves would not.
 */
export function tiltLine({ normals, reference, angles }: Linkage, params: Float64Array): void {
  if (normals.length === 0) return;
  const tilt = radians(params[angles + TILT] as number);
  const [c, s] = [cos(tilt), sin(tilt)];
  for (const slot of normals) {
    const [y, z] = [reference[slot + 1] as number, reference[slot + 2] as number];
    params[slot + 1] = y * c - z * s;
    params[slot + 2] = y * s + z * c;
  }
}

/** Adds a change to a parameter array. */
export function applyChange(params: Float64Array, { at, by }: Change): void {
  for (let i = 0; i < at.length; i++) {
    const slot = at[i] as number;
    params[slot] = (params[slot] as number) + (by[i] as number);
  }
}
