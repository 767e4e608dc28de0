import type { Angle } from '../contract.ts';

/** What a road car shows on a rack, wide enough for a lowered, lifted or bent one. Trade practice, no source. */
const USUAL: Readonly<Record<Angle, readonly [low: number, high: number]>> = {
  camber: [-6, 6],
  caster: [-4, 14],
  toe: [-2, 2],
  sai: [2, 20],
};

/** What a value (degrees) mostly is, where it is not within that: to be asked about. It is taken all the same. */
export function unusual(angle: Angle, value: number): readonly [low: number, high: number] | undefined {
  const usual = USUAL[angle];
  return value >= usual[0] && value <= usual[1] ? undefined : usual;
}
