/** A spec as a flat list of windows: what the planner sums over and what `assess` judges. */
import {
  AXLE_ANGLES,
  type AxleName,
  CORNERS,
  type Corner,
  type Spec,
  WHEEL_ANGLES,
  type WheelSpec,
  type Window,
} from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';

/** A window with its aim settled, degrees. */
export interface AimedWindow {
  readonly low: number;
  readonly aim: number;
  readonly high: number;
  /** Half its width. */
  readonly half: number;
  /** Nobody typed it. */
  readonly assumed?: true;
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

/** Every window of a validated spec, wheels first, then axles. */
export function specTerms(spec: Spec): readonly SpecTerm[] {
  const wheels = CORNERS.flatMap((corner) =>
    WHEEL_ANGLES.flatMap((angle) => term(corner, angle, windowFor(spec, corner, angle))),
  );
  const axles = (['front', 'rear'] as const).flatMap((axle) =>
    AXLE_ANGLES.flatMap((angle) => term(axle, angle, spec[axle]?.[angle])),
  );
  return [...wheels, ...axles];
}

function placeOf(corner: Corner): readonly [AxleName, 'left' | 'right'] {
  return [axleOf(corner), isLeft(corner) ? 'left' : 'right'];
}

function term(where: SpecTerm['where'], angle: string, window: Window | undefined): SpecTerm[] {
  return window ? [{ where, angle, window: aimed(window) }] : [];
}

/** The window with its aim (default: its middle) and half width. */
export function aimed({ low, aim, high, assumed }: Window): AimedWindow {
  return { low, aim: aim ?? (low + high) / 2, high, half: (high - low) / 2, ...(assumed && { assumed }) };
}
