import type { Gauge } from '../contract.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** The same of a good inclinometer on a pinion flange, degrees, and of a tape or plumb line to the frame, mm. */
export const DEFAULT_AXLE_GAUGE = { pinionAngle: 0.1, lateral: 0.5 } as const;
