/**
 * A figure and how sure it is. What is worked out of several figures varies with each of them: by how much is half the
 * difference that one standard deviation either way makes, and of independent ones the squares add up (first order:
 * JCGM 100:2008, Guide to the expression of uncertainty in measurement, 5.1.2).
 */

import { InputError } from '../input-error.ts';

/** A figure and one standard deviation of it, in its own unit. */
export interface Measured {
  readonly value: number;
  readonly sd: number;
}

type By<K extends string, T> = Readonly<Record<K, T>>;

/** No instrument is read this badly, in any unit: it is a mistake. */
const MOST = 1000;

/**
 * One standard deviation, if it is one.
 * @throws InputError naming it
 */
export function scatterOf(field: string, sd: number): number {
  if (typeof sd === 'number' && sd >= 0 && sd <= MOST) return sd;
  throw new InputError(field, sd, { is: 'number', low: 0, high: MOST, unit: '' });
}

/**
 * What figures make, each with its own ±.
 * @param inputs independent of one another
 * @param of works out of their values what is wanted; takes values a standard deviation off those that were typed
 * @throws InputError naming the input whose scatter is none, such as `front.sd`
 */
export function spreadOf<I extends string, O extends string>(
  inputs: By<I, Measured>,
  of: (values: By<I, number>) => By<O, number>,
): By<O, Measured> {
  const all = Object.entries<Measured>(inputs);
  const values = Object.fromEntries(all.map(([name, { value }]) => [name, value])) as By<I, number>;
  const result = Object.entries<number>(of(values));
  const squares = new Map(result.map(([name]) => [name, 0]));
  for (const [name, { value, sd }] of all) {
    if (scatterOf(`${name}.sd`, sd) === 0) continue;
    const [more, less] = [of({ ...values, [name]: value + sd }), of({ ...values, [name]: value - sd })];
    for (const out of squares.keys()) {
      const half = (more[out as O] - less[out as O]) / 2;
      squares.set(out, squares.get(out)! + half * half);
    }
  }
  return Object.fromEntries(
    result.map(([name, value]) => [name, { value, sd: Math.sqrt(squares.get(name)!) }]),
  ) as unknown as By<O, Measured>;
}
