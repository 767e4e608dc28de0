/** Predicted against measured, wheel by wheel or axle by axle: which angles parted by more than gauge and dimensions explain. */
import type { Plan, Reading, Spec, WheelReading, Window } from '../../core/contract.ts';
import { AXLES, isAxle } from '../../core/corners.ts';
import { angleOf } from '../../core/reading/axle-angles.ts';
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
  return fields.flatMap((field) => {
    const { where, angle } = field;
    const value = angleOf(measured, where, angle);
    if (value === undefined) return [];
    const expected = predicted && angleOf(predicted, where, angle);
    const spread = spreadOf(field, deviation);
    const window = windowOf(spec, field);
    const before = found && angleOf(found, where, angle);
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

/** Of a total: its wheels part from their predictions independently of one another. */
function spreadOf({ where, angle }: Field, deviation: Plan['deviation'] = {}): number | undefined {
  if (!isAxle(where)) return deviation[where]?.[angle as keyof WheelReading];
  if (angle === 'pinionAngle' || angle === 'lateral') return deviation[where]?.[angle];
  const [left, right] = AXLES[where].map((corner) => deviation[corner]?.toe);
  return left === undefined || right === undefined ? undefined : Math.hypot(left, right);
}
