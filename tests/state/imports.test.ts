/** What is imported does nothing yet: neither the page nor its storage is touched before somebody asks. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const app = fileURLToPath(new URL('../../app/', import.meta.url));
/** They speak as soon as they are there. */
const WORKERS = ['engine/worker.ts', 'store/backup-worker.ts'];
const modules = [
  'routes.ts',
  ...['state', 'store', 'engine', 'offline', 'practice'].flatMap((folder) =>
    readdirSync(`${app}${folder}`).map((file) => `${folder}/${file}`),
  ),
].filter((file) => /\.tsx?$/.test(file) && !WORKERS.includes(file));

describe('a module of the app', () => {
  it('runs where there is no page', () => {
    expect([typeof document, typeof location, typeof indexedDB]).toEqual(['undefined', 'undefined', 'undefined']);
  });

  it.each(modules)('%s touches nothing when it is imported', async (file) => {
    expect(await import(`${app}${file}`)).toBeDefined();
  });
});
