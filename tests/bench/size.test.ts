/** What a phone must fetch before the first screen: script and style, compressed. Fonts are not counted. */
import { existsSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const DIST = fileURLToPath(new URL('../../dist/', import.meta.url));
/** Bytes. */
const BUDGET = 60_000;

/** A built file; a missing one fails the test rather than counting nothing. */
function read(file: string): string {
  if (!existsSync(DIST + file)) throw new Error(`dist/${file} is missing: run "npm run build" first`);
  return readFileSync(DIST + file, 'utf8');
}

/** Scripts and styles that the page names, and all that those scripts import before they run. */
function firstLoad(): string[] {
  const page = read('index.html');
  const named = [...page.matchAll(/<(?:script|link)\b[^>]*?(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)];
  const files = new Set(named.map(([, file = '']) => file));
  for (const file of files) {
    if (!file.endsWith('.js')) continue;
    for (const [, specifier = ''] of read(file).matchAll(/\b(?:from|import)\s*["'](\.[^"']+\.js)["']/g)) {
      files.add(posix.join(posix.dirname(file), specifier));
    }
  }
  return [...files];
}

describe('the first load', () => {
  it(`is under ${BUDGET / 1000} kB of script and style, gzipped`, () => {
    const files = firstLoad();
    expect(files.filter((file) => file.endsWith('.js')).length, 'scripts').toBeGreaterThan(0);
    expect(files.filter((file) => file.endsWith('.css')).length, 'styles').toBeGreaterThan(0);
    const sizes = files.map((file) => ({ file, bytes: gzipSync(read(file)).length }));
    const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
    const list = sizes.map(({ file, bytes }) => `${file} ${bytes}`).join(', ');
    console.log(`first load: ${total} bytes of ${BUDGET} (${list})`);
    expect(total, list).toBeLessThan(BUDGET);
    // Preact alone is over 5 kB: less would mean that the wrong files were counted.
    expect(total, list).toBeGreaterThan(5_000);
  });
});
