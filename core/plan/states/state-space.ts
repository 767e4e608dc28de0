/**
 * Every combination of positions that an assembly's adjusters can take, as angles that the rack would read there. An
 * assembly is one corner, or both corners of a rigid axle, which move together.
 *
 * Not all are solved: how far interpolation is off is measured beside it, and the search allows for several times that
 * and settles every candidate by a full solve. Interpolation chooses where to look, never what is answered.
 */
import type { Corner, Position, Settings } from '../../contract.ts';
import { InputError } from '../../input-error.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { ANGLES_A_WHEEL, LATERAL } from '../../pose/numbers.ts';
import { AngleTable } from './angle-table.ts';
import { axesOf } from './axis.ts';
import { Combinations, type Digits } from './combinations.ts';
import type { CornerStand } from './corner-stand.ts';
import { FullSolve } from './full-solve.ts';
import { Interpolation } from './interpolation.ts';
import { forbid, writeTie } from './limits.ts';

/** Where the ties of a corner begin among its angles. */
export const TIE = LATERAL + 1;

/** Where an angle of a corner stands among its assembly's numbers; those of the body come after all wheels'. */
export const placeAmong = (corners: readonly Corner[], corner: Corner, angle: number): number =>
  angle < ANGLES_A_WHEEL
    ? ANGLES_A_WHEEL * corners.indexOf(corner) + angle
    : ANGLES_A_WHEEL * corners.length + angle - ANGLES_A_WHEEL;

/** Of one corner; an assembly of two has half as many. */
export const MOST_STATES = 4e6;

/** Some states of very many, with their angles. */
export interface Listed {
  readonly digits: Digits;
  readonly angles: Float64Array;
  readonly slack: number;
}

export class StateSpace extends Combinations {
  readonly corners: readonly Corner[];
  /** Numbers a state: its angles, corner by corner, how a body on links stands, then each tie's value, corner by corner. */
  readonly stride: number;
  /** Angles as the rack would read them, degrees, then ties; NaN where no pose exists or a limit forbids it. */
  readonly values: Float64Array;
  /** Minutes of work that a state takes. */
  readonly effort: Float32Array;
  /** Most that an angle here may differ from a full solve, degrees. */
  readonly slack: number;
  readonly #full: FullSolve;
  readonly #exact = new Map<number, Float64Array>();
  #ranges: readonly (readonly [number, number])[] | undefined;

  /**
   * @param stands one for each corner of the assembly
   * @param listed some states of so many that they are not all to be gone through (see fine/)
   * @throws InputError where the adjusters stand so that no pose exists, or where there are too many combinations
   */
  constructor(
    readonly assembly: Assembly,
    readonly stands: readonly CornerStand[],
    listed?: Listed,
  ) {
    const { axes, isLastFine } = axesOf(stands);
    super(axes, listed?.digits);
    this.corners = assembly.corners;
    this.#full = new FullSolve(assembly, stands, axes);
    this.#refuseTooMany();
    const { angles } = this.#full;
    this.stride = stands.reduce((sum, { ties }) => sum + ties.length, angles);
    const line = isLastFine && !listed ? new Interpolation(axes.at(-1)!, assembly.model, angles) : undefined;
    const { values, slack } = listed
      ? { values: spread(listed.angles, angles, this.stride), slack: listed.slack }
      : new AngleTable(this, this.stride, this.#full, line);
    this.values = values;
    this.slack = slack;
    this.effort = this.minutes();
    stands.forEach((stand, side) => {
      stand.ties.forEach((adjuster, k) => {
        writeTie(this, side, adjuster, stand.current, this.placeOf(this.corners[side]!, TIE + k));
      });
      forbid(this, side, assembly.model.fitted[side]!.values(), stand.current);
    });
  }

  #refuseTooMany(): void {
    const most = MOST_STATES / this.corners.length;
    if (this.count <= most) return;
    const of = this.corners.length > 1 ? 'axle' : 'corner';
    throw new InputError(`settings.${this.corners[0]}`, this.count, { is: 'combinations', most, of });
  }

  /** Where an angle of a corner (CAMBER, CASTER or TOE, PITCH or LATERAL; from TIE on its ties) stands among a state's numbers. */
  placeOf(corner: Corner, angle: number): number {
    const side = this.corners.indexOf(corner);
    if (angle < TIE) return placeAmong(this.corners, corner, angle);
    const before = this.stands.slice(0, side).reduce((sum, { ties }) => sum + ties.length, this.#full.angles);
    return before + angle - TIE;
  }

  /** Least and most of each number over all states. */
  get ranges(): readonly (readonly [low: number, high: number])[] {
    this.#ranges ??= rangesOf(this.values, this.stride);
    return this.#ranges;
  }

  /** The positions of a state, corner by corner; adjusters that are not moved among them stay where they stand. */
  settings(state: number): Settings[] {
    const settings = this.stands.map(({ current }): Record<string, Position> => ({ ...current }));
    this.axes.forEach(({ side, adjuster, positions }, i) => {
      settings[side]![adjuster.id] = positions[this.digit(state, i)]!;
    });
    return settings;
  }

  /** The numbers of a state, its angles by interpolation. */
  near(state: number): Float64Array {
    return this.values.slice(state * this.stride, (state + 1) * this.stride);
  }

  /** The numbers of a state, its angles by a full solve. NaN where no pose exists. */
  exact(state: number): Float64Array {
    let known = this.#exact.get(state);
    if (!known) {
      known = this.near(state);
      const digits = this.axes.map((_, i) => this.digit(state, i));
      this.#full.write(known, 0, digits);
      this.#exact.set(state, known);
    }
    return known;
  }
}

/** Numbers of so many each, put so far apart. */
function spread(numbers: Float64Array, many: number, stride: number): Float64Array {
  if (many === stride) return numbers.slice();
  const values = new Float64Array((numbers.length / many) * stride);
  for (let state = 0; state * many < numbers.length; state++) {
    values.set(numbers.subarray(state * many, (state + 1) * many), state * stride);
  }
  return values;
}

function rangesOf(values: Float64Array, stride: number): (readonly [number, number])[] {
  const low = new Float64Array(stride).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(stride).fill(Number.NEGATIVE_INFINITY);
  for (let at = 0; at < values.length; at += stride) {
    // Where no pose exists, or a limit forbids it.
    if (Number.isNaN(values[at]!)) continue;
    for (let k = 0; k < stride; k++) {
      const value = values[at + k]!;
      if (value < low[k]!) low[k] = value;
      if (value > high[k]!) high[k] = value;
    }
  }
  return Array.from(low, (value, k) => [value, high[k]!] as const);
}
