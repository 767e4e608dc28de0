/**
 * What is not known of an assembly's angles at each of its states, where moves may go by the rack. Which of them do is chosen
 * once, for the nearest choice and with what stands still there taken to be turned on by a step: a state is asked about
 * thousands of times.
 */
import type { Axis } from '../states/axis.ts';
import type { StateSpace } from '../states/state-space.ts';
import { BY_MARK, type Choice, type Choosable } from './by-rack.ts';
import type { Carried, MoveSpread } from './carried.ts';
import type { ByRackOf, Covariance } from './covariance.ts';

/** More positions than this are interpolated between as many. */
const SAMPLES = 8;

/** It stays, goes by its mark, or by the rack. */
const WAYS = 3;

export class LiveVariances {
  readonly #choice: Choice;
  readonly #carried: Carried;
  readonly #moves: (Choosable | undefined)[][];

  /** @param nearest the state for which it is chosen what goes by the rack */
  constructor(
    private readonly states: StateSpace,
    private readonly byRack: ByRackOf,
    nearest: number,
  ) {
    this.#moves = states.axes.map(({ positions }) => positions.map(() => undefined));
    const moves = states.axes.map((axis, a) => {
      const at = states.digit(nearest, a);
      return this.#move(axis, a, at === axis.current ? beside(axis) : at);
    });
    this.#carried = byRack.chooser.start();
    this.#choice = byRack.chooser.choose(moves).choice;
  }

  /** Covariance of the angles that are after the moves to a state, without the gauge that reads them again. */
  covariance(state: number): Covariance {
    const moves: Choosable[] = [];
    const choice: number[] = [];
    let way = 0;
    const { axes } = this.states;
    for (let a = 0; a < axes.length; a++) {
      const axis = axes[a]!;
      const digit = this.states.digit(state, a);
      way *= WAYS;
      if (digit === axis.current) continue;
      const move = this.#move(axis, a, digit);
      const isLed = move.by.includes(this.#choice[a]!);
      moves.push(move);
      choice.push(isLed ? this.#choice[a]! : BY_MARK);
      way += isLed ? 2 : 1;
    }
    const { chooser } = this.byRack;
    const order = this.#orders.get(way) ?? chooser.order(moves, choice);
    this.#orders.set(way, order);
    const carried = this.#carried;
    if (!chooser.carry(moves, choice, { order, carried })) {
      const marks = moves.map(() => BY_MARK);
      chooser.carry(moves, marks, { carried });
    }
    return carried.covariance();
  }
  /** In which moves are made, by which adjusters are moved and which of those by the rack. */
  readonly #orders = new Map<number, readonly number[]>();

  #move(axis: Axis, a: number, digit: number): Choosable {
    const known = this.#moves[a]![digit] ?? this.#made(axis, digit);
    this.#moves[a]![digit] = known;
    return known;
  }

  #made(axis: Axis, digit: number): Choosable {
    const { positions, current } = axis;
    const last = positions.length - 1;
    const every = Math.ceil(last / SAMPLES);
    const exact = (at: number): Choosable => {
      const one = at === current ? beside(axis) : at;
      return this.byRack.moves.of(axis.side, axis.adjuster.id, positions[one]!);
    };
    const low = Math.floor(digit / every) * every;
    const high = Math.min(last, low + every);
    const isNumbers = typeof positions[digit] === 'number';
    // Between the last two a stand off the marks may lie, which is no place on the way.
    if (every <= 1 || !isNumbers || digit === low || high === last || low === current || high === current) {
      return exact(digit);
    }
    return between(exact(low), exact(high), (digit - low) / (high - low));
  }
}

const beside = ({ current, positions }: Axis): number =>
  current + 1 < positions.length ? current + 1 : Math.max(0, current - 1);

function between(one: Choosable, other: Choosable, share: number): Choosable {
  const mix = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, i) => x + share * (b[i]! - x));
  const { spread: a } = one;
  const { spread: b } = other;
  const spread: MoveSpread = {
    slopes: mix(a.slopes, b.slopes),
    errors: a.errors.map((error, i) => mix(error, b.errors[i] ?? error)),
    ...(a.gain && b.gain && { gain: mix(a.gain, b.gain) }),
  };
  const by = spread.gain ? one.by.filter((at) => other.by.includes(at)) : [];
  return { ...one, spread, by, room: one.room + share * (other.room - one.room) };
}
