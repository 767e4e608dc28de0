/** Settings spread over all travels of an assembly that has too many to go through. */
import type { Axis } from '../states/axis.ts';

/** Every combination of a few positions of each adjuster, from end to end: so many at the most. By digits. */
export function lattice(axes: readonly Axis[], most: number): number[][] {
  const each = Math.max(2, Math.floor(most ** (1 / Math.max(1, axes.length))));
  let all: number[][] = [[]];
  for (const { positions, current } of axes) {
    const many = Math.min(each, positions.length);
    const some = Array.from({ length: many }, (_, i) =>
      many > 1 ? Math.round((i * (positions.length - 1)) / (many - 1)) : current,
    );
    all = all.flatMap((digits) => some.map((digit) => [...digits, digit]));
  }
  return all;
}

/** So many settings all over, in no order. By digits. */
export const scattered = (axes: readonly Axis[], count: number): number[][] =>
  Array.from({ length: count }, (_, k) =>
    axes.map(({ positions }, i) =>
      Math.floor((((k + 0.5) * Math.sqrt(PRIMES[i % PRIMES.length]!)) % 1) * positions.length),
    ),
  );

/** Multiples of their roots fill every stretch evenly, and each its own way. */
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];
