/** Car files and backups changed at random: each is refused in words, or every screen draws what it brings. */
import { runMutants } from '../bench/mutated/run.ts';
import { shortOrLong } from '../tools/seeds.ts';
import { expect, test } from './harness.ts';

const FILES = shortOrLong(15, 200);

test(`${FILES} changed files are refused in words or open on every screen`, async () => {
  test.setTimeout(600_000);
  const { CHROMIUM_SHELL_PATH: executable = '' } = process.env;
  const sum = await runMutants({ files: FILES, seed: 'tests', pages: 1, executable });
  expect(sum.failures.map(({ n, says, wrong }) => ({ n, says, wrong }))).toEqual([]);
  // Neither all of one nor all of the other: they go into the schemas and into the screens.
  expect(sum.files).toBe(FILES);
  expect(sum.accepted - sum.same).toBeGreaterThan(FILES / 4);
  expect(Object.keys(sum.refused).length).toBeGreaterThan(shortOrLong(5, 10));
  expect(sum.screens).toBeGreaterThan(10 * (sum.accepted - sum.same));
});
