/** Where on an adjuster's travel a full solve is made, and how the rest follows from there. */
import type { Position } from '../../contract.ts';
import type { Axis } from '../states/axis.ts';

/** Positions of one axis in the order of their numbers, labels as they are listed: all of them, or those about one. */
export interface Ranked {
  readonly axis: Axis;
  /** Which of the axis's positions has each rank. */
  readonly digits: Uint16Array;
  /** The rank of the one that the others are about. */
  readonly middle: number;
  /** Whether ranks lie along a travel. */
  readonly isNumeric: boolean;
}

/** Some ranks side by side: `first`…`last`. */
export type Stretch = readonly [first: number, last: number];

/**
 * @param about the position that the others are about, by its digit
 * @param within how many ranks to either side
 */
export function ranked(axis: Axis, about = axis.current, within = Number.POSITIVE_INFINITY): Ranked {
  const { positions } = axis;
  const isNumeric =
    positions.every((position) => typeof position === 'number') && typeof axis.adjuster.reference === 'number';
  const all = Uint16Array.from(positions.keys());
  // A stand between marks comes last among the positions: it is put where it belongs.
  if (isNumeric) all.sort((a, b) => (positions[a] as number) - (positions[b] as number));
  const at = all.indexOf(about);
  // Labels have no neighbours.
  const digits = isNumeric ? all.slice(Math.max(0, at - within), at + within + 1) : all;
  return { axis, digits, middle: digits.indexOf(about), isNumeric };
}

/** Positions of a stretch that are solved, its own or between them, and what each counts at each rank of the stretch. */
export interface Nodes {
  readonly places: readonly Position[];
  /** Rank by rank, node by node. */
  readonly weights: Float64Array;
}

/** @param most Chebyshev nodes along a stretch of more positions */
export function nodesOf({ axis, digits, isNumeric }: Ranked, [first, last]: Stretch, most: number): Nodes {
  const positions = Array.from(digits.subarray(first, last + 1), (digit) => axis.positions[digit]!);
  if (!isNumeric || positions.length <= most) return { places: positions, weights: identity(positions.length) };
  const numbers = positions as number[];
  const places = chebyshev(numbers[0]!, numbers.at(-1)!, most);
  return { places, weights: lagrange(numbers, places) };
}

const chebyshev = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count }, (_, n) => {
    const x = Math.cos((Math.PI * (n + 0.5)) / count);
    return (low + high) / 2 + (x * (high - low)) / 2;
  });

const lagrange = (positions: readonly number[], nodes: readonly number[]): Float64Array =>
  Float64Array.from(
    positions.flatMap((x) =>
      nodes.map((node, n) =>
        nodes.reduce((weight, other, m) => (m === n ? weight : (weight * (x - other)) / (node - other)), 1),
      ),
    ),
  );

function identity(size: number): Float64Array {
  const weights = new Float64Array(size * size);
  for (let i = 0; i < size; i++) weights[i * (size + 1)] = 1;
  return weights;
}
