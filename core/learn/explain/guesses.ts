/**
 * How often each plain cause is behind a re-measure, before anything is known of this one: guesses, in one place, each
 * against 1 for a reading that is off by what the gauge, the dimensions and the hand leave open. They decide only where
 * the figures do not. No source.
 */
import type { Cause } from '../../said.ts';

export const GUESSES: Readonly<Record<Cause, number>> = {
  noise: 1,
  // For each move that was made.
  'not-made': 0.01,
  'half-made': 0.003,
  'twice-made': 0.003,
  'wrong-way': 0.01,
  'other-side': 0.003,
  slipped: 0.005,
  reversed: 0.003,
  // For each adjuster that was moved on both sides.
  'sides-exchanged': 0.003,
  // For each figure that was typed.
  sign: 0.001,
  digits: 0.0005,
  decimal: 0.0005,
  misread: 0.0005,
  // For each pair of figures, and of wheels.
  swapped: 0.002,
  // For each wheel.
  bent: 0.002,
};

/** How far what slipped is mostly off, as a share of its travel: one standard deviation. */
export const SLIP = 0.1;
/** A figure that is nowhere near: one standard deviation, degrees. */
export const WILD = { camber: 1.5, caster: 2, toe: 1 } as const;
/** What a bent or worn part does to a wheel: the same. */
export const BENT = { camber: 0.7, caster: 1, toe: 0.5 } as const;

/**
 * Which of two readings a wrong figure is in, where nothing else tells: the one before has been looked at when it was planned
 * on.
 */
export const IN_READING = { before: 0.4, after: 0.6 } as const;
