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

/**
 * ± mm that a point of a common layout may be off on a car that nobody measured: trade practice, no source. Of a layout that
 * was filled in before it was 25.
 */
export const STARTER_TOLERANCE = 30;
export const STARTER_TOLERANCES: readonly number[] = [STARTER_TOLERANCE, 25];
/** How far the rear axle is taken to stand behind the front one, mm. */
export const STARTER_WHEELBASE = 2640;

/** What everyone knows of a car, or reads off it in a minute: mm; what is absent is as in the layout. */
export interface Known {
  readonly wheelbase?: number | undefined;
  /** Between the wheel centres. */
  readonly track?: number | undefined;
  /** How high the wheel centre stands. */
  readonly wheelHeight?: number | undefined;
}

/**
 * The suspension of a starter at one end of a car: points in mm, known as well as a guess is. What is known of the car makes
 * it larger or smaller: its heights go with the wheel's, its widths with the track, and so do its lengths along the car, as an
 * arm's base goes with its length and not with the wheelbase, which says no more than where the rear axle stands.
 */
export function suspensionFromStarter(
  { kind, points, camber, toe }: Starter,
  axle: AxleName,
  { wheelbase = STARTER_WHEELBASE, track, wheelHeight }: Known = {},
): Suspension {
  const behind = axle === 'rear' ? wheelbase : 0;
  const [, outboard, up] = points.wheelCentre!;
  const wide = track === undefined ? 1 : track / 2 / outboard;
  const high = wheelHeight === undefined ? 1 : wheelHeight / up;
  const placed = Object.entries(points).map(
    ([name, [x, y, z]]) => [name, [x * wide - behind, y * wide, z * high]] as const,
  );
  return { kind, points: Object.fromEntries(placed), camber, toe, tolerance: STARTER_TOLERANCE };
}
