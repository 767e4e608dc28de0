/**
 * What the database keeps, one interface a store. Ids are random UUIDs, times ISO 8601; both come from the app.
 * Readings and moves never change: a correction is a new record that names the one it replaces. Of all others nothing is
 * overwritten by what comes from another phone: see versions.ts and visit-facts.ts.
 */
import type {
  Car,
  CarPacks,
  CarSettings,
  Corner,
  Moved,
  Position,
  Reading,
  SetByRack,
  ShimCount,
  Spec,
} from '../contract.ts';
import type { Versioned } from './versions.ts';
import type { Facts } from './visit-facts.ts';

export interface CarRecord extends Versioned {
  readonly id: string;
  readonly car: Car;
  readonly spec: Spec;
  /** When it was last edited. */
  readonly changed: string;
  /** The made-up car to learn on. */
  readonly practice?: boolean;
}

/** Its facts: when it was closed, and pre-checks by name: `ok`, or what was noted. */
export interface VisitRecord extends Facts {
  readonly id: string;
  readonly carId: string;
  readonly opened: string;
}

export interface ReadingRecord {
  readonly id: string;
  readonly visitId: string;
  readonly at: string;
  readonly reading: Reading;
  /** Where the adjusters stood when it was taken. */
  readonly settings: CarSettings;
  /** The shims that were in packs then, where they were known. */
  readonly packs?: CarPacks;
  /** The digits exactly as they were typed, by field. */
  readonly typed: Readonly<Record<string, string>>;
  readonly replaces?: string;
  /** Ids of other corrections of the same reading, made on another phone, that were seen and not taken. */
  readonly over?: readonly string[];
}

export interface MoveRecord {
  readonly id: string;
  readonly visitId: string;
  readonly readingId: string;
  readonly at: string;
  readonly corner: Corner;
  readonly adjuster: string;
  readonly from: Position;
  readonly to: Position;
  readonly outcome: NonNullable<Moved['outcome']>;
  /** Of a pack: the shims that it was built of, where they are known. */
  readonly shims?: readonly ShimCount[];
  /** Where it was turned until the rack showed a value. */
  readonly setBy?: SetByRack;
  readonly replaces?: string;
}

/** What is being typed, kept at every digit; its id says where, e.g. `reading:VISIT`. */
export interface DraftRecord extends Versioned {
  readonly id: string;
  readonly texts: Readonly<Record<string, string>>;
  /** The field under the caret. */
  readonly cursor?: string;
  readonly changed: string;
}

/** One setting of the app: `units`, `gauge`, `theme`, `backup`. */
export interface PreferenceRecord extends Versioned {
  readonly id: string;
  readonly value: unknown;
}

/** All records, by store. */
export interface Stores {
  readonly cars: readonly CarRecord[];
  readonly visits: readonly VisitRecord[];
  readonly readings: readonly ReadingRecord[];
  readonly moves: readonly MoveRecord[];
  readonly drafts: readonly DraftRecord[];
  readonly preferences: readonly PreferenceRecord[];
}
export type StoreName = keyof Stores;
export const STORE_NAMES = [
  'cars',
  'visits',
  'readings',
  'moves',
  'drafts',
  'preferences',
] as const satisfies readonly StoreName[];
