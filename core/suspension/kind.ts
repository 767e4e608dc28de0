/**
 * What a suspension kind says about itself: its points and what holds them together. It is data; the constraint rows
 * are written from it in one place (core/pose/linkage.ts) and one solver serves every kind.
 */
import type { Suspension } from '../contract.ts';

export type FromTape = Omit<Suspension, 'kind' | 'tolerance'> & { readonly tolerance: number };

export interface SuspensionKind {
  readonly kind: string;
  /** As a technician calls it. */
  readonly name: string;
  /** All points, in the order in which they are best measured. */
  readonly points: readonly string[];
  /** Links of fixed length: [point on the body, point on the upright]. A rod is named by its body point. */
  readonly links: readonly (readonly [string, string])[];
  /** Body points that stay on a line of the upright: [point on the body, point on the upright that the line meets]. */
  readonly lines?: readonly (readonly [string, string])[];
  /** Steering axis, lower end to upper end. Absent: the kind has none that stays put, so no caster and no SAI. */
  readonly steeringAxis?: readonly [string, string];
  /** The body point that the steering rack moves. */
  readonly rack?: string;
  /** Builds the points from dimensions that a tape can take. @throws InputError with a path that begins with `field` */
  readonly fromTape?: (tape: Readonly<Record<string, unknown>>, field: string) => FromTape;
}
