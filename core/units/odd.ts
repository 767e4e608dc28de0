import type { Angle } from '../contract.ts';
import { formatAngle } from './format.ts';

/** What a road car shows on a rack, wide enough for a lowered, lifted or bent one. Trade practice, no source. */
const USUAL: Readonly<Record<Angle, readonly [number, number]>> = {
  camber: [-6, 6],
  caster: [-4, 14],
  toe: [-2, 2],
  sai: [2, 20],
};

/**
 * A question to ask about an unlikely value (degrees), or nothing. It advises: the value is taken all the same.
 * `odd('camber', 12)` → "Camber 12.00° is unusual (mostly −6.00 to 6.00). Is it right?"
 */
export function odd(angle: Angle, value: number): string | undefined {
  const [low, high] = USUAL[angle];
  if (value >= low && value <= high) return undefined;
  const name = angle === 'sai' ? 'SAI' : angle.charAt(0).toUpperCase() + angle.slice(1);
  const usual = `${formatAngle(low)} to ${formatAngle(high)}`;
  return `${name} ${formatAngle(value, { mark: true })} is unusual (mostly ${usual}). Is it right?`;
}
