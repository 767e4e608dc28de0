/**
 * A suspension compiled for solving: its kind's links and lines written as constraint rows in one parameter array,
 * and, for every point and link, where in that array it stands, so that an adjuster's effect is a few additions.
 */

import type { Effect } from '../adjuster/kind.ts';
import type { Suspension, Vec3 } from '../contract.ts';
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
  readonly solver: PoseSolver;
  readonly reference: Float64Array;
  /** First parameter of a point's coordinates, one entry for every row that uses it. */
  readonly slots: ReadonlyMap<string, readonly number[]>;
  /** Whether a point is fixed in the upright (else on the body). */
  readonly onUpright: ReadonlySet<string>;
  /** Parameter of a link's length, by its body point. */
  readonly lengths: ReadonlyMap<string, number>;
  /** Parameter of the wheel-centre height. */
  readonly height: number;
}

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
  const home = point(CENTRE);

  const params: number[] = [];
  const rows: Row[] = [];
  const slots = new Map<string, number[]>();
  const onUpright = new Set<string>([CENTRE]);
  const lengths = new Map<string, number>();
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
  const upright = (name: string): void => {
    onUpright.add(name);
    place(name, sub(point(name), home));
  };

  for (const [inner, outer] of kind.links) {
    row(DISTANCE, () => {
      place(inner, point(inner));
      upright(outer);
      lengths.set(inner, params.length);
      params.push(distance(point(inner), point(outer)));
    });
  }
  for (const [onBody, through] of kind.lines ?? []) {
    for (const normal of squareTo(unit(sub(point(onBody), point(through))))) {
      row(LINE, () => {
        place(onBody, point(onBody));
        upright(through);
        params.push(...normal);
      });
    }
  }
  let height = 0;
  row(HEIGHT, () => {
    place(CENTRE, [0, 0, 0]);
    height = params.length;
    params.push(home[2]);
  });

  const reference = Float64Array.from(params);
  const solver = new PoseSolver(rows, reference, home);
  if (!solver.holds()) {
    throw new InputError(
      `${field}.points`,
      suspension.points,
      'points whose links hold the wheel: these leave it free to move',
    );
  }
  return { kind, solver, reference, slots, onUpright, lengths, height };
}

/** The parameters that an effect changes, `sign` times. */
export function changeOf(linkage: Linkage, effect: Effect, sign = 1): Change {
  const at: number[] = [];
  const by: number[] = [];
  for (const [name, shift] of Object.entries(effect.shift ?? {})) {
    for (const slot of linkage.slots.get(name) ?? []) {
      for (let i = 0; i < 3; i++) {
        if (shift[i] === 0) continue;
        at.push(slot + i);
        by.push(sign * (shift[i] as number));
      }
    }
  }
  for (const [link, growth] of Object.entries(effect.lengthen ?? {})) {
    at.push(linkage.lengths.get(link) as number);
    by.push(sign * growth);
  }
  return { at, by };
}

/** Adds a change to a parameter array. */
export function applyChange(params: Float64Array, { at, by }: Change): void {
  for (let i = 0; i < at.length; i++) {
    const slot = at[i] as number;
    params[slot] = (params[slot] as number) + (by[i] as number);
  }
}
