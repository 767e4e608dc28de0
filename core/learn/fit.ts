/**
 * The likeliest car, and how well it is known, from what was read: maximum a posteriori by Gauss–Newton on the real
 * model, damped as Levenberg has it where a step makes it worse.
 *
 * Unknown are the numbers whose covariance a plan counts with (adjuster/unknowns.ts), one error for each time that an
 * adjuster was set (plan/chance/move-error.ts), and for each sitting what a wheel's angles stood at, of which nothing is
 * taken for known: that is projected out. All but the last are 0 ± 1 in their own standard deviations. So
 *
 *   minimise |W(y − h(x) − D·d) without its mean|² + |z|² + |d|²,   x = σ·L·z,
 *
 * with the covariance (1 + JᵀJ)⁻¹ there. Source: any text on estimation, such as Y. Bar-Shalom, X. R. Li, T. Kirubarajan,
 * Estimation with Applications to Tracking and Navigation, ch. 3; from memory.
 */
import { movedBy, type Unknown } from '../adjuster/unknowns.ts';
import { type Off, waysOff } from '../plan/chance/move-error.ts';
import type { Assembly } from '../pose/car-model.ts';
import { changeBetween, scaled } from '../pose/change.ts';
import { Held, product, times, transposedTimes } from './algebra.ts';
import type { Evidence, Sight } from './evidence.ts';
import { asSure, type FoundPlace, startsOf, waysLost } from './places.ts';
import { groupsOf, type Row, rowsOf, withoutMeans } from './rows.ts';
import { type Made, SightedModel } from './sighted-model.ts';

/** Sigmas of a move at which the difference is taken of what it does otherwise. */
const STEP = 1e-4;
/** Standard deviations that a last step is smaller than. */
const LAST_STEP = 1e-6;
/** Standard deviations that a step is smaller than after which the derivatives are about the same. */
const NEARLY = 0.03;
const MOST_STEPS = 40;
/** A share of the cost that is nothing. */
const ROUNDING = 1e-9;
const MOST_DAMPING = 1e6;
const LEAST_DAMPING = 1e-3;
/** A slope, in sigmas, that says nothing. */
const NOTHING = 1e-6;

/** What is looked for, and what is known of it before. */
export interface Prior {
  readonly unknowns: readonly Unknown[];
  /** Root of their covariance, each in its own standard deviations; absent: independent. */
  readonly root?: Float64Array;
}

export interface Fit {
  /** In the units of the unknowns, in their order: what is to be added to the car. */
  readonly by: Float64Array;
  /** In the units of the unknowns, square. */
  readonly covariance: Float64Array;
  /** Whether the readings say anything at all. */
  readonly taught: boolean;
  /** Adjusters of unknown place: how far from where they were counted, and how sure, in sigmas of their travel. */
  readonly places: readonly FoundPlace[];
  /** What was minimised. */
  readonly cost: number;
  /** At the end: what is left of each reading, and its derivatives, both in sigmas and without their means. */
  readonly left: Linear;
}

/** Readings that are linear in what is looked for. */
export interface Linear {
  /** One row an angle that was read. */
  readonly rows: readonly Row[];
  /** As many as `rows`, with what the answer explains of them put back. */
  readonly off: Float64Array;
  readonly slopes: Float64Array;
  readonly columns: number;
}
export class Fitting {
  readonly #rows: readonly Row[];
  readonly #groups: readonly (readonly number[])[];
  readonly #sights: readonly Sight[];
  /** Sight by sight how each move before it may be off, and the column of that: one each time that it was set. */
  readonly #ways: readonly { readonly off: Off; readonly column: number }[][];
  /** Sight by sight its sitting, and its place in it. */
  readonly #places: readonly (readonly [sitting: number, sight: number])[];
  /** Sitting by sitting where the car stood at each sight, counted as they come: the same where all stands and is missed alike. */
  readonly #states: readonly (readonly number[])[];
  /** Adjusters of unknown place, a column each from the first on. */
  readonly #lost: readonly string[];
  readonly #firstLost: number;
  #columns: number;
  readonly #count: number;
  readonly #size: number;

  /** @param sigmas of the gauge, number by number */
  constructor(
    private readonly assembly: Assembly,
    private readonly evidence: Evidence,
    private readonly prior: Prior,
    sigmas: Float64Array,
  ) {
    this.#sights = evidence.flat();
    this.#count = prior.unknowns.length;
    this.#columns = this.#count;
    const columns = new Map<string, number>();
    this.#ways = this.#sights.map(({ set, settings }) =>
      set.flatMap(({ side, id, found, event, within }) =>
        waysOff(assembly.model, side, id, found, settings[side]![id]!, 'left', within).map((off, way) => {
          const key = `${event}/${way}`;
          const column = columns.get(key) ?? this.#columns++;
          columns.set(key, column);
          return { off, column };
        }),
      ),
    );
    this.#firstLost = this.#columns;
    this.#sights.forEach((sight, at) => {
      for (const { off, place } of waysLost(assembly.model, sight)) {
        const column = columns.get(place) ?? this.#columns++;
        columns.set(place, column);
        this.#ways[at]!.push({ off, column });
      }
    });
    this.#lost = [...columns].filter(([, column]) => column >= this.#firstLost).map(([place]) => place);
    this.#places = evidence.flatMap((sights, sitting) => sights.map((_, sight) => [sitting, sight] as const));
    this.#size = sigmas.length;
    this.#states = evidence.map((sights) =>
      countedAlike(
        sights.map((sight) => [sight.settings, this.#ways[this.#sights.indexOf(sight)]!.map(({ column }) => column)]),
      ),
    );
    this.#rows = rowsOf(evidence, sigmas);
    this.#groups = groupsOf(this.#rows);
  }

  /** Nothing where the car as entered has no pose at a sight. Of several places to begin from the one that ends best. */
  run(): Fit | undefined {
    const ends = startsOf(this.#lost.length).flatMap((places) => this.#runFrom(places) ?? []);
    const [best] = [...ends].sort((a, b) => a.cost - b.cost);
    return best && { ...best, places: asSure(best, ends) };
  }

  #runFrom(places: readonly number[]): Fit | undefined {
    const start = new Float64Array(this.#columns);
    start.set(places, this.#firstLost);
    let here = this.#at(start);
    if (!here) return undefined;
    let slopes = this.#slopes(here);
    let damping = 0;
    let held = heldBy(slopes, here.z.length, damping);
    for (let i = 0; i < MOST_STEPS && damping < MOST_DAMPING; i++) {
      const { z, off, cost } = here;
      const step = held.solve(transposedTimes(slopes, z.length, off).map((pull, k) => pull - z[k]!));
      if (largest(step) < LAST_STEP) break;
      const next = this.#at(z.map((x, k) => x + step[k]!));
      if (!next || next.cost > cost + ROUNDING * (1 + cost)) damping = Math.max(1, damping * 10);
      else {
        here = next;
        if (largest(step) > NEARLY) slopes = this.#slopes(here);
        else if (damping === 0) continue;
        damping = damping < LEAST_DAMPING ? 0 : damping / 10;
      }
      held = heldBy(slopes, z.length, damping);
    }
    return this.#answer(here, slopes);
  }

  #at(z: Float64Array): Here | undefined {
    const sides = movedBy(this.assembly.sides, this.prior.unknowns, this.#own(z));
    const made = this.#ways.map((own) => own.map(({ off, column }) => off(z[column]!)));
    const model = new SightedModel(this.assembly.model, sides, this.evidence, this.#states, made);
    const numbers = model.numbers();
    if (!numbers) return undefined;
    const off = this.#off(numbers);
    return { z, made, model, off, cost: square(off) + square(z) };
  }

  #answer({ z, off, cost }: Here, slopes: Float64Array): Fit {
    const columns = z.length;
    const count = this.#count;
    const held = heldBy(slopes, columns, 0);
    const taught = slopes.some((slope, at) => at % columns < count && Math.abs(slope) > NOTHING);
    const explained = times(slopes, z);
    const places = this.#lost.map((place, i) => {
      const column = this.#firstLost + i;
      const unit = new Float64Array(columns);
      unit[column] = 1;
      return { place, at: z[column]!, deviation: Math.sqrt(held.solve(unit)[column]!) };
    });
    return {
      by: this.#own(z),
      covariance: this.#inUnits(held.inverse(count)),
      taught,
      places,
      cost,
      left: { rows: this.#rows, off: off.map((x, r) => x + explained[r]!), slopes, columns },
    };
  }

  /** The unknowns in their units. */
  #own(z: Float64Array): Float64Array {
    const { unknowns, root } = this.prior;
    const own = z.subarray(0, this.#count);
    const whole = root ? times(root, own) : own;
    return Float64Array.from(unknowns, ({ sigma }, i) => sigma * whole[i]!);
  }

  #inUnits(inverse: Float64Array): Float64Array {
    const { unknowns, root } = this.prior;
    const count = this.#count;
    const whole = root ? product(product(root, inverse, count), transposed(root, count), count) : inverse;
    return whole.map((x, at) => x * unknowns[Math.floor(at / count)]!.sigma * unknowns[at % count]!.sigma);
  }

  #slopes({ z, made, model }: Here): Float64Array {
    const columns = z.length;
    const rows = this.#rows;
    const count = this.#count;
    const own = new Float64Array(rows.length * count);
    const { unknowns } = this.prior;
    const bySights = model.slopes(unknowns, this.#own(z));
    rows.forEach(({ sight, number, sigma }, r) => {
      for (let k = 0; k < count; k++) {
        own[r * count + k] = bySights[sight]![k * this.#size + number]! * (unknowns[k]!.sigma / sigma);
      }
    });
    const { root } = this.prior;
    const mixed = root ? product(own, root, count) : own;
    const slopes = new Float64Array(rows.length * columns);
    for (let r = 0; r < rows.length; r++) slopes.set(mixed.subarray(r * count, (r + 1) * count), r * columns);
    const bySight = new Map<number, number[]>();
    for (const [r, { sight }] of rows.entries()) bySight.set(sight, [...(bySight.get(sight) ?? []), r]);
    for (const [sight, own] of this.#ways.entries()) {
      for (const [way, { off, column }] of own.entries()) {
        const change = scaled(changeBetween(off(z[column]! + STEP), made[sight]![way]!), 1 / STEP);
        const gained = model.gained(...this.#places[sight]!, change);
        for (const r of bySight.get(sight) ?? [])
          slopes[r * columns + column] = gained[rows[r]!.number]! / rows[r]!.sigma;
      }
    }
    withoutMeans(rows, this.#groups, slopes, columns);
    return slopes;
  }

  /** What is left of the readings, in sigmas. */
  #off(numbers: Float64Array): Float64Array {
    const off = Float64Array.from(
      this.#rows,
      ({ sight, number, value, sigma }) => (value - numbers[sight * this.#size + number]!) / sigma,
    );
    withoutMeans(this.#rows, this.#groups, off, 1);
    return off;
  }
}

/** A car that is tried. */
interface Here {
  readonly z: Float64Array;
  /** How each move before each sight was off by it. */
  readonly made: Made;
  readonly model: SightedModel;
  /** What is left of each reading, in sigmas. */
  readonly off: Float64Array;
  readonly cost: number;
}

/** What readings and what was known before hold it by. */
export const heldBy = (slopes: Float64Array, columns: number, damping: number): Held =>
  new Held(slopes, columns, 1 + damping);

/** Which of the different ones each is, in the order in which they come. */
function countedAlike(all: readonly unknown[]): readonly number[] {
  const keys = all.map((one) => JSON.stringify(one));
  const each = [...new Set(keys)];
  return keys.map((key) => each.indexOf(key));
}

const square = (v: Float64Array): number => v.reduce((sum, x) => sum + x * x, 0);
const largest = (v: Float64Array): number => v.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
const transposed = (a: Float64Array, size: number): Float64Array =>
  a.map((_, at) => a[(at % size) * size + Math.floor(at / size)]!);
