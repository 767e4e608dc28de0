/**
 * What a mechanism shows at the sights: at the settings of each, its wheels leaning as they were read at the first sight
 * of their sitting, as a plan takes the car (see plan/as-measured.ts). The lean is given where a tapered shim would be, so
 * that one compiled mechanism serves every sitting.
 */
import type { Side } from '../adjuster/of-corner.ts';
import type { Settings } from '../contract.ts';
import { applyChange, type Change } from '../pose/change.ts';
import { ANGLES_A_WHEEL, CAMBER, Mechanism, TOE } from '../pose/mechanism.ts';
import { SPIN_CAMBER, SPIN_TOE } from '../pose/wheel.ts';
import type { Evidence, Sight } from './evidence.ts';

/** Degrees within which the model's wheels lean as read. */
const CLOSE = 1e-9;
const ROUNDS = 12;
/** Degrees by which a derivative is taken. */
const LEAN_STEP = 1e-3;

/** What was changed of the parameters at a sight: the settings, how they were missed, and how the wheels lean. */
interface State {
  readonly change: Float64Array;
  readonly settings: readonly Settings[];
  readonly made: readonly Change[];
  /** Where the body stood there, once it was solved. */
  near?: Float64Array | undefined;
}

/** What is otherwise than at the sights: positions that do something else, one parameter by so much. */
interface Otherwise {
  readonly ownMoves?: boolean;
  readonly slot?: number;
  readonly by?: number;
}

/** What was done otherwise than the settings say, sight by sight. */
export type Made = readonly (readonly Change[])[];

export class SightedModel {
  readonly mechanism: Mechanism;
  /** A sitting each: state by state, and which of them each sight is in. */
  readonly #states: readonly { readonly all: readonly State[]; readonly of: readonly number[] }[] | undefined;

  constructor(
    readonly sides: readonly Side[],
    private readonly evidence: Evidence,
    made: Made,
  ) {
    this.mechanism = new Mechanism(sides);
    let place = 0;
    const found = evidence.map((sights) => {
      place += sights.length;
      return this.#leanOf(sights[0]!, made[place - sights.length]!);
    });
    this.leans = found.some((lean) => lean === undefined) ? undefined : (found as readonly Float64Array[]);
    let first = 0;
    this.#states =
      this.leans &&
      evidence.map((sights, s) => {
        first += sights.length;
        return this.#statesOf(sights, made.slice(first - sights.length, first), this.leans![s]!);
      });
  }

  /** Camber and toe that each wheel is turned by in each sitting; nothing where the car has no pose there. */
  readonly leans: readonly Float64Array[] | undefined;

  /** The numbers of every sight, one after another; nothing where one has no pose. */
  numbers(): Float64Array | undefined {
    return this.#states && this.#shown(this.mechanism);
  }

  /** The same of a mechanism whose points are elsewhere. @param ownMoves whether positions do something else there */
  numbersOf(other: Mechanism, ownMoves: boolean): Float64Array | undefined {
    return this.#states && this.#shown(other, { ownMoves });
  }

  /**
   * What a change of the points does by the way: the wheels are to lean as they were read at the first sights all the same,
   * and what a move does hangs a little on that. Added to what the change does to the numbers of every sight.
   */
  withLeans(changes: Float64Array): void {
    const { numbers, linkage } = this.mechanism;
    if (linkage.kind.points.length === 0) return;
    this.#byLeans ??= this.#leanSlopes();
    let first = 0;
    for (const sights of this.evidence) {
      const own = changes.slice(first * numbers, (first + 1) * numbers);
      for (let k = 0; k < this.#byLeans.length; k++) {
        const at = ANGLES_A_WHEEL * (k >> 1) + (k % 2 ? TOE : CAMBER);
        if (Number.isNaN(sights[0]!.values[at]!)) continue;
        for (let i = first * numbers; i < (first + sights.length) * numbers; i++) {
          changes[i]! -= own[at]! * this.#byLeans[k]![i]!;
        }
      }
      first += sights.length;
    }
  }
  #byLeans: readonly Float64Array[] | undefined;

  /** What a degree more of each wheel's camber and toe in the upright does to the numbers of every sight. */
  #leanSlopes(): readonly Float64Array[] {
    const now = this.numbers()!;
    return this.mechanism.linkage.wheels.flatMap(({ angles }) =>
      [SPIN_CAMBER, SPIN_TOE].map((place) => {
        const there = this.#shown(this.mechanism, { slot: angles + place, by: LEAN_STEP });
        return there ? there.map((x, i) => (x - now[i]!) / LEAN_STEP) : new Float64Array(now.length);
      }),
    );
  }

  #shown(mechanism: Mechanism, { ownMoves = false, slot = 0, by = 0 }: Otherwise = {}): Float64Array | undefined {
    const { numbers, linkage } = mechanism;
    const count = this.evidence.reduce((sum, sights) => sum + sights.length, 0);
    const out = new Float64Array(count * numbers);
    const params = new Float64Array(linkage.reference.length);
    let at = 0;
    for (const [s, { all, of }] of this.#states!.entries()) {
      const shown: Float64Array[] = [];
      for (const state of all) {
        const { change, settings, made } = state;
        if (ownMoves) params.set(this.#leaning(withMade(mechanism.parameters(settings), made), this.leans![s]!));
        else for (let i = 0; i < params.length; i++) params[i] = linkage.reference[i]! + change[i]!;
        if (by) params[slot]! += by;
        const angles = new Float64Array(numbers);
        if (!mechanism.angles(params, angles, state.near)) return undefined;
        if (mechanism === this.mechanism && !by) state.near = mechanism.stands();
        shown.push(angles);
      }
      for (const state of of) {
        out.set(shown[state]!, at);
        at += numbers;
      }
    }
    return out;
  }

  /**
   * What a further change does to the numbers of one sight; nothing where it has no pose there.
   * @param now what it shows there
   */
  gained(sitting: number, sight: number, further: Change, now: Float64Array): Float64Array | undefined {
    const { all, of } = this.#states![sitting]!;
    const { mechanism } = this;
    const { change, near } = all[of[sight]!]!;
    const { reference } = mechanism.linkage;
    const params = reference.slice();
    for (let i = 0; i < params.length; i++) params[i]! += change[i]!;
    applyChange(params, further);
    const after = new Float64Array(mechanism.numbers);
    if (!mechanism.angles(params, after, near)) return undefined;
    for (let i = 0; i < after.length; i++) after[i]! -= now[i]!;
    return after;
  }

  #statesOf(sights: readonly Sight[], made: Made, lean: Float64Array) {
    const known = new Map<string, number>();
    const all: State[] = [];
    const of = sights.map(({ settings }, i) => {
      const key = JSON.stringify([settings, made[i]]);
      let place = known.get(key);
      if (place === undefined) {
        place = all.length;
        known.set(key, place);
        const change = this.#leaning(withMade(this.mechanism.parameters(settings), made[i]!), lean);
        const { reference } = this.mechanism.linkage;
        for (let k = 0; k < change.length; k++) change[k]! -= reference[k]!;
        all.push({ change, settings, made: made[i]! });
      }
      return place;
    });
    return { all, of };
  }

  #leaning(params: Float64Array, lean: Float64Array): Float64Array {
    for (const [w, { angles }] of this.mechanism.linkage.wheels.entries()) {
      params[angles + SPIN_CAMBER]! += lean[2 * w]!;
      params[angles + SPIN_TOE]! += lean[2 * w + 1]!;
    }
    return params;
  }

  #leanOf({ settings, values }: Sight, made: readonly Change[]): Float64Array | undefined {
    const { wheels, kind } = this.mechanism.linkage;
    const lean = new Float64Array(2 * wheels.length);
    if (kind.points.length === 0) return lean;
    const angles = new Float64Array(this.mechanism.numbers);
    for (let round = 0; round < ROUNDS; round++) {
      let off = 0;
      const params = withMade(this.mechanism.parameters(settings), made);
      if (!this.mechanism.angles(this.#leaning(params, lean), angles)) return undefined;
      for (let w = 0; w < wheels.length; w++) {
        for (const [i, place] of [CAMBER, TOE].entries()) {
          const at = ANGLES_A_WHEEL * w + place;
          const by = values[at]! - angles[at]!;
          if (Number.isNaN(by)) continue;
          lean[2 * w + i]! += by;
          off = Math.max(off, Math.abs(by));
        }
      }
      if (off < CLOSE) break;
    }
    return lean;
  }
}

function withMade(params: Float64Array, made: readonly Change[]): Float64Array {
  for (const change of made) applyChange(params, change);
  return params;
}
