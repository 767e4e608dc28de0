/**
 * Stryker in a folder of its own, so that nobody installs it who only builds or tests. What is used of it is declared
 * here, as the compiler has no Stryker to look at.
 */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { relative, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Mutant, Position } from './sample.ts';

const HERE = 'tests/mutants';
const CACHE = '.cache/mutants';

export interface Tried extends Mutant {
  readonly status: 'Killed' | 'Survived' | 'NoCoverage' | 'Timeout' | 'RuntimeError' | 'CompileError' | 'Ignored';
}

interface Instrumenter {
  instrument(
    files: readonly { readonly name: string; readonly content: string; readonly mutate: boolean }[],
    options: {
      readonly ignorers: readonly never[];
      readonly excludedMutations: readonly string[];
      readonly plugins: null;
    },
  ): Promise<{ readonly mutants: readonly Mutant[] }>;
}

/** Installs the packages when the lock file is not the one that they were installed from. */
export function install(): void {
  mkdirSync(CACHE, { recursive: true });
  const text = (path: string): string => {
    try {
      return readFileSync(path, 'utf8');
    } catch {
      return '';
    }
  };
  if (text(`${CACHE}/installed.json`) === text(`${HERE}/package-lock.json`)) return;
  for (const name of ['package.json', 'package-lock.json', '.npmrc'])
    copyFileSync(`${HERE}/${name}`, `${CACHE}/${name}`);
  const { status } = spawnSync('npm', ['ci'], { cwd: CACHE, stdio: 'inherit', shell: process.platform === 'win32' });
  if (status !== 0) throw new Error('npm ci failed: see above.');
  copyFileSync(`${HERE}/package-lock.json`, `${CACHE}/installed.json`);
}

async function load<T>(name: string): Promise<T> {
  const path = createRequire(resolve(CACHE, 'package.json')).resolve(name);
  return (await import(pathToFileURL(path).href)) as T;
}

/** Every mutant that Stryker makes of these files. */
export async function mutantsOf(files: readonly string[]): Promise<readonly Mutant[]> {
  const silent = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };
  const { Instrumenter } = await load<{ Instrumenter: new (logger: object) => Instrumenter }>(
    '@stryker-mutator/instrumenter',
  );
  const named = files.map((name) => ({ name, content: readFileSync(name, 'utf8'), mutate: true }));
  const { mutants } = await new Instrumenter(silent).instrument(named, {
    ignorers: [],
    excludedMutations: [],
    plugins: null,
  });
  const next = ({ line, column }: Position): Position => ({ line: line + 1, column: column + 1 });
  return mutants.map(({ location: { start, end }, ...mutant }) => ({
    ...mutant,
    location: { start: next(start), end: next(end) },
  }));
}

/** Runs Stryker on these ranges, with a room's tests. */
export async function run(room: string, ranges: readonly string[], force: boolean): Promise<readonly Tried[]> {
  const { Stryker } = await load<{
    Stryker: new (options: object) => { runMutationTest(): Promise<readonly Tried[]> };
  }>('@stryker-mutator/core');
  process.env.MUTANTS_ROOM = room;
  const options = { configFile: `${HERE}/stryker.config.json`, mutate: ranges, force };
  const tried = await new Stryker({ ...options, incrementalFile: `${CACHE}/${room}.json` }).runMutationTest();
  return tried.map((one) => ({ ...one, fileName: relative('.', one.fileName).replaceAll('\\', '/') }));
}
