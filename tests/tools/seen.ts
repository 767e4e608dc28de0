/**
 * Whether random cases hold what they are meant to try: how many are of each sort, counted only as far as it takes to have
 * seen more than `few` of every sort.
 * @param sortsOf of which sorts a case is; one sort may come several times
 */
export function seenOf<T, Sort extends string>(
  sorts: readonly Sort[],
  few: number,
  cases: readonly T[],
  sortsOf: (one: T) => readonly Sort[],
): Record<Sort, number> {
  const seen = Object.fromEntries(sorts.map((sort) => [sort, 0])) as Record<Sort, number>;
  for (const one of cases) {
    for (const sort of sortsOf(one)) seen[sort]++;
    if (sorts.every((sort) => seen[sort] > few)) break;
  }
  return seen;
}
