/** House rules that no compiler knows: what may lie at the top, how long a file gets, what a clone must not carry. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from './modules.ts';

const TOP = [
  '.ci',
  '.gitignore',
  '.npmrc',
  'DEVELOPERS.md',
  'README.md',
  'app',
  'biome.json',
  'core',
  'fixtures',
  'package-lock.json',
  'package.json',
  'service-worker',
  'tests',
  'tsconfig.json',
];
const LONG = 300;

/** Everything that is or would be committed, and is there. */
const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '--deduplicate'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .split('\n')
  .filter((path) => path !== '' && tryRead(path) !== undefined);

function tryRead(path: string): string | undefined {
  try {
    return readFileSync(join(ROOT, path), 'utf8');
  } catch {
    return undefined;
  }
}

const read = (path: string): string => tryRead(path) ?? '';
const sources = files.filter((path) => /\.(tsx?|css|mjs)$/.test(path));

describe('the repository', () => {
  it('was listed', () => {
    expect(sources.length).toBeGreaterThan(30);
  });

  it('has nothing at its top but what belongs there', () => {
    const top = [...new Set(files.map((path) => path.split('/')[0] ?? ''))];
    expect(top.filter((name) => !TOP.includes(name))).toEqual([]);
  });

  it.each(files.filter((path) => path.endsWith('package-lock.json')))('names no registry host in %s', (path) => {
    const lock = JSON.parse(read(path)) as { packages: Record<string, { resolved?: string }> };
    expect(Object.keys(lock.packages).length).toBeGreaterThan(50);
    expect(Object.entries(lock.packages).filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });

  it('says why wherever a file is long', () => {
    const unexplained = sources.filter((path) => {
      const text = read(path);
      const head = /^\s*\/\*\*?[\s\S]*?\*\//.exec(text)?.[0] ?? '';
      return text.split('\n').length > LONG && !/\blong\b/i.test(head);
    });
    expect(unexplained).toEqual([]);
  });

  it('keeps no path of the machine it was made on', () => {
    const home = /(?:^|[\s"'`(=])\/(?:home|root|work|Users|tmp)\/\w/m;
    expect(files.filter((path) => !/\.(png|woff2?)$/.test(path) && home.test(read(path)))).toEqual([]);
  });
});
