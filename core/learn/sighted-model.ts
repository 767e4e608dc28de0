/**
 * What a mechanism shows at the sights: at the settings of each, its wheels leaning as they were read at the first sight
 * of their sitting, as a plan takes the car (see plan/as-measured.ts). One compiled mechanism serves every sitting.
 */
import type { Side } from '../adjuster/of-corner.ts';
import type { Unknown } from '../adjuster/unknowns.ts';
import type { Settings } from '../contract.ts';
import { ByUnknown } from '../pose/by-unknown.ts';
import { applyChange, type Change, gainBy } from '../pose/change.ts';
import { type Lean, leanAt, leaning, leansOf } from '../pose/lean.ts';
import type { Mechanism } from '../pose/mechanism.ts';
import type { Evidence, Sight } from './evidence.ts';

/** What was done otherwise than the settings say, sight by sight. */
export type Made = readonly (readonly Change[])[];

/** Where the car stood: several sights may be of one. */
interface State {
  /** The settings, how they were missed, and how the wheels lean. */
  readonly params: Float64Array;
  readonly settings: readonly Settings[];
  /** Where the body stood there, once it was solved. */
  near?: Float64Array | undefined;
}

/** The states of a sitting, which of them each sight is in, and by what the wheels lean, as far as that was read. */
interface Stood {
  readonly all: readonly State[];
  readonly of: readonly number[];
  readonly leans: readonly Lean[];
}

export class SightedModel {
  readonly mechanism: Mechanism;
  readonly #params: Float64Array;
  /** A sitting each; nothing where the car has no pose at a first sight. */
  readonly #stood: readonly Stood[] | undefined;

  /**
   * @param like the assembly as it was entered
   * @param sides as it is tried
   * @param states sitting by sitting which state each sight is in, in the order in which they come
   * @param made what was done otherwise than the settings say
   */
  constructor(
    private readonly like: Mechanism,
    sides: readonly Side[],
    evidence: Evidence,
    states: readonly (readonly number[])[],
    made: Made,
  ) {
    this.mechanism = like.moved(sides);
    this.#params = new Float64Array(this.mechanism.linkage.reference.length);
    let first = 0;
    const stood = evidence.map((sights, s) => {
      first += sights.length;
      return this.#standing(sights, states[s]!, made.slice(first - sights.length, first));
    });
    this.#stood = stood.includes(undefined) ? undefined : (stood as readonly Stood[]);
  }

  /** The numbers of every sight, one after another; nothing where one has no pose. */
  numbers(): Float64Array | undefined {
    if (!this.#stood) return undefined;
    const { mechanism } = this;
    const shown: Float64Array[] = [];
    for (const { all, of } of this.#stood) {
      const own = all.map((state) => {
        const angles = new Float64Array(mechanism.numbers);
        if (!mechanism.angles(this.#parameters(state), angles, state.near)) return undefined;
        state.near = mechanism.stands();
        return angles;
      });
      if (own.includes(undefined)) return undefined;
      for (const state of of) shown.push(own[state]!);
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
    return this.#stood!.flatMap(({ all, of, leans }, sitting) => {
      const gradients = this.#gradients[sitting]!;
      const slopes = all.map(({ settings }, state) => byUnknown.slopes(gradients[state]!, settings));
      const first = slopes[of[0]!]!.slice();
      for (const [state, own] of slopes.entries()) this.#withLeans(own, first, gradients[state]!, leans);
      return of.map((state) => slopes[state]!);
    });
  }

  #withLeans(slopes: Float64Array, first: Float64Array, gradient: Float64Array, leans: readonly Lean[]): void {
    const { numbers } = this.mechanism;
    const width = gradient.length / numbers;
    for (let k = 0; k < slopes.length; k += numbers) {
      for (const { number, parameter } of leans) {
        for (let i = 0; i < numbers; i++) slopes[k + i]! -= first[k + number]! * gradient[i * width + parameter]!;
      }
    }
  }

  /** What a further change adds to the numbers of one sight, for as small a share of it. */
  gained(sitting: number, sight: number, further: Change): Float64Array {
    const out = new Float64Array(this.mechanism.numbers);
    gainBy(this.#gradients[sitting]![this.#stood![sitting]!.of[sight]!]!, out.length, further, out);
    return out;
  }

  /** Sitting by sitting, state by state what its numbers gain by each parameter: nothing where the links are at their end. */
  get #gradients(): readonly (readonly Float64Array[])[] {
    const { mechanism } = this;
    const angles = new Float64Array(mechanism.numbers);
    this.#known ??= this.#stood!.map(({ all }) =>
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
  #parameters({ params }: State): Float64Array {
    this.#params.set(params);
    return this.#params;
  }

  #standing(sights: readonly Sight[], of: readonly number[], made: Made): Stood | undefined {
    const all: State[] = [];
    for (const [i, { settings }] of sights.entries()) {
      if (of[i] !== all.length) continue;
      const params = this.mechanism.parameters(settings);
      for (const change of made[i]!) applyChange(params, change);
      all.push({ params, settings });
    }
    const { values } = sights[0]!;
    const leans = leansOf(this.mechanism, values);
    const by = leanAt(this.mechanism, all[of[0]!]!.params, leans, values);
    if (!by) return undefined;
    for (const { params } of all) leaning(params, leans, by);
    return { all, of, leans };
  }
}

function joined(all: readonly Float64Array[]): Float64Array {
  const size = all[0]?.length ?? 0;
  const out = new Float64Array(all.length * size);
  for (const [i, own] of all.entries()) out.set(own, i * size);
  return out;
}
