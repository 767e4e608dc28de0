/**
 * Which moves of an assembly go by the rack: an adjuster that can be turned while the rack is watched is turned until one
 * of its wheel's angles reads as planned, where that leaves the windows surer than its mark does. It is not always so: of two
 * cams of one arm that are both set by camber, what takes camber's error away leads caster astray.
 *
 * What a move adds to what is not known is taken adjuster by adjuster; what they do beyond that together falls to the last.
 */
import type { Position, Settings } from '../../contract.ts';
import { Carried, type MoveSpread } from './carried.ts';

/** One move of an assembly. */
export interface Turned {
  readonly side: number;
  readonly id: string;
}

/** What a request lets go by the rack in one assembly. */
export interface Live {
  /** The numbers of the assembly by which an adjuster may be set; none where it cannot be watched. */
  readonly shown: (one: Turned) => readonly number[];
  /** Moves in working order, those by the rack after those by their marks; `byRack` of each. */
  readonly order: (moves: readonly Turned[], byRack: readonly boolean[]) => readonly number[];
  /** Of each window that hangs on the assembly: factors of its numbers, in half windows. */
  readonly windows: readonly Float64Array[];
}

/** What is known of one move before it is chosen how to make it. */
export interface Choosable extends Turned {
  readonly spread: MoveSpread;
  /** Numbers by which it may be set. */
  readonly by: readonly number[];
  /** How far it may yet be turned to either side, in the unit of `spread.gain`. */
  readonly room: number;
}

/** Of each move the number that it is set by; −1: it goes by its mark. */
export type Choice = readonly number[];
export const BY_MARK = -1;

/** What is left unknown after moves, and how they are made. */
export interface Chosen {
  readonly choice: Choice;
  readonly carried: Carried;
}

/** How moves are carried; see `ByRack.carry`. */
interface Carrying {
  readonly together?: Float64Array;
  readonly after?: (move: number, carried: Carried, within: number) => void;
  /** In which they are made, where it is known. */
  readonly order?: readonly number[];
  /** What they are carried in; its own where it is kept. */
  readonly carried?: Carried;
}

/** Ways to make a plan's moves that are all tried; of more the best that is found by changing one at a time. */
const MOST_WAYS = 128;
/** Standard deviations that there must be room for: who turns until the rack shows it may have to go as much further. */
const ROOM = 2;
/** Less is no gain: the mark needs no watching. */
const GAIN = 1e-9;

/** Picks, for the moves of one assembly, which go by the rack. */
export class ByRack {
  readonly #orders = new Map<string, readonly number[]>();
  readonly #read: readonly Float64Array[];

  /**
   * @param sigmas of the gauge that shows each of the assembly's numbers, degrees
   * @param coordinates how many unknowns the moves share
   */
  constructor(
    private readonly live: Live,
    private readonly sigmas: Float64Array,
    private readonly coordinates: number,
  ) {
    this.#read = Array.from(sigmas, (sigma, at) => sigmas.map((_, k) => (k === at ? sigma : 0)));
  }

  /** @param together what all moves together add beside their sum, coordinate by coordinate */
  choose(moves: readonly Choosable[], together?: Float64Array): Chosen {
    const none = moves.map(() => BY_MARK);
    let best = this.#tried(moves, none, together)!;
    const ways = moves.reduce((product, { by }) => product * (1 + by.length), 1);
    const consider = (choice: Choice): void => {
      const one = this.#tried(moves, choice, together);
      if (one && one.cost < best.cost * (1 - GAIN)) best = one;
    };
    if (ways <= MOST_WAYS) for (const choice of every(moves)) consider(choice);
    else {
      consider(moves.map(({ by }) => by[0] ?? BY_MARK));
      for (let before = Number.POSITIVE_INFINITY; best.cost < before; ) {
        before = best.cost;
        moves.forEach(({ by }, i) => {
          for (const at of [BY_MARK, ...by]) consider(best.choice.map((own, k) => (k === i ? at : own)));
        });
      }
    }
    return best;
  }

  /**
   * @param together what all moves together add beside their sum: with the last of them
   * @param after told of each move that goes by the rack as it is made: what is not known then, and how far it ends from
   * where it is guessed to, one standard deviation in the unit of `spread.gain`
   * @returns nothing where a move has not the room for what may have to be turned
   */
  carry(
    moves: readonly Choosable[],
    choice: Choice,
    { together, after, order = this.order(moves, choice), carried = this.start() }: Carrying = {},
  ): Carried | undefined {
    const { sigmas } = this;
    carried.begin();
    for (let n = 0; n < order.length; n++) {
      const i = order[n]!;
      const move = moves[i]!;
      const isLast = n === order.length - 1;
      const spread = isLast && together ? { ...move.spread, slopes: sum(move.spread.slopes, together) } : move.spread;
      const at = choice[i]!;
      if (at === BY_MARK) {
        carried.byMark(spread);
        continue;
      }
      const before = Math.hypot(carried.sigma(at), sigmas[at]!) / Math.abs(spread.gain![at]!);
      if (ROOM * before > move.room) return undefined;
      const off = carried.byRack(spread, at, sigmas[at]!);
      after?.(i, carried, Math.hypot(off, sigmas[at]!) / Math.abs(spread.gain![at]!));
    }
    return carried;
  }

  /** What is not known before any move. */
  start(): Carried {
    return new Carried(this.sigmas.length, this.coordinates, this.#read);
  }

  #tried(moves: readonly Choosable[], choice: Choice, together?: Float64Array) {
    const carried = this.carry(moves, choice, { ...(together && { together }) });
    if (!carried) return undefined;
    const covariance = carried.covariance();
    const size = this.sigmas.length;
    const cost = this.live.windows.reduce((total, window) => total + variance(window, covariance, size), 0);
    return { choice, carried, cost };
  }

  /** In which the moves are made. */
  order(moves: readonly Choosable[], choice: Choice): readonly number[] {
    const key = moves.map(({ side, id }, i) => `${side} ${id} ${choice[i] === BY_MARK}`).join();
    const order =
      this.#orders.get(key) ??
      this.live.order(
        moves,
        choice.map((at) => at !== BY_MARK),
      );
    this.#orders.set(key, order);
    return order;
  }
}

function* every(moves: readonly Choosable[]): Generator<Choice> {
  const [first, ...rest] = moves;
  if (!first) {
    yield [];
    return;
  }
  for (const others of every(rest)) for (const at of [BY_MARK, ...first.by]) yield [at, ...others];
}

const sum = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, i) => x + b[i]!);

/** Of a sum of numbers with these factors. */
export function variance(factors: Float64Array, covariance: Float64Array, size: number): number {
  let total = 0;
  for (let i = 0; i < size; i++) {
    if (factors[i] === 0) continue;
    for (let j = 0; j < size; j++) total += factors[i]! * factors[j]! * covariance[size * i + j]!;
  }
  return total;
}

/** Where the adjusters of an assembly stand, one of them moved to a position. */
export const withPosition = (from: readonly Settings[], { side, id }: Turned, position: Position): Settings[] =>
  from.map((settings, i) => (i === side ? { ...settings, [id]: position } : settings));
