/** Predicted against measured, wheel by wheel: which angles parted by more than gauge and dimensions explain. */
import type { Angle, Corner, Plan, Reading, Spec, Window } from '../../core/contract.ts';
import type { VerdictState } from '../parts/verdict.tsx';
import type { Field } from './fields.ts';
import { verdictOf, windowOf } from './judge.ts';

export interface Compared {
  readonly corner: Corner;
  readonly angle: Angle;
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
  return fields.flatMap(({ corner, angle }) => {
    const value = measured[corner]?.[angle];
    if (value === undefined) return [];
    const expected = predicted?.[corner]?.[angle];
    const spread = deviation?.[corner]?.[angle];
    const window = windowOf(spec, corner, angle);
    const before = found?.[corner]?.[angle];
    const gap = expected === undefined || spread === undefined ? 0 : value - expected;
    return {
      corner,
      angle,
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
