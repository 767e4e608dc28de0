import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { shortOrLong } from './tools/seeds.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The test files that have more to do under `npm run test:long`: those that take their seeds from `tools/seeds.ts`. */
const withMore = (): string[] =>
  readdirSync(`${root}/tests`, { recursive: true, encoding: 'utf8' })
    .filter(
      (path) => /\.test\.tsx?$/.test(path) && readFileSync(`${root}/tests/${path}`, 'utf8').includes('shortOrLong'),
    )
    .map((path) => `tests/${path}`);

export default defineConfig({
  root,
  cacheDir: 'node_modules/.cache/vitest',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: shortOrLong(['tests/**/*.test.{ts,tsx}'], withMore()),
    exclude: ['node_modules/**', 'tests/browser/**'],
    passWithNoTests: false,
    testTimeout: shortOrLong(30_000, 120_000),
    maxWorkers: 2,
    // Each file in a process of its own, whose processor time is its tests' own.
    pool: 'forks',
    setupFiles: ['tests/tools/cpu-time.ts'],
  },
});
