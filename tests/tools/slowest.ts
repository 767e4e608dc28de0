/**
 * Which tests take longest, in processor time: on a busy machine time on the wall tells what else goes on there. Told of
 * from a tenth of the limit on; a failure from a third on, as such a test runs into its limit where the processor is
 * shared with two others. In between it is no failure: a slow machine needs the same test to take longer.
 */

interface Test {
  readonly fullName: string;
  readonly meta?: { readonly cpu?: number; readonly limit?: number };
}
/** What of vitest's report in JSON is read here; a test that did not run has no cost. */
export interface Report {
  readonly testResults: readonly { readonly name: string; readonly assertionResults: readonly Test[] }[];
}

/** One test: what it took of the processor and what it may take on the wall, s. */
export interface Cost {
  readonly name: string;
  readonly took: number;
  readonly limit: number;
}

const SHOWN = 10;

/** What every test took, the longest first. */
export function costs({ testResults }: Report): Cost[] {
  return testResults
    .flatMap(({ name, assertionResults }) =>
      assertionResults.flatMap(({ fullName, meta: { cpu, limit } = {} }) =>
        cpu === undefined || limit === undefined
          ? []
          : [{ name: `${name.replace(/^.*\/tests\//, '')}: ${fullName}`, took: cpu / 1000, limit: limit / 1000 }],
      ),
    )
    .sort((a, b) => b.took - a.took);
}

export const isTooSlow = ({ took, limit }: Cost): boolean => took > limit / 3;

/** The slowest in words, and every one that is over a tenth of its limit. */
export function tell(all: readonly Cost[]): string[] {
  const sum = all.reduce((total, { took }) => total + took, 0);
  const remark = (one: Cost): string => {
    if (isTooSlow(one)) return '; FAILED: more than a third of its limit. Fewer seeds here, all under test:long';
    return one.took > one.limit / 10 ? '; more than a tenth of its limit' : '';
  };
  return [
    `${all.length} tests took ${sum.toFixed(0)} s of the processor; the slowest:`,
    ...all
      .filter((one, i) => i < SHOWN || one.took > one.limit / 10)
      .map((one) => `  ${one.took.toFixed(2)} s  ${one.name}${remark(one)}`),
  ];
}
