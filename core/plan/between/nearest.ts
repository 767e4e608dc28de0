/**
 * Gauss–Newton on the full model: where what goes by the rack is turned to for every window's number to come as near as can
 * be to its target, counted in half windows.
 */
import type { AdjusterKind } from '../../adjuster/kind.ts';
import type { Adjuster, AdjusterRef, Corner } from '../../contract.ts';
import { tidy } from '../../units/plain.ts';
import { type Positions, type Problem, valuesAt } from '../problem.ts';
import { positionsOf } from '../states/axis.ts';
import type { Term } from '../terms.ts';

const ROUNDS = 6;
/** Rounds more where some window is missed that another has room for. */
const LEVELLING = 10;
/** Of a mark: where a move goes by the rack this only says about where it ends. */
const FINE = 1 / 20;
/** Of a mark, for derivatives. */
const NUDGE = 0.05;
/** Of all that it may be turned, or marks, at a time: further the effect of a cam is another one. */
const STRIDE = { share: 1 / 6, marks: 2 };
/** Beside squares of half windows: keeps what changes nothing where it is. */
const DAMPING = 1e-3;

/** A move that goes by the rack, and between what it may be turned. */
export interface Free extends AdjusterRef {
  /** From mark to mark, in its own unit. */
  readonly step: number;
  readonly low: number;
  readonly high: number;
}

/** From the first of an adjuster's marks to the last; nothing where its positions are not numbers that can be turned between. */
export function marksOf(kind: AdjusterKind, adjuster: Adjuster): Pick<Free, 'step' | 'low' | 'high'> | undefined {
  const marks = positionsOf(kind, adjuster).filter((mark) => typeof mark === 'number');
  if (marks.length < 2) return undefined;
  const [low, high] = [Math.min(...marks), Math.max(...marks)];
  return { step: (high - low) / (marks.length - 1), low, high };
}

export const aimOf = ({ window }: Term): number => window.aim;
export const middleOf = ({ window: { low, aim, high } }: Term): number =>
  Number.isFinite(high - low) ? (low + high) / 2 : aim;

/**
 * The least sum of squares; where it leaves a number out of its window, and the worst of them made the least brings all in, that
 * (C. L. Lawson, Contributions to the Theory of Linear Least Maximum Approximation, 1961: each weighted by how far
 * it is off, over and over; from memory).
 * @param terms whose numbers count
 * @param start where everything stands, what is free within its bounds
 */
export function nearest(
  problem: Problem,
  terms: readonly Term[],
  start: Positions,
  free: readonly Free[],
  target: (term: Term) => number,
): Positions {
  const at = free.map(({ corner, adjuster }) => start[corner][adjuster] as number);
  const off = (places: readonly number[]): number[] => {
    const { values } = valuesAt(problem, moved(start, free, places));
    return terms.map((term) => (values.get(term)! - target(term)) / term.window.half);
  };
  const weights = terms.map(() => 1);
  let squares: readonly number[] | undefined;
  for (let round = 0; round < ROUNDS + LEVELLING; round++) {
    const now = off(at);
    if (round >= ROUNDS) {
      squares ??= [...at];
      if (!level(weights, now, free.length)) break;
    }
    const rows = free.map(({ step, high }, i) => {
      const h = at[i]! + NUDGE * step > high ? -NUDGE : NUDGE;
      const beside = off(at.map((place, k) => (k === i ? place + h * step : place)));
      return beside.map((value, t) => (value - now[t]!) / h);
    });
    if ([...now, ...rows.flat()].some((value) => !Number.isFinite(value))) break;
    const weighted = (numbers: readonly number[]): number[] => numbers.map((x, t) => x * Math.sqrt(weights[t]!));
    const marks = leastSquares(rows.map(weighted), weighted(now));
    let turned = 0;
    free.forEach(({ step, low, high }, i) => {
      const most = Math.max(STRIDE.marks * step, STRIDE.share * (high - low));
      const by = Math.max(-most, Math.min(most, marks[i]! * step));
      const before = at[i]!;
      at[i] = Math.min(high, Math.max(low, before - by));
      turned = Math.max(turned, Math.abs(at[i]! - before) / step);
    });
    // As near as is said of it; what is out of its window is gone on with by other weights.
    if (turned < FINE / 4 && round < ROUNDS - 1) round = ROUNDS - 1;
  }
  // A window that nothing here can meet takes nothing from the others.
  const isLevel = squares && off(at).every((x) => Math.abs(x) <= 1);
  const ends = isLevel ? at : (squares ?? at);
  const fine = free.map(({ step, low, high }, i) => {
    const rounded = Math.round((ends[i]! - low) / (FINE * step)) * FINE * step + low;
    return Math.min(high, tidy(rounded));
  });
  return moved(start, free, fine);
}

/** Weighs what is furthest off more; not where all is in its window, or as much can be turned as there is to meet. */
function level(weights: number[], off: readonly number[], free: number): boolean {
  const worst = Math.max(...off.map(Math.abs));
  if (worst <= 1 || free >= off.length) return false;
  off.forEach((x, t) => {
    weights[t]! *= Math.abs(x) / worst;
  });
  return true;
}

/** The same, what is free at these places. */
export function moved(start: Positions, free: readonly Free[], places: readonly number[]): Positions {
  const positions: Record<Corner, Positions[Corner]> = { ...start };
  free.forEach(({ corner, adjuster }, i) => {
    positions[corner] = { ...positions[corner], [adjuster]: places[i]! };
  });
  return positions;
}

/** x that makes Σ(rowsᵀx − b)² + damping·|x|² the least, by its normal equations. */
function leastSquares(rows: readonly (readonly number[])[], b: readonly number[]): number[] {
  const dot = (p: readonly number[], q: readonly number[]): number => p.reduce((sum, x, i) => sum + x * q[i]!, 0);
  const a = rows.map((row, i) => rows.map((other, j) => dot(row, other) + (i === j ? DAMPING : 0)));
  const x = rows.map((row) => dot(row, b));
  // Positive definite by its damping: no pivots need be sought.
  for (let i = 0; i < a.length; i++) {
    for (let k = i + 1; k < a.length; k++) {
      const share = a[k]![i]! / a[i]![i]!;
      for (let j = i; j < a.length; j++) a[k]![j]! -= share * a[i]![j]!;
      x[k]! -= share * x[i]!;
    }
  }
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = i + 1; j < a.length; j++) x[i]! -= a[i]![j]! * x[j]!;
    x[i]! /= a[i]![i]!;
  }
  return x;
}
