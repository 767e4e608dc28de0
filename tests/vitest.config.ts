import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { shortOrLong } from './tools/seeds.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

const all = readdirSync(`${root}/tests`, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.test\.tsx?$/.test(path))
  .map((path) => `tests/${path}`);
/** Those that have more to do under `npm run test:long`: they take their seeds from `tools/seeds.ts`. */
const withMore = all.filter((path) => readFileSync(`${root}/${path}`, 'utf8').includes('shortOrLong'));
const files = shortOrLong(all, withMore);

/** Of pure functions: nothing is replaced in these tests, and what a module remembers changes no answer. */
const pure = files.filter(
  (path) =>
    /^tests\/(boundary|core|nonsense|parts|property|reference|terminal)\//.test(path) &&
    !readFileSync(`${root}/${path}`, 'utf8').includes('vi.mock('),
);
/** Of what was built: run where there is a build. */
const built = files.filter((path) => path.endsWith('/size.test.ts'));
const others = files.filter((path) => !pure.includes(path) && !built.includes(path));

/** How a test file is run, whichever it is. */
export const everyFile = {
  testTimeout: shortOrLong(30_000, 120_000),
  maxWorkers: 2,
  // One file at a time in a process, whose processor time is its tests' own.
  pool: 'forks' as const,
  setupFiles: ['tests/tools/cpu-time.ts', 'tests/tools/property-seed.ts'],
};

export default defineConfig({
  root,
  cacheDir: 'node_modules/.cache/vitest',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    passWithNoTests: false,
    projects: [
      // The processes stay from file to file: to read core again for each took as long as all the tests.
      { extends: true, test: { ...everyFile, name: 'pure', include: pure, isolate: false } },
      // After those, as a process of a file's own would end theirs.
      { extends: true, test: { ...everyFile, name: 'app', include: others, sequence: { groupOrder: 1 } } },
      { extends: true, test: { ...everyFile, name: 'built', include: built, sequence: { groupOrder: 1 } } },
    ],
  },
});
