/** What is measured with, and how well it repeats in a careful hand: one standard deviation. Trade practice, no source. */
import type { BENCH } from '../records/preferences.ts';

/** Something that is measured with. */
export type Instrument = keyof typeof BENCH;
/** One standard deviation of each, in its own unit. */
export type Scatter = Readonly<Record<Instrument, number>>;

/** As long as nobody has tried how well theirs repeats. */
export const USUAL_SCATTER: Scatter = {
  /** Across the car, from rim to rim. */
  tape: 0.7,
  /** From a string, a straight edge or a plumb line to a rim. */
  rule: 0.3,
  /** Camber gauge or digital level held on the rim. */
  level: 0.1,
  /** The scale of a turn plate. */
  plate: 0.3,
  /** Metres a kilometre. */
  slip: 0.3,
};
