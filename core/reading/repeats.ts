/**
 * How well a gauge repeats, from readings of the same state: pooled over cars and wheels, with the usual figure as what is
 * known before. Of n readings of one angle the sum of squares about their mean has n − 1 degrees of freedom; those of all
 * groups add up, and the usual variance counts as `PRIOR` more: the mean of a scaled inverse χ² (any text on Bayesian
 * statistics, such as A. Gelman et al., Bayesian Data Analysis, ch. 2; from memory).
 */
import type { Gauge, Reading } from '../contract.ts';
import { CORNERS } from '../corners.ts';
import { referenceOf } from './toe-reference.ts';

export type GaugeAngle = 'camber' | 'caster' | 'toe';
const ANGLES = ['camber', 'caster', 'toe'] as const satisfies readonly GaugeAngle[];

/** Degrees of freedom that the usual figure counts for. Trade practice, no source. */
const PRIOR = 8;
/** Standard deviations off the middle of its group beyond which a figure was mistyped, and is no repeat. */
const WILD = 6;

/** What repeats tell of one angle. */
export interface Repeat {
  /** One standard deviation, degrees, with the usual figure counted in. */
  readonly deviation: number;
  /** Degrees of freedom of the repeats alone: readings beyond the first of each group. */
  readonly count: number;
}

/**
 * @param groups readings between which nothing was moved, each of one car in one go; degrees
 * @param usual one standard deviation of each angle, degrees
 */
export function repeatsOf(groups: readonly (readonly Reading[])[], usual: Gauge): Readonly<Record<GaugeAngle, Repeat>> {
  const told = ANGLES.map((angle) => {
    let [squares, count] = [0, 0];
    for (const group of groups) {
      for (const corner of CORNERS) {
        const [first] = group;
        // Toe against another line is another figure.
        const alike = group.filter(
          (one) =>
            angle !== 'toe' ||
            (referenceOf(one) === referenceOf(first!) && (one.steeringWheel ?? 0) === (first!.steeringWheel ?? 0)),
        );
        const values = alike.flatMap((one) => one[corner]?.[angle] ?? []);
        const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
        if (values.length < 2 || values.some((x) => Math.abs(x - mean) > WILD * usual[angle])) continue;
        squares += values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
        count += values.length - 1;
      }
    }
    const deviation = Math.sqrt((PRIOR * usual[angle] ** 2 + squares) / (PRIOR + count));
    return [angle, { deviation, count }] as const;
  });
  return Object.fromEntries(told) as unknown as Record<GaugeAngle, Repeat>;
}
