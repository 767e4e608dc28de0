/**
 * What is left unknown after moves by mark and by rack, against the same in matrices by mathjs: an unknown u adds S·u, and
 * turning until number a shows what is planned applies I − k·aᵀ/(aᵀk) and adds the gauge's noise along k/(aᵀk).
 */
import { add, identity, type Matrix, matrix, multiply, subtract, transpose } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { Carried, type MoveSpread } from '../../../../core/plan/chance/carried.ts';
import { between, stream } from '../../../tools/random-cars.ts';

const SIZE = 3;
const COORDINATES = 5;
const column = (values: ArrayLike<number>): Matrix => matrix(Array.from(values, (value) => [value]));

describe.each([1, 2, 3, 4, 5])('moves of seed %i', (seed) => {
  const next = stream(seed);
  const some = (count: number): Float64Array => Float64Array.from({ length: count }, () => between(next, -1, 1));
  const moves = Array.from({ length: 4 }, () => ({
    ...{ slopes: some(COORDINATES * SIZE), errors: [some(SIZE)], gain: some(SIZE) },
    ...{ at: Math.floor(between(next, -1, SIZE)), sigma: between(next, 0.01, 0.1) },
  }));
  const read = Array.from({ length: SIZE }, (_, k) =>
    Float64Array.from({ length: SIZE }, (_, i) => (i === k ? 0.1 : 0)),
  );

  it('are carried as the matrices say', () => {
    const carried = new Carried(SIZE, COORDINATES, read);
    let shared = matrix(Array.from({ length: SIZE }, () => new Array<number>(COORDINATES).fill(0)));
    let own = multiply(0.01, identity(SIZE)) as Matrix;
    for (const { at, sigma, ...move } of moves) {
      const { slopes, errors, gain } = move as Required<MoveSpread>;
      const rows = Array.from({ length: SIZE }, (_, k) =>
        Array.from({ length: COORDINATES }, (_, c) => slopes[c * SIZE + k]!),
      );
      shared = add(shared, matrix(rows)) as Matrix;
      if (at < 0) {
        carried.byMark(move);
        own = add(own, multiply(column(errors[0]!), transpose(column(errors[0]!)))) as Matrix;
        continue;
      }
      carried.byRack(move, at, sigma);
      const along = column(gain.map((one) => one / gain[at]!));
      const watched = transpose(column(Array.from({ length: SIZE }, (_, k) => (k === at ? 1 : 0))));
      const takes = subtract(identity(SIZE), multiply(along, watched)) as Matrix;
      shared = multiply(takes, shared);
      own = add(
        multiply(multiply(takes, own), transpose(takes)),
        multiply(sigma * sigma, multiply(along, transpose(along))),
      ) as Matrix;
    }
    const expected = (add(multiply(shared, transpose(shared)), own) as Matrix).toArray().flat() as number[];
    const covariance = carried.covariance();
    for (const [k, value] of expected.entries()) expect(covariance[k]).toBeCloseTo(value, 10);
    expect(carried.sigma(1)).toBeCloseTo(Math.sqrt(expected[SIZE + 1]!), 10);
  });

  it('leave the number that was watched last as uncertain as the gauge, whatever was before', () => {
    const carried = new Carried(SIZE, COORDINATES, read);
    for (const move of moves) carried.byMark(move);
    carried.byRack(moves[0]!, 2, 0.03);
    expect(carried.sigma(2)).toBeCloseTo(0.03, 12);
  });
});
