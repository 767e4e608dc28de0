/**
 * A suspension compiled for solving: its kind's links and lines written as constraint rows in one parameter array,
 * and, for every point and link, where in that array it stands, so that an adjuster's effect is a few additions.
 *
 * One rigid body carries one wheel, or both wheels of a rigid axle; where its knuckles turn on it each wheel has a body.
 * Their frame is the left corner's; what stands on the right of an axle is mirrored into it.
 */
import type { Suspension, Vec3 } from '../contract.ts';
import { middle } from '../geometry/vector.ts';
import { InputError } from '../input-error.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { type CrossRod, joinKnuckles } from './knuckles.ts';
import type { HeldRow } from './rows.ts';
import { PoseSolver } from './solver.ts';
import { ANGLE_COUNT, CENTRE, outboardOf, turned, type Wheel } from './wheel.ts';
import { type Draft, holdWheel } from './wheel-rows.ts';

/** What moves as one. */
export interface Body {
  /** Absent where the wheel is fixed to what carries it. */
  readonly solver?: PoseSolver;
  /** Its origin in the reference pose: the wheel centre, or the middle between two. */
  readonly home: Vec3;
  /** What holds it. */
  readonly rows: readonly HeldRow[];
}

export interface Linkage {
  readonly kind: SuspensionKind;
  readonly reference: Float64Array;
  /** One, or the left and the right knuckle of an axle. */
  readonly bodies: readonly Body[];
  /** How the second knuckle hangs on the first; absent where there is one body. */
  readonly crossRod?: CrossRod;
  /** One, or the left and the right one of a rigid axle. */
  readonly wheels: readonly Wheel[];
  /** Parameters of where the body of an axle on links has its origin in the reference pose; absent where it is no such. */
  readonly origin?: number;
}

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

/**
 * Compiles validated points: one suspension, or the left and the right one of a rigid axle.
 * @param field where the (left) suspension stands in what was given, for messages
 * @throws InputError if the links leave the wheel free to move (links that fall together)
 */
export function compile(sides: readonly Suspension[], field = 'suspension'): Linkage {
  const given = sides[0]!;
  const kind = kindOf(given, field);
  const centres = sides.map(({ points }, side) => turned(points[CENTRE] ?? [0, 0, 0], outboardOf(side)));
  const knuckles = kind.rigidAxle?.knuckles;
  const homes = knuckles || centres.length === 1 ? centres : [middle(centres[0]!, centres[1]!)];
  const params: number[] = [];
  const drafts = homes.map((home): Draft => ({ params, rows: [], home }));
  const held = sides.map((suspension, side) => holdWheel(kind, suspension, side, drafts[side] ?? drafts[0]!));
  const joined = knuckles && joinKnuckles(kind, given, drafts, held[0]!);
  if (joined) held[0] = joined.wheel;
  const wheels = held.map((wheel, side): Wheel => {
    const angles = params.length;
    params.push(...new Array<number>(ANGLE_COUNT).fill(0));
    return { ...wheel, angles, body: drafts[side] ? side : 0 };
  });
  const origin = kind.rigidAxle?.onLinks ? params.push(...homes[0]!) - 3 : undefined;
  const reference = Float64Array.from(params);
  const bodies = drafts.map(({ rows, home }): Body => {
    if (rows.length === 0) return { home, rows };
    const solver = new PoseSolver(rows, reference, home);
    if (!solver.holds()) throw new InputError(`${field}.points`, given.points, { is: 'holds-the-wheel' });
    return { home, solver, rows };
  });
  const more = { ...(joined && { crossRod: joined.crossRod }), ...(origin !== undefined && { origin }) };
  return { kind, reference, bodies, wheels, ...more };
}
