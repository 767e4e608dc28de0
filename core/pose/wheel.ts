/** One wheel of a linkage: where what carries it stands in the parameter array. */
import type { Suspension, Vec3 } from '../contract.ts';
import { mirrored } from '../geometry/vector.ts';

/** The point that stands for the wheel itself. */
export const CENTRE = 'wheelCentre';

export interface Wheel {
  /** Which of the linkage's bodies carries it. */
  readonly body: number;
  /** Points of this corner that are fixed in another body, and in which. */
  readonly elsewhere?: ReadonlyMap<string, number>;
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

/** Places after `Wheel.angles`: the spin axis by camber and toe; what is added to the angles; a strut's tilt. */
export const SPIN_CAMBER = 0;
export const SPIN_TOE = 1;
export const ADD_CAMBER = 2;
export const ADD_CASTER = 3;
export const ADD_TOE = 4;
export const TILT = 5;
export const ANGLE_COUNT = 6;

/** Of a side of a rigid axle; a corner by itself is a left one. */
export const outboardOf = (side: number): 1 | -1 => (side === 0 ? 1 : -1);

/** From a corner's frame to the body's, and back. */
export const turned = (v: Vec3, outboard: 1 | -1): Vec3 => (outboard === 1 ? v : mirrored(v));
