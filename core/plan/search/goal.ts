/** What a search is asked for, and what it finds. */
import type { ShimBound } from '../shims/shim-bound.ts';

export interface Goal {
  /** Only combinations with every term in its window. */
  readonly inWindow: boolean;
  /** Least effort first, distance second; else distance alone, effort to settle a tie. */
  readonly effortFirst: boolean;
  /**
   * For each assembly what a state of it that is in the windows costs beside the terms; infinite where it is not to be
   * chosen.
   */
  readonly extra?: readonly ((state: number) => number)[];
  /** No combination that takes more minutes. */
  readonly maxEffort?: number;
  /** A choice that does what is asked for, where one is known: what costs more need not be looked at. */
  readonly known?: readonly number[];
  /** Only combinations that the drawer can serve. */
  readonly shimBound?: ShimBound;
}

export interface Found {
  readonly states: readonly number[];
  readonly distance: number;
  readonly effort: number;
}

/** Minutes are sums of single-precision numbers. */
export const SAME_EFFORT = 1e-4;
