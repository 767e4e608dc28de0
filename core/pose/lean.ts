/**
 * How wheels lean in what carries them, so that a pose shows what was read: camber and toe that the spin axis is turned by, given
 * where a tapered shim would be. The points stay, so that the mechanism need not be compiled anew.
 */
import type { Mechanism } from './mechanism.ts';
import { ANGLES_A_WHEEL, CAMBER, TOE } from './numbers.ts';
import { SPIN_CAMBER, SPIN_TOE } from './wheel.ts';

/** Degrees within which the model shows what was read; each round gains several digits. */
const CLOSE = 1e-9;
const ROUNDS = 12;

/** An angle by which a wheel leans: which of the assembly's numbers it is, and the parameter that turns the spin axis. */
export interface Lean {
  readonly number: number;
  readonly parameter: number;
}

/** Camber and toe of each wheel, of those that were read; none where no geometry carries them. @param read NaN where not */
export function leansOf({ linkage: { wheels, kind } }: Mechanism, read: ArrayLike<number>): readonly Lean[] {
  if (kind.points.length === 0) return [];
  const all = wheels.flatMap(({ angles }, w) => [
    { number: ANGLES_A_WHEEL * w + CAMBER, parameter: angles + SPIN_CAMBER },
    { number: ANGLES_A_WHEEL * w + TOE, parameter: angles + SPIN_TOE },
  ]);
  return all.filter(({ number }) => !Number.isNaN(read[number]!));
}

/**
 * @param params of the pose at which they were read
 * @returns degrees for each of the leans; nothing where there is no pose
 */
export function leanAt(
  mechanism: Mechanism,
  params: Float64Array,
  leans: readonly Lean[],
  read: ArrayLike<number>,
): Float64Array | undefined {
  const by = new Float64Array(leans.length);
  const angles = new Float64Array(mechanism.numbers);
  for (let round = 0; round < ROUNDS; round++) {
    if (!mechanism.angles(leaning(params.slice(), leans, by), angles)) return undefined;
    let off = 0;
    for (const [i, { number }] of leans.entries()) {
      const more = read[number]! - angles[number]!;
      by[i]! += more;
      off = Math.max(off, Math.abs(more));
    }
    if (off < CLOSE) break;
  }
  return by;
}

/** Turns the spin axes, in place. */
export function leaning(params: Float64Array, leans: readonly Lean[], by: Float64Array): Float64Array {
  for (let i = 0; i < leans.length; i++) params[leans[i]!.parameter]! += by[i]!;
  return params;
}
