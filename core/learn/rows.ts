/** Every angle that was read as a row of a fit, in sigmas. */
import type { Evidence } from './evidence.ts';

/** A gauge repeats no better than it shows. */
const LEAST_SIGMA = 1e-4;

/** An angle that was read. */
export interface Row {
  readonly sitting: number;
  /** Among all sights. */
  readonly sight: number;
  /** Which of the assembly's numbers. */
  readonly number: number;
  readonly value: number;
  readonly sigma: number;
}

/** @param sigmas of the gauge, number by number */
export function rowsOf(evidence: Evidence, sigmas: Float64Array): readonly Row[] {
  let sight = 0;
  return evidence.flatMap((sights, sitting) =>
    sights.flatMap(({ values }) => {
      const own = sight++;
      return [...values].flatMap((value, number): Row[] =>
        Number.isNaN(value)
          ? []
          : [{ sitting, sight: own, number, value, sigma: Math.max(LEAST_SIGMA, sigmas[number]!) }],
      );
    }),
  );
}

/** The rows of each angle of each sitting. */
export function groupsOf(rows: readonly Row[]): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>();
  rows.forEach(({ sitting, number }, r) => {
    const key = `${sitting}/${number}`;
    groups.set(key, [...(groups.get(key) ?? []), r]);
  });
  return [...groups.values()];
}

/** Takes what an angle of a sitting stood at out of its rows: nothing is known of it but what they say. */
export function withoutMeans(
  rows: readonly Row[],
  groups: readonly (readonly number[])[],
  values: Float64Array,
  columns: number,
): void {
  for (const own of groups) {
    const weight = own.reduce((sum, r) => sum + 1 / rows[r]!.sigma ** 2, 0);
    const mean = new Float64Array(columns);
    for (const r of own) {
      for (let k = 0; k < columns; k++) mean[k]! += values[r * columns + k]! / rows[r]!.sigma;
    }
    for (const r of own) {
      for (let k = 0; k < columns; k++) values[r * columns + k]! -= mean[k]! / weight / rows[r]!.sigma;
    }
  }
}
