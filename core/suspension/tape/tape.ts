/**
 * How any suspension is read from a tape measure: a table of dimensions, what is taken where one is left out, how well
 * each is known. A kind adds its table and its construction (`double-wishbone.tape.ts`, `strut.tape.ts`).
 */
import type { Vec3 } from '../../contract.ts';
import { InputError } from '../../input-error.ts';
import type { Rule } from '../../rule.ts';

/** One dimension that a tape can take. */
export interface TapeDimension {
  readonly name: string;
  /** As a technician reads it, and the points of the drawing that it belongs to or lies between. */
  readonly label: string;
  readonly between: readonly string[];
  readonly unit: 'mm' | 'degrees';
  readonly low: number;
  readonly high: number;
  /**
   * What is taken when it is left out: a number, or the name of the dimension (or of one that follows from the others)
   * that it is taken to equal. Absent: it has to be given.
   */
  readonly otherwise?: number | string;
  /** ± mm at 95 % of that. */
  readonly tolerance?: number;
  /** What of the points it is, for whom a layout is to have it; absent: no length between points alone. */
  readonly measure?: Measure | undefined;
  /** Why that, in a person's words; a length in it stands as `{110 mm}`, for `inShop` of core/units to say. */
  readonly why: string;
}

/**
 * A length as the points have it. Of the two that it is `between`: how far they are apart; how far the first is inboard of
 * the second, or ahead of it. Of one: its height, twice its distance from the car's middle, how far it is behind the front
 * axle. From the hub's face: the first, inboard of where that face stands beside the second.
 */
export type Measure = 'apart' | 'inboard' | 'ahead' | 'height' | 'track' | 'behind' | 'inboard-of-face';

type Words = Pick<TapeDimension, 'label' | 'between' | 'why' | 'measure'>;
interface Length extends Words, Pick<TapeDimension, 'low' | 'high'> {
  readonly otherwise: number | string;
  readonly tolerance: number;
}
interface Angle extends Words {
  /** Within ± this. */
  readonly limit: number;
  readonly otherwise?: number;
}

/** Without another word it is the distance of two points, or the height of one. */
export const mm = (name: string, length: Length): TapeDimension => ({
  name,
  unit: 'mm',
  measure: length.between.length === 2 ? 'apart' : 'height',
  ...length,
});
export const deg = (name: string, { limit, ...angle }: Angle): TapeDimension => ({
  name,
  unit: 'degrees',
  low: -limit,
  high: limit,
  ...angle,
});

/** ± mm at 95 % of what was measured and says nothing else. */
export const TAPE_TOLERANCE = 5;

/** A dimension, or how well it is known with it. */
export type Measured = number | { readonly value: number; readonly tolerance?: number };
/** Dimensions by name, mm and degrees; `tie` says on which side of the axle the steering arm stands, default behind. */
export type Tape = Readonly<Record<string, Measured | string>>;

export interface TapedSuspension {
  readonly points: Readonly<Record<string, Vec3>>;
  readonly camber: number;
  readonly toe: number;
  /** ± mm at 95 %: root mean square over the lengths, defaults included. */
  readonly tolerance: number;
  /** Every dimension as it was used. */
  readonly used: Readonly<Record<string, number>>;
  /** Names of those that were left out and taken from the table. */
  readonly assumed: readonly string[];
}

/** What a kind builds its points from. */
export interface Dimensions {
  /** A dimension: as given, else as its table says. */
  readonly take: (name: string) => number;
  /** Says what a height or offset is that follows from those taken, for dimensions whose default names it. */
  readonly follows: (name: string, value: number) => void;
  readonly tieAhead: boolean;
  /** Where the tape stands in what was given, for messages. */
  readonly field: string;
}

/** A kind's table and construction. */
export interface TapeLayout {
  readonly kind: string;
  /** In the order in which they are best taken. */
  readonly dimensions: readonly TapeDimension[];
  readonly build: (from: Dimensions) => Record<string, Vec3>;
}

/**
 * Points from dimensions, by the construction at the head of the kind's file.
 * @throws InputError naming the dimension that is missing, unknown, out of its limits, or with which a triangle cannot
 * close, and what it may be
 */
export function suspensionFromTape(
  { kind, dimensions, build }: TapeLayout,
  tape: Readonly<Record<string, unknown>>,
  field: string,
): TapedSuspension {
  const table = new Map(dimensions.map((one) => [one.name, one]));
  const { given, tolerances, tieAhead } = read(tape, kind, table, field);
  const used: Record<string, number> = {};
  const derived: Record<string, number> = {};
  const take = (name: string): number => {
    const { otherwise } = table.get(name) ?? {};
    const byName = (other: string): number => used[other] ?? derived[other] ?? take(other);
    const value = given.get(name) ?? (typeof otherwise === 'string' ? byName(otherwise) : otherwise);
    if (value === undefined) throw new InputError(`${field}.${name}`, value, allowedOf(table.get(name)!));
    used[name] = value;
    return value;
  };
  const follows = (name: string, value: number): void => {
    derived[name] = value;
  };
  const points = build({ take, follows, tieAhead, field });
  const [camber, toe] = [take('camber'), take('toe')];
  const lengths = dimensions.filter(({ unit, name }) => unit === 'mm' && name !== 'axleBehindFront');
  const squares = lengths.map(({ name, tolerance = 0 }) => {
    return (given.has(name) ? (tolerances.get(name) ?? TAPE_TOLERANCE) : tolerance) ** 2;
  });
  return {
    points,
    camber,
    toe,
    tolerance: Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length),
    used,
    assumed: dimensions.map(({ name }) => name).filter((name) => !given.has(name)),
  };
}

const allowedOf = ({ low, high, unit }: TapeDimension): Rule => ({ is: 'number', low, high, unit });

type Table = ReadonlyMap<string, TapeDimension>;

function read(tape: Readonly<Record<string, unknown>>, ownKind: string, table: Table, field: string) {
  const { kind = ownKind, tie = 'behind', ...rest } = tape;
  if (kind !== ownKind) throw new InputError(`${field}.kind`, kind, { is: 'exactly', value: ownKind });
  if (tie !== 'ahead' && tie !== 'behind')
    throw new InputError(`${field}.tie`, tie, { is: 'choice', of: ['ahead', 'behind'] });
  const given = new Map<string, number>();
  const tolerances = new Map<string, number>();
  for (const [name, entry] of Object.entries(rest)) {
    if (entry === undefined) continue;
    const one = table.get(name);
    if (!one) {
      const known = ['tie', ...table.keys()];
      throw new InputError(`${field}.${name}`, entry, { is: 'no-such', what: 'dimension', known });
    }
    const { value, tolerance } = typeof entry === 'object' && entry !== null ? (entry as Loose) : { value: entry };
    if (!isWithin(value, one.low, one.high)) throw new InputError(`${field}.${name}`, value, allowedOf(one));
    given.set(name, value);
    if (tolerance === undefined) continue;
    if (!isWithin(tolerance, 0, 200)) {
      const rule = { is: 'number', low: 0, high: 200, unit: 'mm' } as const;
      throw new InputError(`${field}.${name}.tolerance`, tolerance, rule);
    }
    tolerances.set(name, tolerance);
  }
  return { given, tolerances, tieAhead: tie === 'ahead' };
}

interface Loose {
  readonly value?: unknown;
  readonly tolerance?: unknown;
}
const isWithin = (x: unknown, low: number, high: number): x is number => typeof x === 'number' && x >= low && x <= high;
