/**
 * Run-out compensation: a rim or a clamp that does not run true adds A·cos(θ − φ) to what a gauge on it reads with the wheel
 * turned to θ. Two readings half a turn apart have it with opposite signs, so that their mean is free of it; four, a quarter
 * apart, show its size and where it stands too, and by how far the means of the two pairs differ how well all that was read.
 */
import { atan2, degrees } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, scatterOf } from './spread.ts';
import { listed } from './within.ts';

/** What is left without it, and what it was. In the unit of the readings. */
export interface RunOut {
  readonly value: Measured;
  /** Half of the most that two readings of the wheel would differ by; of two readings the least that it can be. */
  readonly runOut: number;
  /** Degrees of the wheel at which it adds most; of four readings alone. */
  readonly at?: number;
  /** How far the means of the two pairs are apart; of four readings alone. */
  readonly disagree?: number;
}

/**
 * What a gauge would read on a wheel that runs true, from readings of one that does not.
 * @param readings with the wheel at 0 and half a turn, or at 0, a quarter, half and three quarters
 * @param sd one standard deviation of a reading
 * @throws InputError naming `readings` where they are not two or four, or run-out cannot be why they differ
 */
export function withoutRunOut(readings: readonly number[], sd: number = USUAL_SCATTER.level): RunOut {
  scatterOf('sd', sd);
  if (!listed('readings', readings).every(Number.isFinite))
    throw new InputError('readings', readings, { is: 'finite' });
  const value = {
    value: readings.reduce((sum, x) => sum + x, 0) / readings.length,
    sd: sd / Math.sqrt(readings.length),
  };
  if (readings.length === 2) return { value, runOut: Math.abs(readings[0]! - readings[1]!) / 2 };
  if (readings.length !== 4) throw new InputError('readings', readings.length, { is: 'two-or-four' });
  const [a, b, c, d] = readings as [number, number, number, number];
  const [x, y] = [(a - c) / 2, (b - d) / 2];
  const disagree = Math.abs((a + c) / 2 - (b + d) / 2);
  // Each mean of two has sd/√2, their difference sd: beyond that a reading was off.
  return {
    value: { ...value, sd: Math.hypot(value.sd, Math.max(0, disagree - 2 * sd) / 2) },
    runOut: Math.hypot(x, y),
    at: (degrees(atan2(y, x)) + 360) % 360,
    disagree,
  };
}
