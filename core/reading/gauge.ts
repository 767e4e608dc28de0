import { type AxleName, CORNERS, type Gauge, type Reading } from '../contract.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** The same of a good inclinometer on a pinion flange, degrees, and of a tape or plumb line to the frame, mm. */
export const DEFAULT_AXLE_GAUGE = { pinionAngle: 0.1, lateral: 0.5 } as const;

/**
 * Of each angle the widest scatter that anything had which it was read with: what one gauge is taken for where readings off
 * the rack, by string and by level are taken together.
 */
export function roughest(gauge: Required<Gauge>, readings: readonly Reading[]): Required<Gauge> {
  const all = readings.flatMap(({ methods }) => methods ?? []);
  const wheels = all.flatMap((one) => CORNERS.flatMap((corner) => one[corner] ?? []));
  const axles = all.flatMap((one) => (['front', 'rear'] satisfies AxleName[]).flatMap((axle) => one[axle] ?? []));
  const ofWheels = (angle: 'camber' | 'caster' | 'toe') => most(gauge[angle], wheels, angle);
  const ofAxles = (angle: 'pinionAngle' | 'lateral') => most(gauge[angle], axles, angle);
  return {
    ...{ camber: ofWheels('camber'), caster: ofWheels('caster'), toe: ofWheels('toe') },
    ...{ pinionAngle: ofAxles('pinionAngle'), lateral: ofAxles('lateral') },
  };
}

const most = <A extends string>(
  own: number,
  measured: readonly Readonly<Partial<Record<A, { readonly sd: number }>>>[],
  angle: A,
): number => Math.max(own, ...measured.map((one) => one[angle]?.sd ?? 0));
