/** Positions of a tapered part that comes in several sizes: which one, and where its scale is turned to, as `0.5@90`. */
import type { Taper } from '../said.ts';
import { tidy } from '../units/plain.ts';

const FORM = /^([\d.]+)@(-?[\d.]+)$/;

/** Taper and angle of a position; nothing for one that has neither. */
export function taperAt(position: unknown): Taper | undefined {
  const match = FORM.exec(String(position));
  return match ? { taper: Number(match[1]), at: Number(match[2]) } : undefined;
}

export const taperPosition = ({ taper, at }: Taper): string => `${taper}@${tidy(at)}`;

/** Every size at every mark. */
export const taperPositions = (tapers: readonly number[], marks: number): string[] =>
  tapers.flatMap((taper) => Array.from({ length: marks }, (_, i) => taperPosition({ taper, at: (i * 360) / marks })));

/** Whether it is one of the sizes, turned to some angle. */
export function isTaperOf(position: unknown, tapers: readonly number[]): boolean {
  const disc = taperAt(position);
  return disc !== undefined && tapers.includes(disc.taper) && Number.isFinite(disc.at);
}
