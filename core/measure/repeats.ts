/**
 * How well a gauge repeats: readings of the same thing again and again, of one thing or of several. Pooled standard deviation:
 * the squares of all deviations from their own means over all readings less one for each mean (ISO 5725-2, repeatability).
 */
import { InputError } from '../input-error.ts';
import { listed } from './within.ts';

/** What repeated readings show. */
export interface Repeatability {
  /** One standard deviation of a reading, in the unit of the readings. */
  readonly sd: number;
  /** Readings less one for each thing that was read. */
  readonly freedom: number;
  /** One standard deviation of `sd` itself, as a share of it: 1/√(2·freedom). */
  readonly share: number;
}

/** No scatter is told from fewer readings of a thing. */
const LEAST = 2;

/**
 * One standard deviation of what was read again and again.
 * @param things readings of each thing, two at the least
 * @param most a scatter beyond this is no gauge but a mistake
 * @throws InputError naming the list, such as `things[0]`
 */
export function repeatability(things: readonly (readonly number[])[], most = Number.POSITIVE_INFINITY): Repeatability {
  let [squares, freedom] = [0, 0];
  listed('things', things).forEach((readings, i) => {
    listed(`things[${i}]`, readings);
    if (readings.length < LEAST) {
      throw new InputError(`things[${i}]`, readings.length, { is: 'readings', least: LEAST });
    }
    if (!readings.every(Number.isFinite)) throw new InputError(`things[${i}]`, readings, { is: 'finite' });
    const mean = readings.reduce((sum, x) => sum + x, 0) / readings.length;
    squares += readings.reduce((sum, x) => sum + (x - mean) ** 2, 0);
    freedom += readings.length - 1;
  });
  const sd = Math.sqrt(squares / freedom);
  if (sd > most) throw new InputError('things', sd, { is: 'scatter', most });
  return { sd, freedom, share: 1 / Math.sqrt(2 * freedom) };
}
