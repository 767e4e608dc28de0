import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: 'node_modules/.cache/vitest',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['node_modules/**', 'tests/browser/**'],
    passWithNoTests: false,
    testTimeout: 30_000,
    maxWorkers: 2,
  },
});
