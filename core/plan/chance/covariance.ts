/**
 * What is not known of an assembly, and how far it can put a planned change off: hard points that a tape gives to its
 * tolerance only, moves that are made to their own tolerance only, a gauge that does not repeat. Each unknown stands
 * for itself, one standard deviation of it at a time; the change of the angles is linear in it for as small an error
 * (checked in the tests against a Monte Carlo of the full model).
 */
import type { Sighted } from '../../adjuster/measured.ts';
import { apartFromMoves, type Unknown } from '../../adjuster/unknowns.ts';
import type { Gauge, Learned, LearnedPart, Methods, Position, Settings } from '../../contract.ts';
import { ByUnknown } from '../../pose/by-unknown.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { type Change, gainBy } from '../../pose/change.ts';
import { numbersOf } from '../../pose/numbers.ts';
import { samePosition } from '../states/axis.ts';
import { ByRack, type Live, type Turned, withPosition } from './by-rack.ts';
import type { Carried } from './carried.ts';
import { Choosables } from './choosables.ts';
import { learnedUnknowns, rootBefore, rootOfPart } from './learned-part.ts';
import { anglesAt, waysOff } from './move-error.ts';
import { sigmasOf } from './sigmas.ts';
import { addSquare, mixed } from './squares.ts';

/** Covariance of (re-measured − predicted) of one assembly's angles, degrees², square, row by row. */
export type Covariance = Float64Array;

/** A move that goes by the rack, and the number of the assembly that it is set by. */
export interface SetBy extends Turned {
  readonly at: number;
  /** How far it ends from where it is guessed to, one standard deviation in its own unit. */
  readonly within: number;
  /** One standard deviation of each number as the gauge then shows it, degrees. */
  readonly shown: Float64Array;
}

/** What is not known after a change, and how its moves are made. */
interface Changed {
  readonly covariance: Covariance;
  readonly setBy: readonly SetBy[];
}
/** What picks the moves that go by the rack. */
export interface ByRackOf {
  readonly shown: Live['shown'];
  readonly chooser: ByRack;
  readonly moves: Choosables;
}

/** What is known beside the assembly as it was given. */
export interface Beside {
  readonly learned?: LearnedPart | undefined;
  readonly places?: readonly UnsurePlace[] | undefined;
  readonly live?: Live | undefined;
  /** What was not read off the rack, and its scatter. */
  readonly methods?: Methods | undefined;
}
/** An adjuster, and one standard deviation of where it stands. */
export type UnsurePlace = Pick<NonNullable<Learned['places']>[number], 'corner' | 'adjuster' | 'deviation'>;
type Moved = readonly [side: number, id: string, position: Position];

export class Uncertainty {
  /** Angles of the assembly, and of its body where that counts. */
  readonly size: number;
  /** One standard deviation of what shows each number. */
  readonly sigmas: Float64Array;
  #byUnknown: ByUnknown | undefined;
  /** Of what readings have taught, root of its covariance, each unknown in its own standard deviations. */
  #root: Float64Array | undefined;
  readonly #unknowns: readonly Unknown[];
  /** What each unknown adds to the angles at `from`. */
  #stood: Float64Array | undefined;
  readonly #learned: LearnedPart | undefined;
  readonly #places: readonly UnsurePlace[];
  readonly #live: Live | undefined;
  #ofRack: ByRackOf | undefined;

  /**
   * @param from where the adjusters stand, a side each
   * @param beside what readings have taught of this assembly, in the place of what was to be expected; adjusters whose place
   * was learned or guessed, and how well it is known; and what may go by the rack: absent, nothing
   */
  constructor(
    private readonly assembly: Assembly,
    private readonly from: readonly Settings[],
    private readonly gauge: Required<Gauge>,
    private readonly beside: Beside = {},
  ) {
    const { learned, places = [], live, methods } = beside;
    this.#learned = learned;
    this.#places = places;
    this.size = numbersOf(assembly.sides);
    this.#unknowns = learned ? learnedUnknowns(learned, assembly) : assembly.sides.flatMap(apartFromMoves);
    this.#root = learned ? rootOfPart(learned, this.#unknowns) : rootBefore(assembly, this.#unknowns);
    this.#live = live;
    this.sigmas = sigmasOf(assembly, gauge, methods);
  }

  /** Picks what goes by the rack, and what it picks from; nothing where nothing may. */
  get byRack(): ByRackOf | undefined {
    if (!this.#live) return undefined;
    this.#ofRack ??= {
      shown: this.#live.shown,
      chooser: new ByRack(this.#live, this.sigmas, this.coordinates),
      moves: new Choosables(this, this.assembly.model, this.from, this.#live),
    };
    return this.#ofRack;
  }

  /** The same, were some lengths measured too. */
  knowing(lengthsIn: (unknowns: readonly Unknown[]) => readonly Sighted[]): Uncertainty {
    const { assembly, from, gauge, beside } = this;
    const own = new Uncertainty(assembly, from, gauge, beside);
    const lengths = lengthsIn(this.#unknowns);
    own.#root = this.#learned
      ? rootOfPart(this.#learned, this.#unknowns, lengths)
      : rootBefore(assembly, this.#unknowns, lengths);
    own.#byUnknown = this.#ofUnknowns();
    own.#stood = this.#stood;
    return own;
  }

  /** How many numbers are not known for certain: coordinates, and what was learned beside them. */
  get coordinates(): number {
    return this.#unknowns.length;
  }

  /**
   * What one standard deviation of each coordinate adds to the change from `from` to `to`, degrees: the assembly's angles,
   * coordinate by coordinate; once something was learned, of each independent share of what is still not known. Nothing
   * where no pose exists.
   */
  slopes(to: readonly Settings[]): Float64Array | undefined {
    this.#stood ??= this.#slopesAt(this.from);
    const stood = this.#stood;
    const goes = stood && this.#slopesAt(to);
    if (!goes) return undefined;
    const slopes = goes.map((x, at) => (x - stood[at]!) * this.#unknowns[Math.floor(at / this.size)]!.sigma);
    return this.#root ? mixed(slopes, this.#root, this.size) : slopes;
  }

  /** What one standard deviation of the move of one adjuster to a position adds, degrees; nothing where it stays. */
  errors(side: number, id: string, position: Position): Float64Array[] {
    const stood = this.#standing(side, id);
    if (samePosition(position, stood)) return [];
    const at = withPosition(this.from, { side, id }, position);
    const ways = waysOff(this.assembly.model, side, id, stood, position, this.#learned ? 'left' : 'all');
    const made = ways.flatMap((off) => this.gains(at, off(1)) ?? []);
    return [...made, ...this.#fromUnsure(side, id, at)];
  }

  /** What a further change adds to the angles at some positions, degrees, for as small a one; nothing where no pose exists. */
  gains(at: readonly Settings[], further: Change): Float64Array | undefined {
    const gradient = this.#gradientAt(at);
    const out = gradient && new Float64Array(this.size);
    if (out) gainBy(gradient, this.size, further, out);
    return out;
  }

  /** What one standard deviation of the place that it is turned on from adds: it ends as far off, where it may do less or more. */
  #fromUnsure(side: number, id: string, at: readonly Settings[]): Float64Array[] {
    const { corners, model } = this.assembly;
    const place = this.#places.find((one) => one.corner === corners[side] && one.adjuster === id);
    if (!place || !(place.deviation > 0)) return [];
    const off = ({ [id]: position, ...rest }: Settings): Settings => ({
      ...rest,
      [id]: (position as number) + place.deviation,
    });
    const [stood, goes] = [this.from, at].map((all): Float64Array | undefined => {
      const there = anglesAt(model, all);
      const beyond = anglesAt(
        model,
        all.map((own, i) => (i === side ? off({ [id]: this.#standing(side, id), ...own }) : own)),
      );
      return there && beyond?.map((x, k) => x - there[k]!);
    });
    return stood && goes ? [goes.map((x, k) => x - stood[k]!)] : [];
  }

  #standing(side: number, id: string): Position {
    return this.from[side]?.[id] ?? this.assembly.model.fitted[side]!.get(id)!.adjuster.reference;
  }

  /** Covariance of the error of what the rack shows after a change to `to`; twice the gauge, as it reads twice. */
  covariance(to: readonly Settings[]): Covariance {
    return this.#changed(to).covariance;
  }

  /** Of the moves to some positions those that go by the rack, and the number that each is set by. */
  setBy(to: readonly Settings[]): readonly SetBy[] {
    return this.#changed(to).setBy;
  }

  #changed(to: readonly Settings[]): Changed {
    const key = JSON.stringify(to);
    const changed = this.#known.get(key) ?? this.#change(to);
    this.#known.set(key, changed);
    return changed;
  }
  readonly #known = new Map<string, Changed>();

  #change(to: readonly Settings[]): Changed {
    const { size } = this;
    const covariance = new Float64Array(size * size);
    const read = this.sigmas.map((sigma) => sigma * sigma);
    const moved = this.#moved(to);
    const again = (once: Covariance): Covariance => {
      for (let k = 0; k < size; k++) once[k * (size + 1)]! += read[k]!;
      return once;
    };
    if (this.byRack && moved.length > 0) {
      const { carried, setBy } = this.#byRack(this.byRack, moved, this.slopes(to));
      return { covariance: again(carried.covariance()), setBy };
    }
    for (let k = 0; k < size; k++) covariance[k * (size + 1)]! = 2 * read[k]!;
    if (moved.length === 0) return { covariance, setBy: [] };
    for (const error of moved.flatMap((one) => this.errors(...one))) addSquare(covariance, error, 0, size);
    const slopes = this.slopes(to);
    for (let at = 0; slopes && at < slopes.length; at += size) addSquare(covariance, slopes, at, size);
    return { covariance, setBy: [] };
  }

  #moved(to: readonly Settings[]): Moved[] {
    return to.flatMap((settings, side) =>
      Object.entries(settings)
        .filter(([id, position]) => !samePosition(position, this.#standing(side, id)))
        .map(([id, position]) => [side, id, position] as const),
    );
  }

  #byRack({ chooser, moves }: ByRackOf, moved: readonly Moved[], all: Float64Array | undefined) {
    const each = moved.map((one) => moves.of(...one));
    const apart = each.length > 1 && all;
    const together =
      (apart && all.map((x, i) => x - each.reduce((sum, { spread }) => sum + spread.slopes[i]!, 0))) || undefined;
    const { choice, carried } = chooser.choose(each, together);
    const setBy: SetBy[] = [];
    const { sigmas } = this;
    const after = (i: number, now: Carried, within: number): void => {
      const { side, id } = each[i]!;
      const shown = sigmas.map((sigma, k) => Math.hypot(now.sigma(k), sigma));
      setBy.push({ side, id, at: choice[i]!, within, shown });
    };
    chooser.carry(each, choice, { after, ...(together && { together }) });
    return { carried, setBy };
  }

  /** What one of each unknown adds to the angles at some positions; nothing where no pose exists. */
  #slopesAt(positions: readonly Settings[]): Float64Array | undefined {
    const gradient = this.#gradientAt(positions);
    return gradient && this.#ofUnknowns().slopes(gradient, positions);
  }

  /** What the angles gain by each parameter. All that is asked of one move is asked one thing after another. */
  #gradientAt(positions: readonly Settings[]): Float64Array | undefined {
    if (!this.#last?.positions.every((own, side) => isSame(own, positions[side]!))) {
      const { model } = this.assembly;
      const params = model.parameters(positions);
      const gradient = model.angles(params, new Float64Array(this.size)) ? model.gradient(params) : undefined;
      this.#last = { positions, gradient };
    }
    return this.#last!.gradient;
  }
  #last: { readonly positions: readonly Settings[]; readonly gradient: Float64Array | undefined } | undefined;

  #ofUnknowns(): ByUnknown {
    this.#byUnknown ??= new ByUnknown(this.assembly.model, this.#unknowns);
    return this.#byUnknown;
  }
}

function isSame(a: Settings, b: Settings): boolean {
  if (a === b) return true;
  const ids = Object.keys(a);
  return ids.length === Object.keys(b).length && ids.every((id) => a[id] === b[id]);
}
