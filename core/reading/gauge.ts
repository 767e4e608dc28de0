import type { Gauge } from '../contract.ts';

/** Trade practice on a rack in good order, no source: one standard deviation, degrees. */
export const DEFAULT_GAUGE: Gauge = { camber: 0.03, caster: 0.08, toe: 0.015 };
