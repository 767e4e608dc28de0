/**
 * A level zeroed by turning it round: as it leans, r₁ = γ + z; turned by 180° about the vertical, against the same place,
 * r₂ = −γ + z. Half the difference is the lean, whatever its zero; half the sum is that zero.
 */
import { InputError } from '../input-error.ts';
import type { Measured } from './spread.ts';
import { listed, within } from './within.ts';

/** What a level shows both ways round. */
export interface TurnedRound {
  /** Degrees, with one standard deviation of the mean as it is known from the scatter of its readings. */
  readonly angle: Measured;
  /** What it shows where nothing leans. */
  readonly zero: number;
  /** One standard deviation of a single reading, degrees. */
  readonly scatter: number;
}

/** Degrees that a level that lies still may scatter by; more is a hand that shakes or a sensor that jumps. Trade practice, no source. */
export const STEADY = 0.5;
/** Degrees that no sensor in a phone is better than, once it is zeroed: it bends, and it is not quite square. From memory, no source. */
const LEAST = 0.05;

/**
 * The lean that a level shows whatever its zero, from readings both ways round.
 * @param first, second readings the one way and the other, degrees; one each at the least
 * @throws InputError naming the list: none in it, or they are not steady
 */
export function turnedRound(first: readonly number[], second: readonly number[]): TurnedRound {
  const [a, b] = [settled('first', first), settled('second', second)];
  const freedom = first.length + second.length - 2;
  const scatter = freedom > 0 ? Math.sqrt((a.squares + b.squares) / freedom) : 0;
  const ofMeans = scatter * Math.sqrt(1 / first.length + 1 / second.length);
  return {
    angle: { value: (a.mean - b.mean) / 2, sd: Math.hypot(ofMeans / 2, LEAST) },
    zero: (a.mean + b.mean) / 2,
    scatter,
  };
}

/**
 * The mean of readings of a level that lies still.
 * @throws InputError where there are none, or they are not steady
 */
export function settled(
  field: string,
  readings: readonly number[],
): { mean: number; squares: number; scatter: number } {
  for (const one of listed(field, readings)) within(field, one, -180, 180, 'degrees');
  const mean = readings.reduce((sum, x) => sum + x, 0) / readings.length;
  const squares = readings.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  const scatter = Math.sqrt(squares / Math.max(1, readings.length - 1));
  const widest = Math.max(...readings) - Math.min(...readings);
  if (scatter > STEADY || widest > 6 * STEADY) throw new InputError(field, widest, { is: 'steady', within: STEADY });
  return { mean, squares, scatter };
}
