/** What a car's readings have taught of an assembly, as a plan counts with it. */
import { covarianceAfter, type Sighted, sightedOf } from '../../adjuster/measured.ts';
import { type Unknown, unknownsOf } from '../../adjuster/unknowns.ts';
import type { LearnedPart } from '../../contract.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { rootOf } from './cholesky.ts';

/** The name of an unknown in what is learned of a car: the corner's before its own. */
export const learnedName = ({ corners }: Pick<Assembly, 'corners'>, { side, name }: Unknown): string =>
  `${corners[side]}.${name}`;

/** What a car's readings have taught of an assembly; nothing where they have not. */
export const learnedAbout = (
  parts: readonly LearnedPart[] | undefined,
  { corners }: Pick<Assembly, 'corners'>,
): LearnedPart | undefined => parts?.find((one) => one.corners[0] === corners[0]);

/** The unknowns that something was learned of, in its order. */
export function learnedUnknowns({ unknowns }: LearnedPart, assembly: Assembly): readonly Unknown[] {
  const all = new Map(unknownsOf(assembly.sides).map((one) => [learnedName(assembly, one), one]));
  return unknowns.map((name) => all.get(name)!);
}

/**
 * The root of the covariance of some unknowns before anything was read, each in its own standard deviations: by the lengths
 * that were measured. Nothing where none were: they are independent.
 * @param more lengths that are taken for measured beside those
 */
export function rootBefore(
  { sides }: Pick<Assembly, 'sides'>,
  unknowns: readonly Unknown[],
  more: readonly Sighted[] = [],
): Float64Array | undefined {
  const lengths = [...sightedOf(sides, unknowns), ...more];
  return lengths.length > 0 ? rootOf(covarianceAfter(unknowns.length, lengths)) : undefined;
}

/**
 * The root of its covariance, each unknown in its standard deviations before anything was read.
 * @param more lengths that are taken for measured since
 */
export function rootOfPart(
  part: LearnedPart,
  unknowns: readonly Unknown[],
  more: readonly Sighted[] = [],
): Float64Array {
  return rootOf(covarianceAfter(unknowns.length, more, squareOf(part, unknowns)));
}

function squareOf({ covariance }: LearnedPart, unknowns: readonly Unknown[]): Float64Array {
  const size = unknowns.length;
  const square = new Float64Array(size * size);
  let at = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      const value = covariance[at++]! / (unknowns[i]!.sigma * unknowns[j]!.sigma);
      square[size * i + j] = value;
      square[size * j + i] = value;
    }
  }
  return square;
}
