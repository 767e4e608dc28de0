/**
 * What the positions of a wheel's adjusters do beside what its windows judge: toe that one move makes and another takes
 * back, bump steer, camber gain. Each adjuster is posed alone and their sums taken for the whole, which is near enough
 * for what only decides between plans that are otherwise as good.
 */
import type { Settings } from '../contract.ts';
import type { Assembly } from '../pose/car-model.ts';
import { CAMBER, TOE } from '../pose/numbers.ts';
import { TRAVEL } from '../pose/side-effects.ts';
import type { Axis } from './states/axis.ts';

/** Degrees, none below 0. */
export interface Felt {
  /** Toe that moves make and others take back. */
  undone: number;
  /** How much more toe the wheel gains through its travel than before. */
  bumpSteer: number;
  /** How much less the wheel's top leans in when it rises than before. */
  camberGain: number;
}

/** Toe as it stands comes first, then toe gained in bump and in droop, and camber gained in bump. */
const NUMBERS = 4;
const BUMP = 1;
const DROOP = 2;
const LEAN = 3;
/** Positions of an adjuster that are posed; those between go along straight. */
const POSED = 16;

export class FeltBy {
  /** Of each axis, position by position, what it changes of the numbers. */
  readonly #changes: readonly Float64Array[];
  readonly #before: Float64Array;
  readonly #sums = new Float64Array(NUMBERS);
  readonly #felt: Felt = { undone: 0, bumpSteer: 0, camberGain: 0 };

  /** @param stands where the adjusters of the assembly, which is one wheel's own, stand */
  constructor(
    private readonly assembly: Assembly,
    private readonly stands: Settings,
    axes: readonly Axis[],
  ) {
    this.#before = this.#numbers(stands) ?? new Float64Array(NUMBERS);
    this.#changes = axes.map((axis) => this.#changesOf(axis));
  }

  /** At a position of each axis, by their places; the same object each time. */
  at(digits: ArrayLike<number>): Readonly<Felt> {
    const sums = this.#sums.fill(0);
    let made = 0;
    this.#changes.forEach((changes, i) => {
      const at = NUMBERS * digits[i]!;
      for (let k = 0; k < NUMBERS; k++) sums[k]! += changes[at + k]!;
      made += Math.abs(changes[at]!);
    });
    const before = this.#before;
    const steers = most(before[BUMP]! + sums[BUMP]!, before[DROOP]! + sums[DROOP]!);
    this.#felt.undone = (made - Math.abs(sums[0]!)) / 2;
    this.#felt.bumpSteer = Math.max(0, steers - most(before[BUMP]!, before[DROOP]!));
    this.#felt.camberGain = Math.max(0, sums[LEAN]!);
    return this.#felt;
  }

  #changesOf({ adjuster, positions, current }: Axis): Float64Array {
    const changes = new Float64Array(NUMBERS * positions.length);
    const isCounted = positions.every((position) => typeof position === 'number');
    const every = isCounted ? Math.ceil(positions.length / POSED) : 1;
    const write = (i: number): void => {
      const numbers = i === current ? undefined : this.#numbers({ ...this.stands, [adjuster.id]: positions[i]! });
      for (let k = 0; k < NUMBERS; k++) changes[NUMBERS * i + k] = numbers ? numbers[k]! - this.#before[k]! : 0;
    };
    const last = positions.length - 1;
    for (let i = 0; i < last; i += every) {
      const next = Math.min(i + every, last);
      if (i === 0) write(0);
      write(next);
      for (let between = i + 1; between < next; between++) {
        const share = (between - i) / (next - i);
        for (let k = 0; k < NUMBERS; k++) {
          const [a, b] = [changes[NUMBERS * i + k]!, changes[NUMBERS * next + k]!];
          changes[NUMBERS * between + k] = a + share * (b - a);
        }
      }
    }
    changes.fill(0, NUMBERS * current, NUMBERS * (current + 1));
    return changes;
  }

  /** Nothing where no pose exists. */
  #numbers(settings: Settings): Float64Array | undefined {
    const { model } = this.assembly;
    const out = new Float64Array(model.numbers);
    const pose = (travel: number): boolean => model.angles(model.parameters([settings], [{ travel }]), out);
    if (!pose(0)) return undefined;
    const [toe, camber] = [out[TOE]!, out[CAMBER]!];
    if (!model.linkage.kind.height) return Float64Array.of(toe, 0, 0, 0);
    if (!pose(-TRAVEL)) return undefined;
    const droop = out[TOE]! - toe;
    if (!pose(TRAVEL)) return undefined;
    return Float64Array.of(toe, out[TOE]! - toe, droop, out[CAMBER]! - camber);
  }
}

const most = (a: number, b: number): number => Math.max(Math.abs(a), Math.abs(b));
