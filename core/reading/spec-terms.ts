/** A spec as a flat list of windows: what the planner sums over and what `assess` judges. */
import { type AxleName, CORNERS, type Corner, type Spec, type WheelSpec, type Window } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { InputError } from '../input-error.ts';
import { AXLE_ANGLES } from './axle-angles.ts';

export const WHEEL_ANGLES = ['camber', 'caster', 'toe'] as const satisfies readonly (keyof WheelSpec)[];

/** A window with its aim settled, degrees. */
export interface AimedWindow {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
  /** Half its width. */
  readonly half: number;
}
export interface SpecTerm {
  readonly where: Corner | AxleName;
  readonly angle: string;
  readonly window: AimedWindow;
}

/** Sums of binary fractions must not put a value on its limit out of the window. Degrees. */
export const EDGE_NOISE = 1e-9;

/** Degrees outside the window: + above `high`, − below `low`, 0 within. */
export function outside(value: number, { low, high }: Pick<Window, 'low' | 'high'>): number {
  if (value > high + EDGE_NOISE) return value - high;
  return value < low - EDGE_NOISE ? value - low : 0;
}

/** The window of one wheel: its side's own where the spec has one, else the axle's. */
export function windowFor(spec: Spec, corner: Corner, angle: keyof WheelSpec): Window | undefined {
  const [axle, side] = placeOf(corner);
  return spec[axle]?.[side]?.[angle] ?? spec[axle]?.[angle];
}

/**
 * Every window of a spec, wheels first, then axles.
 * @throws InputError naming, for instance, `spec.front.camber.low`.
 */
export function specTerms(spec: Spec): readonly SpecTerm[] {
  const wheels = CORNERS.flatMap((corner) => {
    const [axle, side] = placeOf(corner);
    return WHEEL_ANGLES.flatMap((angle) => {
      const own = spec[axle]?.[side]?.[angle] ? `${side}.` : '';
      return term(corner, angle, windowFor(spec, corner, angle), `spec.${axle}.${own}${angle}`);
    });
  });
  const axles = (['front', 'rear'] as const).flatMap((axle) =>
    AXLE_ANGLES.flatMap((angle) => term(axle, angle, spec[axle]?.[angle], `spec.${axle}.${angle}`)),
  );
  return [...wheels, ...axles];
}

function placeOf(corner: Corner): readonly [AxleName, 'left' | 'right'] {
  const axle = AXLES.front.includes(corner) ? 'front' : 'rear';
  return [axle, AXLES[axle][0] === corner ? 'left' : 'right'];
}

function term(where: SpecTerm['where'], angle: string, window: Window | undefined, field: string): SpecTerm[] {
  return window ? [{ where, angle, window: aimed(window, field) }] : [];
}

/**
 * The window with its aim (default: its middle) and half width.
 * @throws InputError when a limit is not finite, `low` is not below `high`, or the aim is outside.
 */
export function aimed({ low, aim, high }: Window, field: string): AimedWindow {
  const finite = 'a finite number of degrees';
  if (!Number.isFinite(low)) throw new InputError(`${field}.low`, low, finite);
  if (!Number.isFinite(high)) throw new InputError(`${field}.high`, high, finite);
  if (low >= high) throw new InputError(`${field}.low`, low, `a number below high, ${high}`);
  const middle = aim ?? (low + high) / 2;
  if (!(middle >= low && middle <= high)) {
    throw new InputError(`${field}.aim`, aim, `a number from low to high, ${low} to ${high}`);
  }
  return { low, aim: middle, high, half: (high - low) / 2 };
}
