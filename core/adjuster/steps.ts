/** Positions that are multiples of a step. */
import type { Position } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { tidy } from '../units/plain.ts';

/** More than any adjuster has, and as many as can be gone through at once. */
export const MOST_POSITIONS = 10_000;

/** Multiples of `step` within [low, high], ascending, 0 among them if it is within. @throws InputError of too many */
export function multiples(step: number, low: number, high: number): number[] {
  const { first, count } = counted(step, low, high);
  if (count > MOST_POSITIONS) {
    throw new InputError('step', step, { is: 'step', least: leastStep(low, high), most: MOST_POSITIONS, unit: '' });
  }
  return Array.from({ length: count }, (_, i) => tidy((first + i) * step));
}

/** How many multiples there are, without making them. */
function counted(step: number, low: number, high: number): { readonly first: number; readonly count: number } {
  const slack = slackOf(low, high);
  const first = Math.ceil((low - slack) / step);
  return { first, count: Math.max(0, Math.floor((high + slack) / step) - first + 1) };
}

const slackOf = (low: number, high: number): number => 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));

/** Whether it is so coarse that there are no more positions than can be gone through. */
export const isCoarse = (step: number, [low, high]: readonly [number, number]): boolean =>
  counted(step, low, high).count <= MOST_POSITIONS;

/** Nobody is told to use a finer one. */
const LEAST_STEP = 1e-6;

/** A step that is coarse enough, up to a figure that can be read. */
export function leastStep(low: number, high: number): number {
  const least = Math.max(LEAST_STEP, (high - low + 2 * slackOf(low, high)) / (MOST_POSITIONS - 2));
  const digit = 10 ** (Math.floor(Math.log10(least)) - 1);
  return Number((Math.ceil(least / digit) * digit).toPrecision(2));
}

/** mm by which more of a part is worth thinking of. */
export const MOST_FURTHER = 12;

/** Of what lies beyond an end no more than so many are tried. */
const MOST_BEYOND = 2000;

/**
 * Numbers beyond an end of a list, `step` by `step` up to `most`, nearest first, and how far beyond it each is. Of a very
 * fine step several at a time.
 */
export function onwards(positions: readonly Position[], end: 1 | -1, fine: number, most: number) {
  const step = fine * Math.max(1, Math.ceil(most / fine / MOST_BEYOND - 1e-9));
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
