/**
 * Readings that no such car could have given: a misread figure, a move that is not the one on record, something bent. One
 * that is further from what all the others say than happens to one wheel's reading in ten thousand is left out whole. Of two
 * that stand alone against each other nobody knows which is wrong: both are left out.
 */
import { Definite, type Held } from './algebra.ts';
import { heldBy, type Linear } from './fit.ts';

/** χ² that one in ten thousand exceeds, by how many angles there are (tables; of six and more the last and 2 each). */
const MOST = [0, 15.14, 18.42, 21.11, 23.51, 25.74] as const;
const mostOf = (angles: number): number => MOST[angles] ?? 25.74 + 2 * (angles - 5);

/** Squares that differ by less are equal. */
const EQUAL = 1e-6;
/** A share of variance below which an angle is not told by the others. */
const UNTOLD = 1e-9;

/**
 * The blocks that fit worst, where they fit too badly.
 * @param blockOf which readings stand or fall together, row by row
 */
export function worstOf(linear: Linear, blockOf: readonly string[]): readonly string[] {
  const { off, slopes, columns } = linear;
  const held = heldBy(slopes, columns, 0);
  const blocks = new Map<string, number[]>();
  for (const [r, key] of blockOf.entries()) blocks.set(key, [...(blocks.get(key) ?? []), r]);
  const told = held.rest(off);
  const sizes = [...blocks].map(([key, rows]) => {
    const own = insideOf(linear, held, rows);
    const values = Float64Array.from(rows, (r) => told[r]!);
    const angles = rows.filter((_, i) => own[i * (rows.length + 1)]! > UNTOLD).length;
    const square = new Definite(own, rows.length).solve(values).reduce((sum, x, i) => sum + x * values[i]!, 0);
    return { key, excess: square / mostOf(angles || 1) };
  });
  const most = Math.max(0, ...sizes.map(({ excess }) => excess));
  if (most <= 1) return [];
  return sizes.filter(({ excess }) => excess > most * (1 - EQUAL)).map(({ key }) => key);
}

/**
 * The block of the inverse of the readings' covariance, of which nothing is known of where each angle stood: by it the
 * square of what is left is that of a prediction by all the others.
 */
function insideOf({ rows }: Linear, held: Held, own: readonly number[]): Float64Array {
  const size = own.length;
  const out = new Float64Array(size * size);
  own.forEach((r, i) => {
    const unit = new Float64Array(rows.length);
    unit[r] = 1;
    const rest = held.rest(unit);
    own.forEach((q, j) => {
      out[i * size + j] = projected(rows, r, q) - unit[q]! + rest[q]!;
    });
  });
  return out;
}

/** An entry of the matrix that takes the means out. */
function projected(rows: Linear['rows'], r: number, q: number): number {
  const [a, b] = [rows[r]!, rows[q]!];
  if (a.sitting !== b.sitting || a.number !== b.number) return 0;
  const weight = rows.reduce(
    (sum, one) => (one.sitting === a.sitting && one.number === a.number ? sum + 1 / one.sigma ** 2 : sum),
    0,
  );
  return (r === q ? 1 : 0) - 1 / (a.sigma * b.sigma * weight);
}
