/**
 * Constraint rows: each says one thing that stays true of the rigid upright while it moves, as a number that is zero.
 * A suspension kind is a list of rows; the solver knows rows only, so that no kind has a solver of its own.
 *
 * All numbers of a row stand in one flat parameter array, so that an adjuster is a sparse change of parameters and
 * a position costs a copy and a few additions. Layout at `row.at`:
 *
 *   distance  [ax ay az  bx by bz  L]   the body point b keeps the distance L to the chassis point a
 *   line      [ax ay az  bx by bz  ex ey ez]   the chassis point a stays in the plane through body point b whose
 *             normal e is fixed in the body (two of them: a stays on a line of the body)
 *   height    [bx by bz  z]   the body point b is at height z
 *
 * Body points are relative to the wheel centre, axes parallel to the corner frame in the reference pose.
 */
export const DISTANCE = 0;
export const LINE = 1;
export const HEIGHT = 2;
export type RowType = typeof DISTANCE | typeof LINE | typeof HEIGHT;

export interface Row {
  readonly type: RowType;
  /** Where the row's parameters begin. */
  readonly at: number;
}

/** A row, and the points that it is written from. */
export interface HeldRow extends Row {
  /** Whose points they are: 0 on the left, or of a corner alone. */
  readonly side: number;
  /** On what carries the body, and on the body; the same where a point sits in a seat, or has a height. */
  readonly ends: readonly [string, string];
}

/** How many parameters a row of each type has. */
export const ROW_SIZE = [7, 9, 4] as const;
