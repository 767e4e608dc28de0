/**
 * What the rack showed while moves were led by it lies between the two readings: it hangs on the same dimensions and moves as
 * the second, and on the same first reading. What is read then is told by what is left open once that was seen.
 */
import type { Reading, Round, Settings } from '../../contract.ts';
import type { Uncertainty } from '../../plan/chance/covariance.ts';
import { samePosition } from '../../plan/states/axis.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { Definite } from '../algebra.ts';
import { numbersRead, standing } from '../evidence.ts';
import { seenIn } from '../seen.ts';

/** Where all adjusters of an assembly stand, a side each. */
export type Stands = readonly Settings[];

/** One number of an assembly as the rack showed it, where the adjusters stood then, and the adjuster that was led by it. */
export interface Seen {
  readonly side: number;
  readonly id: string;
  readonly at: Stands;
  readonly number: number;
  readonly value: number;
}

/**
 * @param round as the model has it
 * @param read against what the rack read front toe
 */
export function seenOn(assembly: Assembly, round: Round, read: Reading): readonly Seen[] {
  return seenIn(round, read).flatMap((between, i, all) => {
    const led = i > 0 ? all[i - 1]!.moved?.at(-1) : undefined;
    if (!led) return [];
    const at = standing(assembly, between);
    const values = numbersRead(assembly, between.reading);
    const of = { side: assembly.corners.indexOf(led.corner), id: led.adjuster, at };
    return [...values.keys()]
      .filter((number) => !Number.isNaN(values[number]!))
      .map((number) => ({ ...of, number, value: values[number]! }));
  });
}

/** The same by a story that has the adjusters end elsewhere than the records do: so did they stand from their move on. */
export const seenBy = (seen: readonly Seen[], recorded: Stands, story: Stands): readonly Seen[] =>
  story === recorded
    ? seen
    : seen.map((one) => ({
        ...one,
        at: one.at.map((own, side) =>
          Object.fromEntries(
            Object.entries(own).map(([id, at]) => [
              id,
              samePosition(at, recorded[side]![id]!) ? story[side]![id]! : at,
            ]),
          ),
        ),
      }));

/** What can be off between two readings, by one standard deviation: each row what it does to the numbers of both. */
export function spreadOf(
  uncertainty: Uncertainty,
  { from, to }: { readonly from: Stands; readonly to: Stands },
  numbers: readonly number[],
  seen: readonly Seen[],
  guessed: readonly { readonly side: number; readonly id: string; readonly by: Float64Array }[],
): Float64Array[] {
  const { size, sigmas } = uncertainty;
  const rows: Float64Array[] = [];
  const put = (after: (number: number) => number, then: (one: Seen, j: number) => number): void => {
    rows.push(Float64Array.from([...numbers.map(after), ...seen.map(then)]));
  };
  const [goes, went] = [uncertainty.slopes(to), seen.map(({ at }) => uncertainty.slopes(at))];
  for (let p = 0; p < uncertainty.coordinates; p++) {
    const at = p * size;
    put(
      (k) => goes?.[at + k] ?? 0,
      ({ number }, j) => went[j]?.[at + number] ?? 0,
    );
  }
  const isMade = ({ at }: Seen, side: number, id: string): boolean => samePosition(at[side]![id]!, to[side]![id]!);
  const ofMove = (side: number, id: string, by: Float64Array): void =>
    put(
      (k) => by[k]!,
      (one) => (isMade(one, side, id) ? by[one.number]! : 0),
    );
  to.forEach((own, side) => {
    for (const [id, position] of Object.entries(own)) {
      if (samePosition(position, from[side]![id]!)) continue;
      for (const by of uncertainty.errors(side, id, position)) ofMove(side, id, by);
    }
  });
  for (const { side, id, by } of guessed) ofMove(side, id, by);
  // The first reading is one for all.
  sigmas.forEach((sigma, number) => {
    put(
      (k) => (k === number ? sigma : 0),
      (one) => (one.number === number ? sigma : 0),
    );
  });
  return rows;
}

/** Of numbers that are normal together the first ones, once the others were seen; and ln of the density of those. */
export function onceSeen(by: Float64Array, covariance: Float64Array, first: number) {
  const all = by.length;
  const at = (i: number, j: number): number => covariance[i * all + j]!;
  const count = all - first;
  const seen = by.subarray(first);
  const held = new Definite(
    Float64Array.from({ length: count * count }, (_, k) => at(first + Math.floor(k / count), first + (k % count))),
    count,
  );
  const told = held.solve(seen);
  const shared = Array.from({ length: first }, (_, i) =>
    Float64Array.from({ length: count }, (__, j) => at(i, first + j)),
  );
  const solved = shared.map((row) => held.solve(row));
  const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  return {
    by: Float64Array.from({ length: first }, (_, i) => by[i]! - dot(shared[i]!, told)),
    covariance: Float64Array.from({ length: first * first }, (_, k) => {
      const [i, j] = [Math.floor(k / first), k % first];
      return at(i, j) - dot(shared[i]!, solved[j]!);
    }),
    seen: -0.5 * (dot(seen, told) + held.logDeterminant() + count * Math.log(2 * Math.PI)),
  };
}
