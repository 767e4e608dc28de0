/** Angles that belong to an axle: derived from its two wheels, never stored. */
import type { AxleName, AxleReading, Corner, Reading, WheelReading } from '../contract.ts';
import { AXLES, isAxle } from '../corners.ts';
import { crossHeight } from './ride-heights.ts';

/** (left toe − right toe)/2, degrees, + to the right: the thrust angle of a rear axle, steer-ahead of a front one. */
export const thrustOf = (left: number, right: number): number => (left - right) / 2;

export interface AxleAngles {
  /** left + right; + for toe-in. */
  readonly totalToe?: number;
  /** left − right. */
  readonly crossCamber?: number;
  /** left − right. */
  readonly crossCaster?: number;
  /** (left toe − right toe)/2, + to the right: the thrust angle of a rear axle, steer-ahead of a front one. */
  readonly thrustAngle?: number;
}

/**
 * Angles that belong to an axle, degrees: total toe left + right, cross camber and caster left − right, thrust angle (of a
 * front axle steer-ahead) half of left toe − right toe, + to the right. Signs as in the contract.
 * @param left, right wheel angles, degrees; what was not measured on both is absent from the answer
 */
export function axleAngles(left: WheelReading = {}, right: WheelReading = {}): AxleAngles {
  return {
    ...given('totalToe', left.toe, right.toe, (l, r) => l + r),
    ...given('crossCamber', left.camber, right.camber, (l, r) => l - r),
    ...given('crossCaster', left.caster, right.caster, (l, r) => l - r),
    ...given('thrustAngle', left.toe, right.toe, thrustOf),
  };
}

function given(
  name: keyof AxleAngles,
  left: number | undefined,
  right: number | undefined,
  derive: (left: number, right: number) => number,
): AxleAngles {
  return left === undefined || right === undefined ? {} : { [name]: derive(left, right) };
}

/** Included angle of a wheel: SAI + camber, degrees; absent unless both were measured. */
export function includedAngle({ camber, sai }: WheelReading = {}): number | undefined {
  return camber === undefined || sai === undefined ? undefined : sai + camber;
}

/**
 * Value, degrees (mm sideways, and of a height), of a wheel's or an axle's angle by the name that a spec or a reading gives
 * it; `rideHeight` of a corner and `crossHeight` of an axle too.
 */
export function angleOf(reading: Reading, where: Corner | AxleName, angle: string): number | undefined {
  if (!isAxle(where)) return angle === 'rideHeight' ? reading.rideHeights?.[where] : wheelAngle(reading[where], angle);
  if (angle === 'steeringWheel') return reading.steeringWheel;
  if (angle === 'crossHeight') return crossHeight(reading, where);
  const [left, right] = AXLES[where];
  const own = reading[where]?.[angle as keyof AxleReading];
  return own ?? axleAngles(reading[left], reading[right])[angle as keyof AxleAngles];
}

const wheelAngle = (wheel: WheelReading | undefined, angle: string): number | undefined =>
  wheel?.[angle as keyof WheelReading];
