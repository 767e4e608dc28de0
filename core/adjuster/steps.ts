/** Positions that are multiples of a step. */
import type { Position } from '../contract.ts';
import { tidy } from '../units/plain.ts';

/** Multiples of `step` within [low, high], ascending, 0 among them if it is within. */
export function multiples(step: number, low: number, high: number): number[] {
  const slack = 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));
  const first = Math.ceil((low - slack) / step);
  const last = Math.floor((high + slack) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => tidy((first + i) * step));
}

/** mm by which more of a part is worth thinking of. */
export const MOST_FURTHER = 12;

/** Numbers beyond an end of a list, `step` by `step` up to `most`, nearest first, and how far beyond it each is. */
export function onwards(positions: readonly Position[], end: 1 | -1, step: number, most: number) {
  const last = (end > 0 ? positions.at(-1) : positions[0]) as number;
  const count = Math.floor(most / step + 1e-9);
  return Array.from({ length: count }, (_, i) => {
    const by = tidy((i + 1) * step);
    return { position: tidy(last + end * by), by };
  });
}

/** Whether a number is within [low, high], binary noise forgiven. */
export const within = (x: unknown, low: number, high: number): x is number =>
  typeof x === 'number' && x >= low - 1e-6 && x <= high + 1e-6;

/** One step up from a position; where that is beyond the highest, the one that ends at it. */
export function stepFrom(position: number, step: number, high: number): { readonly from: number; readonly to: number } {
  const to = position + step;
  return to <= high + 1e-9 ? { from: position, to } : { from: position - step, to: position };
}
