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
  /** Every import of it in the module is of types alone: no code comes with it. */
  readonly typesOnly: boolean;
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
  const urls = [...source.matchAll(/new URL\(\s*['"](\.[^'"]+\.tsx?)['"],\s*import\.meta\.url/g)];
  const mentions = [
    ...ts.preProcessFile(source, true, true).importedFiles.map(({ fileName }) => fileName),
    ...urls.map(([, specifier = '']) => specifier),
  ];
  const types = typesOnlyStatements(path, source);
  const imports = [...new Set(mentions)].map((specifier) => {
    const isIt = (one: string): boolean => one === specifier;
    const typesOnly = mentions.filter(isIt).length === types.filter(isIt).length;
    if (!specifier.startsWith('.')) return { specifier, typesOnly };
    const file = posix.normalize(posix.join(dirname(path), specifier.replace(/\?.*$/, '')));
    return { specifier, file, typesOnly };
  });
  return { path, source, imports };
}

/** What each statement imports or re-exports from that brings in types and nothing else. */
function typesOnlyStatements(path: string, source: string): string[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  return file.statements.flatMap((node) => {
    if (!(ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) || !node.moduleSpecifier) return [];
    return isTypesOnly(node) ? [(node.moduleSpecifier as ts.StringLiteral).text] : [];
  });
}

function isTypesOnly(node: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  const clause = ts.isImportDeclaration(node) ? node.importClause : node;
  if (!clause || clause.isTypeOnly) return clause !== undefined;
  const names = ts.isExportDeclaration(clause) ? clause.exportClause : clause.namedBindings;
  if (!names || ts.isNamespaceImport(names) || ts.isNamespaceExport(names)) return false;
  const hasDefault = ts.isImportClause(clause) && clause.name !== undefined;
  return !hasDefault && names.elements.length > 0 && names.elements.every((one) => one.isTypeOnly);
}

export function fileExists(path: string): boolean {
  return existsSync(join(ROOT, path)) && statSync(join(ROOT, path)).isFile();
}
