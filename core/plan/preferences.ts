/**
 * What a careful hand does where the windows leave a choice, as data: each preference with its weight and its reason. They
 * decide among plans of the same work and never against the windows (see practical.ts). Trade practice, no source.
 */
import type { AdjusterKind } from '../adjuster/kind.ts';
import type { Adjuster, Position } from '../contract.ts';
import type { PreferenceId } from '../said.ts';
import type { Felt } from './felt.ts';
import { positionsOf, samePosition } from './states/axis.ts';

/** An adjuster that a plan moves. */
export interface Made {
  readonly adjuster: Adjuster;
  readonly kind: AdjusterKind;
  readonly from: Position;
  readonly to: Position;
}

interface Liking {
  /** Its reason stands under this name in core/words. */
  readonly id: PreferenceId;
  /** What a cost of 1 counts, in −2 ln of chance: 0.02 is about a point of it. */
  readonly weight: number;
}
/** Of one move: 0 nothing to say against it … 1 as bad as it gets. */
export interface OfMove extends Liking {
  readonly cost: (made: Made) => number;
  /** A move that costs anything is not made where the windows are met as surely without. */
  readonly never?: true;
}
/** Of one adjuster's moves left and right, of those that one assembly holds. */
export interface OfPair extends Liking {
  readonly cost: (left: Made, right: Made) => number;
}

/** Of all moves of one wheel together: so many degrees of what they do beside what is asked for cost 1, and more no more. */
export interface OfWheel extends Liking {
  readonly of: keyof Felt;
  readonly full: number;
}

/** Degrees from dead centre within which a cam is not left. */
export const NEAR_DEAD_CENTRE = 20;

export const MOVE_PREFERENCES: readonly OfMove[] = [
  {
    id: 'few-adjusters',
    weight: 0.02,
    cost: () => 1,
  },
  {
    id: 'small-moves',
    weight: 0.04,
    cost: shareMoved,
  },
  {
    id: 'dead-centre',
    weight: 0.1,
    never: true,
    cost: ({ adjuster, kind, to }) => {
      const away = kind.fromDeadCentre?.(adjuster, to) ?? 90;
      return away < NEAR_DEAD_CENTRE - 1e-9 ? 1 : 0;
    },
  },
  {
    id: 'end-of-travel',
    weight: 0.03,
    cost: ({ adjuster, kind, to }) => {
      const all = positionsOf(kind, adjuster);
      return typeof to === 'number' && (samePosition(to, all[0]!) || samePosition(to, all.at(-1)!)) ? 1 : 0;
    },
  },
  {
    id: 'small-parts',
    weight: 0.04,
    cost: ({ adjuster, kind, to }) => kind.size?.(adjuster, to) ?? 0,
  },
];

export const PAIR_PREFERENCES: readonly OfPair[] = [
  {
    id: 'alike',
    weight: 0.06,
    cost: (left, right) => Math.abs(shareMoved(left) - shareMoved(right)),
  },
];

export const WHEEL_PREFERENCES: readonly OfWheel[] = [
  { id: 'undone', weight: 0.04, of: 'undone', full: 0.5 },
  { id: 'bump-steer', weight: 0.04, of: 'bumpSteer', full: 0.1 },
  { id: 'camber-gain', weight: 0.02, of: 'camberGain', full: 0.1 },
];
/**
 * A move that was made in this round is not asked for again, unless without it windows stay out that can be met, or it
 * brings so much more chance (see done.ts).
 */
export const NOT_AGAIN: { readonly id: PreferenceId; readonly least: number } = { id: 'not-again', least: 0.05 };

/** How much of its whole travel a move is, 0…1; of labels, which are counted, as they are listed. */
function shareMoved({ adjuster, kind, from, to }: Made): number {
  // Of parts that are exchanged it is the size that matters.
  if (kind.size?.(adjuster, to) !== undefined) return 0;
  const all = positionsOf(kind, adjuster);
  if (typeof from === 'number' && typeof to === 'number') {
    const travel = Math.abs((all.at(-1) as number) - (all[0] as number));
    return travel > 0 ? Math.min(1, Math.abs(to - from) / travel) : 0;
  }
  const place = (position: Position): number => all.findIndex((one) => samePosition(one, position));
  return Math.min(1, Math.abs(place(to) - place(from)) / Math.max(1, all.length - 1));
}
