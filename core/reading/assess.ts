import { type AxleName, CORNERS, type Corner, type Reading, type Spec } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { type AxleAngles, angleOf, axleAngles, includedAngle } from './axle-angles.ts';
import { type AimedWindow, EDGE_NOISE, outside, specTerms } from './spec-terms.ts';

/** `edge` is in the window, but within a tenth of the window's width of a limit. */
export type AngleState = 'in' | 'edge' | 'out-high' | 'out-low' | 'unmeasured';

/** One window of a spec and what was read for it. */
export interface AssessedAngle {
  readonly where: Corner | AxleName;
  /** As the spec names it: `camber`, …, `crossCaster`. */
  readonly angle: string;
  /** Degrees; absent when it was not measured. */
  readonly value?: number;
  readonly window: AimedWindow;
  readonly state: AngleState;
  /** Degrees outside the window: + above, − below, 0 within. */
  readonly by: number;
}
export interface Assessment {
  /** One for every window of the spec. */
  readonly angles: readonly AssessedAngle[];
  /** True when every angle of the spec was measured and is in its window. */
  readonly inWindow: boolean;
  /** SAI + camber, degrees, where both were measured. */
  readonly included: Readonly<Partial<Record<Corner, number>>>;
  /** Cross, total and thrust of both axles, degrees. */
  readonly axles: Readonly<Record<AxleName, AxleAngles>>;
}

const EDGE = 0.1;

/** How a reading stands against a spec. Takes validated input. */
export function assess(reading: Reading, spec: Spec): Assessment {
  const angles = specTerms(spec).map(({ where, angle, window }) => {
    const value = angleOf(reading, where, angle);
    return value === undefined
      ? ({ where, angle, window, state: 'unmeasured', by: 0 } as const)
      : { where, angle, value, window, ...stateIn(value, window) };
  });
  return {
    angles,
    inWindow: angles.every(({ state }) => state === 'in' || state === 'edge'),
    included: Object.fromEntries(
      CORNERS.map((corner) => [corner, includedAngle(reading[corner])]).filter(([, value]) => value !== undefined),
    ),
    axles: { front: ofAxle(reading, 'front'), rear: ofAxle(reading, 'rear') },
  };
}

/** State of a value in a window, and how far outside it is. Degrees. */
export function stateIn(value: number, window: Pick<AimedWindow, 'low' | 'high'>): { state: AngleState; by: number } {
  const by = outside(value, window);
  if (by !== 0) return { state: by > 0 ? 'out-high' : 'out-low', by };
  const room = Math.min(value - window.low, window.high - value);
  return { state: room <= EDGE * (window.high - window.low) + EDGE_NOISE ? 'edge' : 'in', by };
}

function ofAxle(reading: Reading, axle: AxleName): AxleAngles {
  const [left, right] = AXLES[axle];
  return axleAngles(reading[left], reading[right]);
}
