/**
 * Predicted against measured, wheel by wheel or axle by axle: which angles parted by more than gauge and dimensions explain.
 * All are seen from the line that the measured front toe is against; where that cannot be told there is nothing to compare.
 */
import type { Plan, Reading, Spec, WheelReading, Window } from '../../core/contract.ts';
import { AXLES, isAxle } from '../../core/corners.ts';
import { angleOf } from '../../core/reading/axle-angles.ts';
import { angleAgainst, isAgainst, referenceOf } from '../../core/reading/toe-reference.ts';
import type { VerdictState } from '../parts/verdict.tsx';
import type { Field } from './fields.ts';
import { verdictOf, windowOf } from './judge.ts';

export interface Compared extends Field {
  readonly measured: number;
  readonly found?: number;
  readonly predicted?: number;
  /** One standard deviation of measured − predicted, degrees. */
  readonly deviation?: number;
  readonly window?: Window;
  readonly verdict: VerdictState;
  /** measured − predicted where that is more than two deviations. */
  readonly parted?: number;
}

/** Two deviations: one honest re-measure in twenty lies beyond. */
const BEYOND = 2;

export function compare(
  fields: readonly Field[],
  spec: Spec,
  measured: Reading,
  found: Reading | undefined,
  predicted: Reading | undefined,
  deviation: Plan['deviation'] | undefined,
): readonly Compared[] {
  const reference = referenceOf(measured);
  return fields.flatMap((field) => {
    const { where, angle } = field;
    const value = angleOf(measured, where, angle);
    // No move is predicted to change how high the body stands.
    if (value === undefined || angle === 'rideHeight') return [];
    const expected = predicted && angleAgainst(predicted, where, angle, reference);
    const isTurned = predicted !== undefined && isAgainst(where, angle) && referenceOf(predicted) !== reference;
    const spread = spreadOf(field, deviation, isTurned);
    const window = windowOf(spec, field);
    const before = found && angleAgainst(found, where, angle, reference);
    const gap = expected === undefined || spread === undefined ? 0 : value - expected;
    return {
      ...field,
      measured: value,
      verdict: window ? verdictOf(value, window) : ('unknown' as const),
      ...(window ? { window } : {}),
      ...(before === undefined ? {} : { found: before }),
      ...(expected === undefined ? {} : { predicted: expected }),
      ...(spread === undefined ? {} : { deviation: spread }),
      ...(spread !== undefined && Math.abs(gap) > BEYOND * spread ? { parted: gap } : {}),
    };
  });
}

/**
 * Of a total: its wheels part from their predictions independently of one another. So do front toe and the thrust angle, by
 * which one is turned that was predicted against the other line.
 */
function spreadOf({ where, angle }: Field, deviation: Plan['deviation'] = {}, isTurned = false): number | undefined {
  if (!isAxle(where)) {
    const own = deviation[where]?.[angle as keyof WheelReading];
    const rear = isTurned ? [deviation.LR?.toe ?? 0, deviation.RR?.toe ?? 0] : [];
    return own === undefined ? undefined : Math.hypot(own, ...rear.map((one) => one / 2));
  }
  if (angle === 'pinionAngle' || angle === 'lateral') return deviation[where]?.[angle];
  const [left, right] = AXLES[where].map((corner) => deviation[corner]?.toe);
  return left === undefined || right === undefined ? undefined : Math.hypot(left, right);
}
