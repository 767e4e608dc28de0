/**
 * What is not known of some numbers while moves are made one after another. Each unknown has a column: what one standard
 * deviation of it adds to each number. A move that goes by its mark adds its own columns. A move that goes by the rack,
 * turned until a number reads as planned, takes away what was not known of that number, whatever brought it, and carries
 * it to the others in the proportion in which the adjuster moves them; what is left is the gauge's own noise.
 *
 * The numbers may be an assembly's angles, or sums of them that windows are about.
 */

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
  readonly #alone: Float64Array[] = [];

  /**
   * @param size how many numbers
   * @param coordinates how many unknowns the moves share
   * @param read what one standard deviation of each reading that the plan starts from adds
   */
  constructor(
    private readonly size: number,
    coordinates: number,
    read: readonly Float64Array[],
  ) {
    this.#slopes = new Float64Array(coordinates * size);
    for (const column of read) this.#alone.push(column.slice());
  }

  byMark(move: MoveSpread): void {
    this.#add(move.slopes);
    for (const error of move.errors) this.#alone.push(error.slice());
  }

  /**
   * @param at the number that is watched
   * @param sigma of the gauge that shows it
   * @returns how far the number would have been off by the mark: one standard deviation of what the turning makes up for
   */
  byRack(move: MoveSpread, at: number, sigma: number): number {
    const { size } = this;
    this.#add(move.slopes);
    const before = this.sigma(at);
    const shares = move.gain!.map((gain) => gain / move.gain![at]!);
    const take = (from: Float64Array, first: number): void => {
      const off = from[first + at]!;
      for (let k = 0; k < size; k++) from[first + k]! -= shares[k]! * off;
    };
    for (let first = 0; first < this.#slopes.length; first += size) take(this.#slopes, first);
    for (const column of this.#alone) take(column, 0);
    this.#alone.push(shares.map((share) => share * sigma));
    return before;
  }

  /** How far a number is off by now: one standard deviation. */
  sigma(at: number): number {
    return Math.sqrt(this.variance(at));
  }

  variance(at: number): number {
    let sum = 0;
    for (let k = at; k < this.#slopes.length; k += this.size) sum += this.#slopes[k]! ** 2;
    for (const column of this.#alone) sum += column[at]! ** 2;
    return sum;
  }

  /** Covariance of all numbers, row by row. */
  covariance(): Float64Array {
    const { size } = this;
    const covariance = new Float64Array(size * size);
    const add = (from: Float64Array, first: number): void => {
      for (let i = 0; i < size; i++) {
        for (let j = 0; j < size; j++) covariance[size * i + j]! += from[first + i]! * from[first + j]!;
      }
    };
    for (let first = 0; first < this.#slopes.length; first += size) add(this.#slopes, first);
    for (const column of this.#alone) add(column, 0);
    return covariance;
  }

  #add(slopes: Float64Array): void {
    for (let k = 0; k < slopes.length; k++) this.#slopes[k]! += slopes[k]!;
  }
}
