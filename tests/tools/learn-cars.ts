/** Adjusters and a wheel of the tests of what readings teach. */
import type { Adjuster, Suspension } from '../../core/contract.ts';
import { LAYOUTS } from './random-cars.ts';

/** Half full, so that it goes either way. */
export const pack = (id: string, at: string, tolerance?: number): Adjuster => ({
  id,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0],
  sizes: [0.75],
  max: 15,
  reference: 7.5,
  ...(tolerance !== undefined && { tolerance }),
});

/** A turn of it does most in the middle of its travel and nothing at the end. */
export const cam = (id: string, at: string, tolerance: number): Adjuster => ({
  id,
  kind: 'eccentric-cam',
  at,
  direction: [0, 1, 0],
  eccentricity: 8,
  marks: 24,
  range: [-90, 90],
  reference: 0,
  tolerance,
});

/** @param tolerance ± mm of its points */
export const wishboneWithin = (tolerance: number): Suspension => ({
  kind: 'double-wishbone',
  points: LAYOUTS['double-wishbone'] as Suspension['points'],
  camber: -0.4,
  toe: 0.06,
  tolerance,
});
