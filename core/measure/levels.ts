/** When a figure is off enough to mean something, and what is left of a reading without what the adjusters have in it. */
import type { Angle, WheelReading, Window } from '../contract.ts';
import type { Level } from '../said.ts';

/** Low and high of a window, degrees. */
export type Limits = Pick<Window, 'low' | 'high'>;

/** Degrees that an angle has to be off before it means something. Trade practice, no source. */
export const NOTICEABLE = 0.75;

export const middle = ({ low, high }: Limits): number => (low + high) / 2;

/** Off only where it is out of the window and off its middle by what means something. */
export function levelIn(value: number, { low, high }: Limits): Level {
  const off = value - middle({ low, high });
  if (value > high && off > NOTICEABLE) return 'high';
  return value < low && off < -NOTICEABLE ? 'low' : 'ok';
}

/** A wheel as it would read with its adjusters at their references. */
export function less(read: WheelReading = {}, share: WheelReading = {}): WheelReading {
  const left = (Object.keys(read) as Angle[]).map((angle) => [angle, read[angle]! - (share[angle] ?? 0)]);
  return Object.fromEntries(left);
}
