/** Reads the project's own source files as a graph: which file imports what. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface Module {
  /** Path from the top of the project, with forward slashes. */
  readonly path: string;
  readonly source: string;
  readonly imports: readonly Import[];
}
export interface Import {
  readonly specifier: string;
  /** The project's file that it names; absent for a package. */
  readonly file?: string;
}

/** Every TypeScript module under a folder. */
export function modulesUnder(folder: string): Module[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(ROOT.length).replaceAll('\\', '/'))
    .sort()
    .map((path) => parseModule(path, readFileSync(join(ROOT, path), 'utf8')));
}

/** Imports of every form: static, type only, re-export, dynamic, and `new URL('./x', import.meta.url)`. */
export function parseModule(path: string, source: string): Module {
  const specifiers = new Set(ts.preProcessFile(source, true, true).importedFiles.map(({ fileName }) => fileName));
  for (const [, specifier = ''] of source.matchAll(/new URL\(\s*['"](\.[^'"]+\.tsx?)['"],\s*import\.meta\.url/g)) {
    specifiers.add(specifier);
  }
  const imports = [...specifiers].map((specifier) =>
    specifier.startsWith('.')
      ? { specifier, file: posix.normalize(posix.join(dirname(path), specifier.replace(/\?.*$/, ''))) }
      : { specifier },
  );
  return { path, source, imports };
}

export function fileExists(path: string): boolean {
  return existsSync(join(ROOT, path)) && statSync(join(ROOT, path)).isFile();
}
