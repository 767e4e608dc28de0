/**
 * What a suspension kind says about itself: its points and what holds them together. It is data; the constraint rows
 * are written from it in one place (core/pose/linkage.ts) and one solver serves every kind.
 */
import type { TapeLayout } from './tape.ts';

export interface SuspensionKind {
  readonly kind: string;
  /** As a technician calls it. */
  readonly name: string;
  /** All points, in the order in which they are best measured. */
  readonly points: readonly string[];
  /** Links of fixed length: [point on the body, point on the upright]. A rod is named by its body point. */
  readonly links?: readonly (readonly [string, string])[];
  /** Points of the upright that sit in a seat on the body (or the axle): where the seat goes, they go. */
  readonly seats?: readonly string[];
  /** Body points that stay on a line of the upright: [point on the body, point on the upright that the line meets]. */
  readonly lines?: readonly (readonly [string, string])[];
  /** The line is a strut's, clamped to the knuckle: a clamp bolt may turn it. */
  readonly clamped?: true;
  /** Whether the wheel stands at a height of its own against the body; a wheel on a rigid axle goes with the axle. */
  readonly height: boolean;
  /** Steering axis, lower end to upper end. Absent: the kind has none that stays put, so no caster and no SAI. */
  readonly steeringAxis?: readonly [string, string];
  /** The body point that the steering rack moves. */
  readonly rack?: string;
  /** The dimensions that a tape can take, and how the points are built from them. */
  readonly tape?: TapeLayout;
}

/** The points at which something is held: all but the wheel centre, in the kind's order. */
export function jointsOf({ points, links = [], lines = [], seats = [] }: SuspensionKind): string[] {
  const joints = new Set([...links.flat(), ...lines.flat(), ...seats]);
  return points.filter((name) => joints.has(name));
}

/** The links that a thread may lengthen, named by their body point. */
export const rodsOf = ({ links = [] }: SuspensionKind): string[] => links.map(([inner]) => inner);
