/**
 * What a suspension kind says about itself: its points and what holds them together. It is data; the constraint rows
 * are written from it in one place (core/pose/wheel-rows.ts) and one solver serves every kind.
 */
import type { Level, Suspect } from '../said.ts';

/** All that is known of a kind of suspension: adding one is one such object in a file of its own. */
export interface SuspensionKind {
  readonly kind: string;
  /** As a technician calls it. */
  readonly name: string;
  /** All points, in the order in which they are best measured. */
  readonly points: readonly string[];
  /** Those of them that may be absent, all or none: a part that only some cars have. */
  readonly optionalPoints?: readonly string[];
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
  /**
   * Both wheels stand on one rigid body, or on knuckles that hang together on it. `once`: points that it has once; they are
   * given with its left side. `onLinks`: links place it in the car, so that one that changes its length may pitch it and
   * push it sideways. `knuckles`: of the two links the first holds the knuckle on whose side its end is, the second the
   * other knuckle by that one.
   */
  readonly rigidAxle?: {
    readonly once: readonly string[];
    readonly onLinks?: true;
    readonly knuckles?: true;
  };
  /** Steering axis, lower end to upper end. Absent: the kind has none that stays put, so no caster and no SAI. */
  readonly steeringAxis?: readonly [string, string];
  /** Its points on a lower arm or link: cams there are set for camber first. */
  readonly lowerArm?: readonly string[];
  /** The body point that the steering rack moves. */
  readonly rack?: string | undefined;
  /**
   * What to look at where camber, SAI and included angle of one side stand so against the other: the first row that fits.
   * Absent: what holds for any. Trade practice, from memory: it says where to look, not what to replace.
   */
  readonly patterns?: readonly BendPattern[];
}

/** Levels that are absent may be any. */
export interface BendPattern {
  readonly sai?: Level;
  readonly camber?: Level;
  readonly included?: Level;
  readonly look: Suspect;
}

/** The knuckle keeps the included angle, whatever carries it. */
export const KNUCKLE: readonly BendPattern[] = [
  { included: 'low', look: 'knuckle-or-spindle' },
  { included: 'high', look: 'knuckle-or-spindle' },
];
