/**
 * The one shape of an adjuster kind: which positions it has, what a position does to the corner, how a person is told
 * to move it. The planner, the validator and the screens know this shape only.
 */
import type { GenericSchema } from 'valibot';
import type { Adjuster, Corner, Position, Vec3 } from '../contract.ts';

/** What a position changes, counted from the adjuster's own zero. The model takes the reference's effect away. */
export interface Effect {
  /** Points that move, mm, in the corner frame. */
  readonly shift?: Readonly<Record<string, Vec3>>;
  /** Links (named by their body point) that grow, mm. */
  readonly lengthen?: Readonly<Record<string, number>>;
}

export interface AdjusterKind {
  readonly kind: string;
  readonly name: string;
  /** valibot schema of an adjuster of this kind, all fields. */
  readonly schema: GenericSchema<unknown, Adjuster>;
  /** Names of the points that it moves and the links that it lengthens: what the suspension must have. */
  readonly touches: (adjuster: Adjuster) => { readonly points?: readonly string[]; readonly links?: readonly string[] };
  /** Every position, in order: ascending numbers, or labels as listed. */
  readonly positions: (adjuster: Adjuster) => readonly Position[];
  /** What is allowed, in words for a message. */
  readonly allowed: (adjuster: Adjuster) => string;
  /** Whether the adjuster can stand there, on a mark or between two. */
  readonly accepts: (adjuster: Adjuster, position: Position) => boolean;
  readonly effect: (adjuster: Adjuster, position: Position) => Effect;
  /** One sentence: what to do, from → to. */
  readonly instruction: (adjuster: Adjuster, from: Position, to: Position, corner: Corner) => string;
  /** A position in words, with its unit. */
  readonly show: (adjuster: Adjuster, position: Position) => string;
  /** What one step is called, and the two positions about the reference that show it. */
  readonly step: (adjuster: Adjuster) => { readonly from: Position; readonly to: Position; readonly name: string };
  /** Minutes to move it once where the user has not said: trade practice, no source. */
  readonly effort: number;
}
