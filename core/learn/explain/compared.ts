/** A reading, what was done, and the reading after it: how likely the second is by one story or another. */
import type { Car, Corner, Gauge, Position, Reading, Round } from '../../contract.ts';
import { asMeasured } from '../../plan/as-measured.ts';
import { withPosition } from '../../plan/chance/by-rack.ts';
import { Uncertainty } from '../../plan/chance/covariance.ts';
import { learnedAbout } from '../../plan/chance/learned-part.ts';
import { anglesAt } from '../../plan/chance/move-error.ts';
import { addSquare } from '../../plan/chance/squares.ts';
import { samePosition } from '../../plan/states/axis.ts';
import { type Assembly, compileCar } from '../../pose/car-model.ts';
import { current } from '../../records/rounds.ts';
import { Definite } from '../algebra.ts';
import { gaugeNumbers, LOOSE, numbersRead, standing } from '../evidence.ts';
import { onceSeen, type Seen, type Stands, seenBy, seenOn, spreadOf } from './on-the-way.ts';

/** What a story tells otherwise than the records. */
export interface Told {
  readonly to?: Stands;
  readonly before?: Float64Array;
  readonly after?: Float64Array;
  /** Where what is not known is taken, if not there: of many places near one it is the same. */
  readonly knownAs?: Stands;
  /** Variance of each number beside what is known, degrees². */
  readonly loose?: Float64Array;
  /** Of an adjuster the rack showed nothing, whatever is on record: that it did says nothing for this story or against it. */
  readonly unseen?: { readonly side: number; readonly id: string };
}

/** One assembly in both readings. */
export class Compared {
  readonly from: Stands;
  readonly to: Stands;
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly #uncertainty: Uncertainty;
  readonly #stood: Float64Array | undefined;
  /** Adjusters that were left at a guess between the two. */
  readonly #guessed: readonly { readonly side: number; readonly id: string; readonly within: number }[];
  /** What the rack showed between the two as it led moves, and how well each number of it repeats. */
  readonly #seen: readonly Seen[];
  readonly #sigmas: Float64Array;

  /** @param read the first reading as it was taken, against what its front toe was */
  constructor(
    readonly assembly: Assembly,
    car: Car,
    first: Round,
    second: Round,
    gauge: Required<Gauge>,
    read: Reading,
  ) {
    this.from = standing(assembly, first);
    this.to = standing(assembly, second);
    this.before = numbersRead(assembly, first.reading);
    this.after = numbersRead(assembly, second.reading);
    this.#uncertainty = new Uncertainty(assembly, this.from, gauge, {
      learned: learnedAbout(car.learned?.parts, assembly),
      methods: first.reading.methods,
      places: car.learned?.places,
    });
    this.#stood = anglesAt(assembly.model, this.from);
    this.#guessed = current(first.moved ?? []).flatMap(({ corner, adjuster: id, setBy, outcome }) => {
      const side = assembly.corners.indexOf(corner);
      return side >= 0 && setBy?.within && outcome !== 'wont-move' ? [{ side, id, within: setBy.within }] : [];
    });
    this.#seen = seenOn(assembly, first, read).filter(({ number }) => !Number.isNaN(this.before[number]!));
    this.#sigmas = gaugeNumbers(assembly, gauge);
  }

  /**
   * Read less predicted, its covariance and which numbers they are of, once what the rack showed on the way was seen, and ln of
   * the density of that; nothing where there is no pose or nothing was read.
   */
  off({ to = this.to, before = this.before, after = this.after, knownAs = to, loose, unseen }: Told = {}) {
    const { model } = this.assembly;
    const goes = anglesAt(model, to);
    const stood = this.#stood;
    if (!goes || !stood) return undefined;
    const numbers = [...after.keys()].filter((k) => !Number.isNaN(after[k]! - before[k]!));
    const gained = numbers.map((k) => after[k]! - before[k]! - (goes[k]! - stood[k]!));
    const beside = numbers.map((_, i) => (loose?.[i] ?? 0) + LEAST);
    const { size } = this.#uncertainty;
    const shown = this.#seen.filter(({ side, id }) => side !== unseen?.side || id !== unseen.id);
    if (shown.length === 0) {
      const all = this.#uncertainty.covariance(knownAs);
      const covariance = numbers.flatMap((k, i) =>
        numbers.map((l, j) => all[k * size + l]! + (i === j ? beside[i]! : 0)),
      );
      return { numbers, by: Float64Array.from(gained), covariance: Float64Array.from(covariance), seen: 0 };
    }
    const seen = seenBy(shown, this.to, knownAs);
    const then = seen.map(({ at, number, value }) => {
      const there = anglesAt(model, at);
      return there ? value - before[number]! - (there[number]! - stood[number]!) : Number.NaN;
    });
    if (then.some(Number.isNaN)) return undefined;
    const rows = spreadOf(this.#uncertainty, { from: this.from, to: knownAs }, numbers, seen, this.#guesses(to, goes));
    const own = [
      ...numbers.map((k, i) => this.#uncertainty.sigmas[k]! ** 2 + beside[i]!),
      ...seen.map(({ number }) => this.#sigmas[number]! ** 2),
    ];
    const covariance = new Float64Array(own.length ** 2);
    for (const row of rows) addSquare(covariance, row, 0, own.length);
    own.forEach((square, i) => {
      covariance[i * (own.length + 1)]! += square;
    });
    return { numbers, ...onceSeen(Float64Array.from([...gained, ...then]), covariance, numbers.length) };
  }

  /** What a guess of where they stand leaves open; what the rack showed as they were turned says more. */
  #guesses(to: Stands, goes: Float64Array) {
    return this.#guessed.flatMap(({ side, id, within }) => {
      const stands = to[side]![id]!;
      if (typeof stands !== 'number') return [];
      const there = anglesAt(this.assembly.model, withPosition(to, { side, id }, stands + within));
      return there ? [{ side, id, by: there.map((x, k) => LOOSE * (x - goes[k]!)) }] : [];
    });
  }

  /** ln of the density of what was read; −∞ where it cannot be. */
  likelihood(told?: Told): number {
    const off = this.off(told);
    if (!off) return Number.NEGATIVE_INFINITY;
    const held = new Definite(off.covariance, off.numbers.length);
    const square = held.solve(off.by).reduce((sum, x, i) => sum + x * off.by[i]!, 0);
    const beside = told?.unseen ? this.#saidOf(told.unseen) : 0;
    return off.seen + beside - 0.5 * (square + held.logDeterminant() + off.numbers.length * Math.log(2 * Math.PI));
  }

  /** ln of the density of what the rack is on record to have shown of an adjuster, by the records. */
  #saidOf(unseen: NonNullable<Told['unseen']>): number {
    return (this.off()?.seen ?? 0) - (this.off({ unseen })?.seen ?? 0);
  }

  /** Whether an adjuster was left at a guess of where the rack led it: nobody looked at where it stands. */
  isGuessed(side: number, id: string): boolean {
    return this.#guessed.some((one) => one.side === side && one.id === id);
  }

  /** The side of a corner. */
  sideOf(corner: Corner): number {
    return this.assembly.corners.indexOf(corner);
  }

  /** Where it stands by the records, with one adjuster elsewhere. */
  with(...places: readonly (readonly [side: number, id: string, at: Position])[]): Stands {
    return this.to.map((own, side) => ({
      ...own,
      ...Object.fromEntries(places.filter(([at]) => at === side).map(([, id, at]) => [id, at])),
    }));
  }

  /** Adjusters that stand elsewhere in the second reading. */
  get moved(): readonly {
    readonly side: number;
    readonly id: string;
    readonly from: Position;
    readonly to: Position;
  }[] {
    return this.to.flatMap((own, side) =>
      Object.entries(own).flatMap(([id, to]) => {
        const from = this.from[side]![id]!;
        return samePosition(from, to) ? [] : [{ side, id, from, to }];
      }),
    );
  }
}

/** A gauge repeats no better than this, degrees². */
const LEAST = 1e-8;

/**
 * Assembly by assembly.
 * @param first, second as the model has them: front toe against the centre line
 * @param read the first reading as it was taken
 */
export const comparedAll = (
  car: Car,
  first: Round,
  second: Round,
  gauge: Required<Gauge>,
  read: Reading,
): readonly Compared[] => {
  const found = asMeasured(car, first.reading, first.settings);
  return compileCar(found).map((assembly) => new Compared(assembly, found, first, second, gauge, read));
};
