/** The built app killed in the middle of what hands do; many more times by `npm run bench:kill`. */
import { type Cycle, isFault, runCycles } from '../bench/kill/cycles.ts';
import { tableOf, wordsOf } from '../bench/kill/table.ts';
import { expect, test } from './harness.ts';

const CYCLES = 2;

test(`nothing that a screen called saved is lost unsaid by ${CYCLES} kills, and the screen comes back`, async ({
  site,
}) => {
  test.setTimeout(180_000);
  const cycles: Cycle[] = [];
  // Where none of them had a screen call anything saved, the same number once more: it would prove nothing.
  for (let seed = 12; seed < 14 && !cycles.some(({ claims }) => claims > 0); seed += 1) {
    cycles.push(...(await runCycles({ cycles: CYCLES, seed, url: site.url })));
  }
  console.log(tableOf(cycles));
  expect(cycles.filter(isFault).map(wordsOf)).toEqual([]);
  expect(cycles.length % CYCLES).toBe(0);
  expect(cycles.some(({ claims }) => claims > 0)).toBe(true);
});
