/**
 * States of an assembly that has too many to go through: those with one or two adjusters moved, all of them, and of the
 * rest those that were found worth a look. What reads states reads these as it reads all of them elsewhere.
 */
import { axleOf } from '../../corners.ts';
import { InputError } from '../../input-error.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { type Axis, axesOf } from '../states/axis.ts';
import { allOf } from '../states/combinations.ts';
import type { CornerStand } from '../states/corner-stand.ts';
import { type Listed, MOST_STATES, StateSpace } from '../states/state-space.ts';
import { LEAST_SLACK, PairTables } from './pair-tables.ts';

/**
 * All states of an assembly, or where there are more than `most` of one corner those that are worth a look.
 * @throws InputError where the adjusters stand so that no pose exists, or where there are far too many
 */
export function statesOf(
  assembly: Assembly,
  stands: readonly CornerStand[],
  most = MOST_STATES,
  isBare = false,
): StateSpace {
  const isFew = allOf(axesOf(stands).axes) * stands.length <= most;
  return isFew ? new StateSpace(assembly, stands) : FineSpace.of(assembly, stands, isBare);
}

/** Settings of every two adjusters, more of which would take too long. */
const MOST_OF_TWO = 5e5;

export class FineSpace extends StateSpace {
  private constructor(
    assembly: Assembly,
    stands: readonly CornerStand[],
    readonly tables: PairTables,
    private readonly given: Listed,
  ) {
    super(assembly, stands, given);
  }

  /**
   * @param isBare without those that have one or two adjusters moved, for a question that does not ask for few moves
   * @throws InputError where there are too many even of two adjusters
   */
  static of(assembly: Assembly, stands: readonly CornerStand[], isBare = false): FineSpace {
    const { axes } = axesOf(stands);
    refuseTooMany(assembly, axes);
    const tables = new PairTables(assembly, stands, axes);
    const space = new FineSpace(assembly, stands, tables, isBare ? unmoved(tables) : fewMoved(tables));
    space.#isBare = isBare;
    return space.with(extremesOf(tables));
  }

  /** The same and these settings, each by the digits of its axes; those that are listed already are not listed twice. */
  with(settings: readonly (readonly number[])[]): FineSpace {
    const known = this.#keys();
    const fresh = settings.filter((digits) => {
      const key = digits.join();
      return (this.#isBare || this.#moved(digits) > 2) && !known.has(key) && known.add(key);
    });
    if (fresh.length === 0) return this;
    const { digits, angles, slack } = this.given;
    const many = this.tables.numbers;
    const more = new Float64Array(fresh.length * many);
    fresh.forEach((own, i) => {
      this.tables.solveAt(own, more, i * many);
    });
    const listed = {
      digits: joined(Uint16Array, digits, fresh.flat()),
      angles: joined(Float64Array, angles, more),
      slack,
    };
    const space = new FineSpace(this.assembly, this.stands, this.tables, listed);
    space.#known = known;
    space.#isBare = this.#isBare;
    return space;
  }

  /** Which of its positions each axis has in a state. */
  digitsOf(state: number): number[] {
    return this.axes.map((_, i) => this.digit(state, i));
  }

  #known: Set<string> | undefined;
  #isBare = false;

  /** Of the settings with more than two adjusters moved. */
  #keys(): Set<string> {
    return new Set(this.#known);
  }

  #moved(digits: readonly number[]): number {
    return digits.filter((digit, i) => digit !== this.axes[i]!.current).length;
  }
}

function refuseTooMany({ corners }: Assembly, axes: readonly Axis[]): void {
  const sizes = axes.map(({ positions }) => positions.length);
  const all = sizes.reduce((sum, size) => sum + size, 0);
  const ofTwo = sizes.reduce((sum, size) => sum + (size * (all - size)) / 2, 0);
  if (ofTwo <= MOST_OF_TWO) return;
  const of = corners.length > 1 ? 'axle' : 'corner';
  const each = axes.map(({ adjuster: { id, name = id }, positions }) => `“${name}” ${positions.length}`);
  const two = ` (${[...new Set(each)].join(', ')})`;
  throw new InputError(`${axleOf(corners[0]!)}.adjusters`, ofTwo, { is: 'combinations', most: MOST_OF_TWO, of, two });
}

/** As it stands. */
const unmoved = ({ axes, base }: PairTables): Listed => ({
  digits: Uint16Array.from(axes, ({ axis }) => axis.current),
  angles: base.slice(),
  slack: LEAST_SLACK,
});

/** As it stands, and with one or two adjusters elsewhere, by the tables. */
function fewMoved(tables: PairTables): Listed {
  const { axes, numbers, base, alone } = tables;
  const elsewhere = axes.map(({ digits, middle }) => [...digits.keys()].filter((rank) => rank !== middle));
  const all = elsewhere.reduce((sum, { length }) => sum + length, 0);
  const ofTwo = elsewhere.reduce((sum, { length }) => sum + (length * (all - length)) / 2, 0);
  const count = 1 + all + ofTwo;
  const digits = new Uint16Array(count * axes.length);
  const angles = new Float64Array(count * numbers);
  const still = axes.map(({ axis }) => axis.current);
  for (let at = 0; at < digits.length; at += axes.length) digits.set(still, at);
  for (let at = 0; at < angles.length; at += numbers) angles.set(base, at);
  let state = 1;
  axes.forEach((a, i) => {
    const own = alone[i]!;
    for (const x of elsewhere[i]!) {
      digits[state * axes.length + i] = a.digits[x]!;
      addNumbers(angles, state++, own, x, numbers);
    }
    for (let j = i + 1; j < axes.length; j++) {
      const b = axes[j]!;
      const together = tables.together(i, j);
      for (const x of elsewhere[i]!) {
        for (const y of elsewhere[j]!) {
          digits[state * axes.length + i] = a.digits[x]!;
          digits[state * axes.length + j] = b.digits[y]!;
          addNumbers(angles, state, own, x, numbers);
          addNumbers(angles, state, alone[j]!, y, numbers);
          addNumbers(angles, state++, together, x * b.digits.length + y, numbers);
        }
      }
    }
  });
  return { digits, angles, slack: tables.slack };
}

function addNumbers(sums: Float64Array, state: number, from: Float64Array, place: number, many: number): void {
  for (let k = 0; k < many; k++) sums[state * many + k]! += from[place * many + k]!;
}

/** The settings at which each number is least and most, as far as each axis by itself tells. */
function extremesOf({ axes, numbers, alone }: PairTables): number[][] {
  return Array.from({ length: numbers }, (_, k) =>
    [1, -1].map((sign) =>
      axes.map(({ digits, middle }, i) => {
        let best = middle;
        for (let rank = 0; rank < digits.length; rank++) {
          const [value, most] = [alone[i]![rank * numbers + k]!, alone[i]![best * numbers + k]!];
          if (sign * value > sign * most) best = rank;
        }
        return digits[best]!;
      }),
    ),
  ).flat();
}

function joined<T extends Uint16Array | Float64Array>(Kind: new (length: number) => T, a: T, b: ArrayLike<number>): T {
  const all = new Kind(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}
