/**
 * The one shape of an adjuster kind: which positions it has, what a position does to the corner, how a person is told
 * to move it. The planner, the validator and the screens know this shape only.
 */
import type { GenericSchema } from 'valibot';
import type { Adjuster, Corner, Position, ShimCount, Suspension, Vec3 } from '../contract.ts';
import type { Rule } from '../rule.ts';
import type { Act, Place, Remedy, Step } from '../said.ts';
import type { AskedField } from './ask.ts';

/** What a position changes, counted from the adjuster's own zero. The model takes the reference's effect away. */
export interface Effect {
  /** Points that move, mm, in the corner frame. */
  readonly shift?: Readonly<Record<string, Vec3>>;
  /** Links (named by their body point) that grow, mm. */
  readonly lengthen?: Readonly<Record<string, number>>;
  /** Degrees that a strut's line turns in the upright, so that the wheel's top leans out. */
  readonly tilt?: number;
  /** Degrees that the spin axis turns against the upright. */
  readonly spin?: { readonly camber: number; readonly toe: number };
  /** Degrees that are added to what the wheel reads: a printed chart, not geometry. */
  readonly add?: { readonly camber: number; readonly caster: number; readonly toe: number };
}

/** What an adjuster must find in the suspension. */
export interface Touches {
  readonly points?: readonly string[];
  /** Links, named by their body point. */
  readonly links?: readonly string[];
  /** Points that sit in a seat of the axle. */
  readonly seats?: readonly string[];
  /** A strut, whose line it turns. */
  readonly line?: true;
}

/** How exactly a move can be made. */
export interface Tolerance {
  /** ± at 95 % where the user has not said: trade practice, no source. */
  readonly usual: number;
  readonly unit: string;
  /**
   * What a move that is off by so much does beside what its position says, each independently. Absent: what as much
   * more of the position does.
   */
  readonly error?: (adjuster: Adjuster, from: Position, to: Position, by: number) => readonly Effect[];
  /** The position that is off by so much, where positions are not numbers. */
  readonly off?: (to: Position, by: number) => Position;
}

/** What of an adjuster's own effect is not known for certain, and shows once it is moved and read. */
export interface Unsure {
  /** Names of the numbers that may be off; 0 each for the adjuster as it was entered. */
  readonly of: readonly string[];
  /** One standard deviation of each, where a move is made to so much: one standard deviation too. 0: it is known. */
  readonly sigma: (by: number, adjuster: Adjuster) => number;
  /** The adjuster with these numbers so much off, in their order. */
  readonly with: (adjuster: Adjuster, by: readonly number[]) => Adjuster;
  /**
   * What of the error of a move stays however well these are known: as `Tolerance.error`, of which it is a part. Absent: all
   * of it, as these are no part of it.
   */
  readonly left?: NonNullable<Tolerance['error']>;
}

/** Towards higher positions or lower ones. */
export type End = 1 | -1;

/** What would let an adjuster go further than it can. */
export interface Extension {
  /** Of how far. */
  readonly unit: 'mm' | 'turns' | 'degrees';
  /** The parts or work that it takes, beyond the lower end and beyond the upper. Trade practice. */
  readonly takes: readonly [lower: Remedy, upper: Remedy];
  /**
   * Positions that it would have beyond an end, nearest first, each further by more or as much. Absent where its own
   * positions cannot say: then the point that it moves is moved beside it.
   */
  readonly beyond?: (adjuster: Adjuster, end: End) => readonly { readonly position: Position; readonly by: number }[];
}

/** Degrees that a wheel gains, as far as they are known. */
export interface Gains {
  readonly camber?: number;
  readonly caster?: number;
  readonly toe?: number;
}

/** Where an act is done, and what is known of it beside the adjuster. */
export interface ActPlace {
  readonly corner: Corner;
  /** Where shims are counted: those that make the pack when it is done. */
  readonly shims?: readonly ShimCount[] | undefined;
  /** The shims that are in the pack now, where they are known. */
  readonly holds?: readonly ShimCount[] | undefined;
  /** What the rack will show that the wheel has gained, degrees; absent what was not measured. */
  readonly gains?: Gains;
  /** Of what both wheels of an axle hang on: what the left and the right one gain. */
  readonly both?: readonly Gains[];
}

/** How an adjuster of one side stands to the same one of the other side. */
export interface BothSides {
  /** mm that it has gained since its reference; of what is one for the whole axle, its place itself. */
  readonly value: number;
  /** The most that left and right may differ by. */
  readonly most: number;
  /** What there was at the reference, where that is on file. Where one side lacks it both are taken for equal there. */
  readonly start?: number;
}

/** All that is known of a kind of adjuster: adding one is one such object in a file of its own. */
export interface AdjusterKind {
  readonly kind: string;
  readonly name: string;
  /** valibot schema of an adjuster of this kind, all fields. */
  readonly schema: GenericSchema<unknown, Adjuster>;
  /** Names of the points that it moves and the links that it lengthens: what the suspension must have. */
  readonly touches: (adjuster: Adjuster) => Touches;
  /** Every position, in order: ascending numbers, or labels as listed. */
  readonly positions: (adjuster: Adjuster) => readonly Position[];
  /** Where it may stand, for who enters a position that it does not accept. */
  readonly allowed: (adjuster: Adjuster) => Rule;
  /** Whether the adjuster can stand there, on a mark or between two. */
  readonly accepts: (adjuster: Adjuster, position: Position) => boolean;
  /** What the position does, counted from the adjuster's own zero. Few kinds need the suspension's points for it. */
  readonly effect: (adjuster: Adjuster, position: Position, suspension: Suspension) => Effect;
  /** Its effect hangs on where the points are, not on the position alone. */
  readonly byPoints?: true;
  /** What the hand does, from → to. */
  readonly act: (adjuster: Adjuster, from: Position, to: Position, where: ActPlace) => Act;
  /**
   * What shims its position, a thickness of up to `max` mm, is made of: their sizes, mm, the most that there may be, and the
   * least pack that has to stay in.
   */
  readonly stack?: (adjuster: Adjuster) => {
    readonly sizes: readonly number[];
    readonly max: number;
    readonly maxCount?: number;
    readonly min?: number;
  };
  /** A position as its scale counts it. */
  readonly place: (adjuster: Adjuster, position: Position) => Place;
  /** One step, and the two positions about the reference that show it. */
  readonly step: (adjuster: Adjuster) => { readonly from: Position; readonly to: Position; readonly said: Step };
  /** What left and right must agree in. Absent: the two sides are free of one another. */
  readonly bothSides?: (adjuster: Adjuster, position: Position) => BothSides | undefined;
  /** It has one position for the whole axle: both sides have it, or neither, and to change it is one job. */
  readonly wholeAxle?: true;
  /**
   * What else is moved in the same job, where it is moved too: others on the same `arm`, whose bolts are loosened once
   * for all; or the same one on the other side of an `axle` on links, which is turned by both. Absent: nothing.
   */
  readonly job?: 'arm' | 'axle';
  /** Another adjuster of the corner whose position may differ from this one's by so much at the most. */
  readonly pair?: (adjuster: Adjuster) => { readonly with: string; readonly most: number } | undefined;
  /** Its effect is what a chart prints, so that what it does to other angles beyond the chart is not known. */
  readonly byChart?: true;
  /** Absent where nothing simple would. */
  readonly extension?: Extension;
  /**
   * A change of it does near enough the same wherever it begins, so that it can be planned from a place that is not known.
   * Absent: never. A cam turned on from an unknown place may do nothing, or the opposite.
   */
  readonly even?: (adjuster: Adjuster) => boolean;
  /**
   * Degrees from where it is at dead centre, so that turning it hardly moves anything: 0 there, 90 at the most. Absent
   * where it has none.
   */
  readonly fromDeadCentre?: (adjuster: Adjuster, position: Position) => number;
  /** How large a part a position takes, 0 none … 1 the largest. Absent, or nothing, where every position is the same part. */
  readonly size?: (adjuster: Adjuster, position: Position) => number | undefined;
  /** It is off-centre and turned: a cam. */
  readonly cam?: true;
  /** It can be turned while the rack is watched, unless an adjuster of it says that it cannot. */
  readonly live?: true;
  /** What a form asks for beside name, time and torque, in the order in which it is asked. */
  readonly fields: readonly AskedField[];
  /** What most of them have, so that little is left to type; and a made-up one with a move, for choosing by eye. */
  readonly start: Readonly<Record<string, unknown>>;
  readonly sample: {
    readonly adjuster: Readonly<Record<string, unknown>>;
    readonly from: Position;
    readonly to: Position;
  };
  readonly tolerance: Tolerance;
  /** Absent: what it does follows from where the points are. */
  readonly unsure?: Unsure;
  /** The same adjuster fitted the other way round, or with a thread of the other hand. Absent: it cannot be. */
  readonly reversed?: (adjuster: Adjuster) => Adjuster;
  /** Minutes to move it once where the user has not said: trade practice, no source. */
  readonly effort: number;
}
