import type { AxleName, Suspension, Vec3 } from '../contract.ts';

/**
 * A corner of a common layout to begin from: invented, plausible, nobody's car. Its points are counted from under its
 * own axle, so that it can stand at either end of the car.
 */
export interface Starter {
  readonly kind: string;
  /** The axle that it was laid out for. */
  readonly axle: AxleName;
  readonly name: string;
  readonly points: Readonly<Record<string, Vec3>>;
  readonly camber: number;
  readonly toe: number;
}

/** ± mm of a point that nobody has measured on the car. */
export const STARTER_TOLERANCE = 25;
/** How far the rear axle is taken to stand behind the front one, mm. */
export const STARTER_WHEELBASE = 2640;

/** The suspension of a starter at one end of the car: points in mm, as known as a guess is. */
export function suspensionFromStarter({ kind, points, camber, toe }: Starter, axle: AxleName): Suspension {
  const behind = axle === 'rear' ? STARTER_WHEELBASE : 0;
  const placed = Object.entries(points).map(([name, [x, y, z]]) => [name, [x - behind, y, z] as const]);
  return { kind, points: Object.fromEntries(placed), camber, toe, tolerance: STARTER_TOLERANCE };
}
