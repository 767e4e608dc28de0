/**
 * What is not known of some numbers while moves are made one after another. Each unknown has a column: what one standard
 * deviation of it adds to each number. A move that goes by its mark adds its own columns. A move that goes by the rack,
 * turned until a number reads as planned, takes away what was not known of that number, whatever brought it, and carries
 * it to the others in the proportion in which the adjuster moves them; what is left is the gauge's own noise.
 *
 * The numbers may be an assembly's angles, or sums of them that windows are about.
 */

import { addSquare } from './squares.ts';

/** A move as it adds to what is not known; degrees, number by number. */
export interface MoveSpread {
  /** What one standard deviation of each coordinate adds by it, coordinate by coordinate. */
  readonly slopes: Float64Array;
  /** What its own inexactness adds where it goes by its mark. */
  readonly errors: readonly Float64Array[];
  /** What turning it on adds, in any unit: only proportions count. Absent: it always goes by its mark. */
  readonly gain?: Float64Array;
}

export class Carried {
  /** Of the coordinates, one after another. */
  readonly #slopes: Float64Array;
  /** Covariance of all else, row by row: what only one reading, or one move, has brought. */
  readonly #own: Float64Array;
  readonly #shares: Float64Array;

  /**
   * @param size how many numbers
   * @param coordinates how many unknowns the moves share
   * @param read what one standard deviation of each reading that the plan starts from adds
   */
  constructor(
    private readonly size: number,
    coordinates: number,
    private readonly read: readonly Float64Array[],
  ) {
    this.#slopes = new Float64Array(coordinates * size);
    this.#own = new Float64Array(size * size);
    this.#shares = new Float64Array(size);
    this.begin();
  }

  /** As it was read, before any move: to be used again where it is asked for thousands of times. */
  begin(): void {
    this.#slopes.fill(0);
    this.#own.fill(0);
    for (let i = 0; i < this.read.length; i++) addSquare(this.#own, this.read[i]!, 0, this.size);
  }

  byMark(move: MoveSpread): void {
    this.#add(move.slopes);
    for (const error of move.errors) addSquare(this.#own, error, 0, this.size);
  }

  /**
   * @param at the number that is watched
   * @param sigma of the gauge that shows it
   * @returns how far the number would have been off by the mark: one standard deviation of what the turning makes up for
   */
  byRack(move: MoveSpread, at: number, sigma: number): number {
    this.#add(move.slopes);
    const before = this.sigma(at);
    const shares = this.#shares;
    for (let k = 0; k < shares.length; k++) shares[k] = move.gain![k]! / move.gain![at]!;
    this.#take(this.#slopes, at, 1);
    // Of a covariance both the rows and the columns.
    this.#take(this.#own, at, 1);
    this.#take(this.#own, at, this.size);
    for (let i = 0; i < shares.length; i++) {
      for (let j = 0; j < shares.length; j++) this.#own[this.size * i + j]! += sigma * sigma * shares[i]! * shares[j]!;
    }
    return before;
  }

  /** How far a number is off by now: one standard deviation. */
  sigma(at: number): number {
    return Math.sqrt(this.variance(at));
  }

  variance(at: number): number {
    let sum = Math.max(0, this.#own[(this.size + 1) * at]!);
    for (let k = at; k < this.#slopes.length; k += this.size) sum += this.#slopes[k]! ** 2;
    return sum;
  }

  /** Covariance of all numbers, row by row. */
  covariance(): Float64Array {
    const covariance = this.#own.slice();
    for (let at = 0; at < this.#slopes.length; at += this.size) addSquare(covariance, this.#slopes, at, this.size);
    return covariance;
  }

  #add(slopes: Float64Array): void {
    for (let k = 0; k < slopes.length; k++) this.#slopes[k]! += slopes[k]!;
  }

  /** Takes what is off of the watched number away, by the shares in which the others go with it. @param step from number to number */
  #take(from: Float64Array, at: number, step: number): void {
    const { size } = this;
    const shares = this.#shares;
    for (let n = 0; n < from.length / size; n++) {
      const first = step === 1 ? n * size : n;
      const off = from[first + at * step]!;
      for (let k = 0; k < size; k++) from[first + k * step]! -= shares[k]! * off;
    }
  }
}
