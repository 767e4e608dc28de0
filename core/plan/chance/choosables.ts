/** What each move of an assembly adds to what is not known, and by which angles the rack could lead it. */
import type { Position, Settings } from '../../contract.ts';
import { type Change, changeBetween, scaled } from '../../pose/change.ts';
import type { Mechanism } from '../../pose/mechanism.ts';
import { positionsOf } from '../states/axis.ts';
import { type Choosable, type Live, withPosition } from './by-rack.ts';

/** Of the most that it moves a live angle, below which another is not set by it. */
const LEAST_SHARE = 0.25;
/** Of the step that shows an adjuster, for its derivative. */
const SHARE_OF_STEP = 0.02;

/** What is not known, as it is asked for move by move; see `Uncertainty`. */
interface Unknowns {
  readonly coordinates: number;
  readonly size: number;
  slopes(to: readonly Settings[]): Float64Array | undefined;
  errors(side: number, id: string, position: Position): Float64Array[];
  gains(at: readonly Settings[], further: Change): Float64Array | undefined;
}

export class Choosables {
  readonly #known = new Map<string, Choosable>();

  /** @param from where the adjusters stand, a side each */
  constructor(
    private readonly unknowns: Unknowns,
    private readonly model: Mechanism,
    private readonly from: readonly Settings[],
    private readonly live: Live,
  ) {}

  /** The move of one adjuster to a position, worked out once. */
  of(side: number, id: string, position: Position): Choosable {
    const key = `${side} ${id} ${position}`;
    const known = this.#known.get(key) ?? this.#made(side, id, position);
    this.#known.set(key, known);
    return known;
  }

  #made(side: number, id: string, position: Position): Choosable {
    const { unknowns, live } = this;
    const to = withPosition(this.from, { side, id }, position);
    const slopes = unknowns.slopes(to) ?? new Float64Array(unknowns.coordinates * unknowns.size);
    const errors = unknowns.errors(side, id, position);
    const shown = live.shown({ side, id });
    const gain = shown.length > 0 ? this.#gain(to, side, id, position) : undefined;
    if (!gain) return { side, id, spread: { slopes, errors }, by: [], room: 0 };
    const most = Math.max(...shown.map((at) => Math.abs(gain[at]!)));
    const by = shown.filter((at) => Math.abs(gain[at]!) > LEAST_SHARE * most);
    return { side, id, spread: { slopes, errors, gain }, by, room: this.#room(side, id, position as number) };
  }

  /** Degrees for one more of its position, with the rest as it stands. */
  #gain(at: readonly Settings[], side: number, id: string, position: Position): Float64Array | undefined {
    const { adjuster, kind } = this.model.fitted[side]!.get(id)!;
    const { from, to } = kind.step(adjuster);
    const h = (Number(to) - Number(from)) * SHARE_OF_STEP;
    if (typeof position !== 'number' || !(Math.abs(h) > 0)) return undefined;
    const [a, b] = [position - h, position + h].map((one) => this.model.change(side, id, one));
    return this.unknowns.gains(at, scaled(changeBetween(b!, a!), 1 / (2 * h)));
  }

  /** How far it may be turned to either side before its travel ends, or it comes to where it does the opposite. */
  #room(side: number, id: string, position: number): number {
    const { adjuster, kind } = this.model.fitted[side]!.get(id)!;
    const all = positionsOf(kind, adjuster).filter((one) => typeof one === 'number');
    const ends = Math.min(position - Math.min(...all), Math.max(...all) - position);
    return Math.min(ends, kind.fromDeadCentre?.(adjuster, position) ?? Number.POSITIVE_INFINITY);
  }
}
