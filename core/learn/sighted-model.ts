/**
 * What a mechanism shows at the sights: at the settings of each, its wheels leaning as they were read at the first sight
 * of their sitting, as a plan takes the car (see plan/as-measured.ts). The lean is given where a tapered shim would be, so
 * that one compiled mechanism serves every sitting.
 */
import type { Side } from '../adjuster/of-corner.ts';
import type { Unknown } from '../adjuster/unknowns.ts';
import type { Settings } from '../contract.ts';
import { ByUnknown } from '../pose/by-unknown.ts';
import { applyChange, type Change, gainBy } from '../pose/change.ts';
import { ANGLES_A_WHEEL, CAMBER, type Mechanism, TOE } from '../pose/mechanism.ts';
import { SPIN_CAMBER, SPIN_TOE } from '../pose/wheel.ts';
import type { Evidence, Sight } from './evidence.ts';

/** Degrees within which the model's wheels lean as read. */
const CLOSE = 1e-9;
const ROUNDS = 12;

/** What was changed of the parameters at a sight: the settings, how they were missed, and how the wheels lean. */
interface State {
  readonly change: Float64Array;
  readonly settings: readonly Settings[];
  /** Where the body stood there, once it was solved. */
  near?: Float64Array | undefined;
}

/** What was done otherwise than the settings say, sight by sight. */
export type Made = readonly (readonly Change[])[];

export class SightedModel {
  readonly mechanism: Mechanism;
  readonly #params: Float64Array;
  /** A sitting each: state by state, and which of them each sight is in. */
  readonly #states: readonly { readonly all: readonly State[]; readonly of: readonly number[] }[] | undefined;

  /**
   * @param like the assembly as it was entered
   * @param sides as it is tried
   * @param made what was done otherwise than the settings say
   */
  constructor(
    private readonly like: Mechanism,
    sides: readonly Side[],
    private readonly evidence: Evidence,
    made: Made,
  ) {
    this.mechanism = like.moved(sides);
    this.#params = new Float64Array(this.mechanism.linkage.reference.length);
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
    if (!this.#states) return undefined;
    const { mechanism } = this;
    const shown: Float64Array[] = [];
    for (const { all, of } of this.#states) {
      const own = all.map((state) => {
        const angles = new Float64Array(mechanism.numbers);
        if (!mechanism.angles(this.#parameters(state), angles, state.near)) return undefined;
        state.near = mechanism.stands();
        return angles;
      });
      if (own.includes(undefined)) return undefined;
      shown.push(...of.map((state) => own[state]!));
    }
    return joined(shown);
  }

  /**
   * Sight by sight, unknown by unknown what each adds to its numbers, for one mm of it, or as much as all of its share. The
   * wheels are to lean as they were read at the first sights all the same, and what a move does hangs a little on that.
   * @param by how far each is off what was entered
   */
  slopes(unknowns: readonly Unknown[], by: Float64Array): readonly Float64Array[] {
    const byUnknown = new ByUnknown(this.mechanism, unknowns, this.like.sides, by);
    return this.#states!.flatMap(({ all, of }, sitting) => {
      const gradients = this.#gradients[sitting]!;
      const slopes = all.map(({ settings }, state) => byUnknown.slopes(gradients[state]!, settings));
      const first = slopes[of[0]!]!.slice();
      const leans = this.#leansRead(this.evidence[sitting]![0]!);
      for (const [state, own] of slopes.entries()) this.#withLeans(own, first, gradients[state]!, leans);
      return of.map((state) => slopes[state]!);
    });
  }

  /** Of each angle that a wheel leans by, as it was read, its number and the parameter that it is given by. */
  #leansRead({ values }: Sight): readonly (readonly [number: number, parameter: number])[] {
    const { wheels, kind } = this.mechanism.linkage;
    if (kind.points.length === 0) return [];
    const all = wheels.flatMap(({ angles }, w) => [
      [ANGLES_A_WHEEL * w + CAMBER, angles + SPIN_CAMBER] as const,
      [ANGLES_A_WHEEL * w + TOE, angles + SPIN_TOE] as const,
    ]);
    return all.filter(([number]) => !Number.isNaN(values[number]!));
  }

  #withLeans(
    slopes: Float64Array,
    first: Float64Array,
    gradient: Float64Array,
    leans: readonly (readonly [number: number, parameter: number])[],
  ): void {
    const { numbers } = this.mechanism;
    const width = gradient.length / numbers;
    for (let k = 0; k < slopes.length; k += numbers) {
      for (const [lean, parameter] of leans) {
        for (let i = 0; i < numbers; i++) slopes[k + i]! -= first[k + lean]! * gradient[i * width + parameter]!;
      }
    }
  }

  /** What a further change adds to the numbers of one sight, for as small a share of it. */
  gained(sitting: number, sight: number, further: Change): Float64Array {
    const out = new Float64Array(this.mechanism.numbers);
    gainBy(this.#gradients[sitting]![this.#states![sitting]!.of[sight]!]!, out.length, further, out);
    return out;
  }

  /** Sitting by sitting, state by state what its numbers gain by each parameter: nothing where the links are at their end. */
  get #gradients(): readonly (readonly Float64Array[])[] {
    const { mechanism } = this;
    const angles = new Float64Array(mechanism.numbers);
    this.#known ??= this.#states!.map(({ all }) =>
      all.map((state) => {
        const params = this.#parameters(state);
        const gradient = mechanism.angles(params, angles, state.near) ? mechanism.gradient(params) : undefined;
        return gradient ?? new Float64Array(mechanism.numbers * params.length);
      }),
    );
    return this.#known;
  }
  #known: readonly (readonly Float64Array[])[] | undefined;

  /** Its own until the next are asked for. */
  #parameters({ change }: State): Float64Array {
    const { reference } = this.mechanism.linkage;
    const params = this.#params;
    for (let i = 0; i < params.length; i++) params[i] = reference[i]! + change[i]!;
    return params;
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
        all.push({ change, settings });
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

const joined = (all: readonly Float64Array[]): Float64Array => {
  const size = all[0]?.length ?? 0;
  const out = new Float64Array(all.length * size);
  for (const [i, own] of all.entries()) out.set(own, i * size);
  return out;
};

function withMade(params: Float64Array, made: readonly Change[]): Float64Array {
  for (const change of made) applyChange(params, change);
  return params;
}
