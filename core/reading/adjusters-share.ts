/**
 * What the adjusters of two wheels have in their angles, so that what is left of a difference between them can be told
 * from it: a side with 4.8 mm less shim leans by that, and nothing is bent.
 */
import type { Corner, Reading, WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { Named } from '../said.ts';

/** Angles that one side is held against the other in. */
export const HELD = ['camber', 'sai', 'included', 'caster'] as const;
/** One of them. */
export type HeldAngle = (typeof HELD)[number];
/** The least and the most, degrees. */
export type Span = readonly [low: number, high: number];
/** What may be in each angle of a wheel. */
export type Spans = Readonly<Record<HeldAngle, Span>>;

/** Something that is not known of the adjusters, and what it may have in the angles of wheels. */
export interface Unsure {
  /** The adjuster whose place is not known; absent where a chart does not say what its place does. */
  readonly named?: Named;
  readonly spans: Readonly<Partial<Record<Corner, Spans>>>;
}

/** What the adjusters of a car have in its wheels' angles, degrees. */
export interface AdjustersShare {
  /** What each wheel has from its adjusters' standing off their references; a wheel without a pose there is absent. */
  readonly added: Readonly<Partial<Record<Corner, WheelReading>>>;
  readonly unsure: readonly Unsure[];
}

/**
 * The reading with both wheels of an axle leaning as far as their adjusters would have them halfway between the two: the
 * sides then differ by what is not the adjusters', and what both have of them stays. A wheel without a pose is left out.
 */
export function evenedOut(reading: Reading, { added }: AdjustersShare): Reading {
  const even: { -readonly [K in keyof Reading]: Reading[K] } = { ...reading };
  for (const [left, right] of Object.values(AXLES)) {
    const [l, r] = [added[left], added[right]];
    if (!l || !r) {
      delete even[left];
      delete even[right];
      continue;
    }
    even[left] = less(reading[left], l, r);
    even[right] = less(reading[right], r, l);
  }
  return even;
}

function less(read: WheelReading = {}, own: WheelReading, other: WheelReading): WheelReading {
  const even: { -readonly [A in keyof WheelReading]: number } = { ...read };
  for (const angle of ['camber', 'caster', 'sai'] as const) {
    const value = read[angle];
    if (value !== undefined) even[angle] = value - ((own[angle] ?? 0) - (other[angle] ?? 0)) / 2;
  }
  return even;
}
