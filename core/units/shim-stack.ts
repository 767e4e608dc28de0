/** Which shims make a thickness. Counted in whole steps that all sizes share, so that inch shims add up exactly. */
import { Decimal } from 'decimal.js';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { tidy } from './plain.ts';

/** Shims that make a thickness, or come nearest to it. */
export interface ShimStack {
  /** Whether the stack is the thickness asked for; else it is the nearest that the sizes make. */
  readonly exact: boolean;
  /** mm */
  readonly total: number;
  /** Thickest first. */
  readonly shims: readonly { readonly size: number; readonly count: number }[];
  readonly count: number;
}
export interface ShimStackOptions {
  /** Thickest stack allowed, mm. */
  readonly max?: number;
  /** Most shims allowed in it. */
  readonly maxCount?: number;
}

const THICKEST = 100;
const MOST_STEPS = 4_000_000;
const DECIMALS = 6;
const SIZE: Rule = { is: 'shim-size', low: 0.01, high: THICKEST, decimals: DECIMALS };

/**
 * The fewest shims of `sizes` (mm, any number of each) whose thicknesses add up to `thickness` mm; where none do, the
 * nearest total that is not above `max`: of two as near, the one with fewer shims.
 * @throws InputError naming `thickness`, `sizes[i]`, `max` or `maxCount`.
 */
export function shimStack(thickness: number, sizes: readonly number[], options: ShimStackOptions = {}): ShimStack {
  if (!(thickness >= 0 && thickness <= THICKEST)) {
    throw new InputError('thickness', thickness, { is: 'place', on: 'thickness', low: 0, high: THICKEST });
  }
  const { max = THICKEST * 2, maxCount = Number.POSITIVE_INFINITY } = options;
  if (!(max >= 0)) throw new InputError('max', max, { is: 'thickness' });
  if (!(maxCount >= 0)) throw new InputError('maxCount', maxCount, { is: 'shim-count' });
  const { steps, step } = inSteps(sizes);
  // Binary noise in a thickness that was computed is below a millionth of a millimetre.
  const target = new Decimal(thickness).toDecimalPlaces(DECIMALS).div(step);
  const highest = Math.min(
    target
      .plus(Math.max(...steps))
      .ceil()
      .toNumber(),
    new Decimal(Math.min(max, THICKEST * 2)).div(step).floor().toNumber(),
  );
  if (highest > MOST_STEPS)
    throw new InputError('sizes', sizes, { is: 'shared-step', step: (2 * THICKEST) / MOST_STEPS });
  const { fewest, last } = fewestCounts(steps, highest);
  const total = nearest(target.toNumber(), highest, (i) => fewest[i]! <= maxCount, fewest);
  return {
    exact: target.equals(total),
    total: step.times(total).toNumber(),
    shims: unwind(total, steps, last, sizes),
    count: fewest[total]!,
  };
}

/**
 * Every thickness that shims of `sizes` (mm, any number of each, `maxCount` in all) make from 0 to `max` mm, ascending.
 * @throws InputError naming `sizes` or `sizes[i]`
 */
export function shimTotals(sizes: readonly number[], max: number, maxCount = Number.POSITIVE_INFINITY): number[] {
  const { steps, step } = inSteps(sizes.map(tidy));
  const highest = new Decimal(tidy(max)).div(step).floor().toNumber();
  if (highest > MOST_STEPS)
    throw new InputError('sizes', sizes, { is: 'shared-step', step: (2 * THICKEST) / MOST_STEPS });
  const { fewest } = fewestCounts(steps, highest);
  const size = step.times(10 ** DECIMALS).toNumber();
  const totals: number[] = [];
  fewest.forEach((count, i) => {
    if (count !== NONE && count <= maxCount) totals.push((i * size) / 10 ** DECIMALS);
  });
  return totals;
}

/** The sizes as whole multiples of the largest step that they share. */
function inSteps(sizes: readonly number[]): { steps: readonly number[]; step: Decimal } {
  if (!Array.isArray(sizes) || sizes.length === 0 || sizes.length > 64) {
    throw new InputError('sizes', sizes, { is: 'shim-sizes', most: 64 });
  }
  const millionths = sizes.map((size, i) => {
    const refusal = () => new InputError(`sizes[${i}]`, size, SIZE);
    if (!(typeof size === 'number' && size >= 0.01 && size <= THICKEST)) throw refusal();
    const whole = new Decimal(size).times(10 ** DECIMALS);
    if (!whole.isInteger()) throw refusal();
    return whole.toNumber();
  });
  const shared = millionths.reduce(gcd);
  return { steps: millionths.map((m) => m / shared), step: new Decimal(shared).div(10 ** DECIMALS) };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

const NONE = 0xffff;

/** For every total up to `highest`: the fewest shims that make it, and the index of one of them. */
function fewestCounts(steps: readonly number[], highest: number): { fewest: Uint16Array; last: Uint8Array } {
  const fewest = new Uint16Array(highest + 1).fill(NONE);
  const last = new Uint8Array(highest + 1);
  fewest[0] = 0;
  for (const [i, size] of steps.entries()) {
    for (let total = size; total <= highest; total++) {
      const count = fewest[total - size]! + 1;
      if (count < fewest[total]!) {
        fewest[total] = count;
        last[total] = i;
      }
    }
  }
  return { fewest, last };
}

function nearest(target: number, highest: number, allowed: (i: number) => boolean, fewest: Uint16Array): number {
  let best = 0;
  for (let i = 1; i <= highest; i++) {
    if (fewest[i] === NONE || !allowed(i)) continue;
    const gain = Math.abs(best - target) - Math.abs(i - target);
    if (gain > 0 || (gain === 0 && fewest[i]! < fewest[best]!)) best = i;
  }
  return best;
}

function unwind(total: number, steps: readonly number[], last: Uint8Array, sizes: readonly number[]) {
  const counts = new Map<number, number>();
  for (let left = total; left > 0; ) {
    const i = last[left]!;
    counts.set(sizes[i]!, (counts.get(sizes[i]!) ?? 0) + 1);
    left -= steps[i]!;
  }
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size);
}
