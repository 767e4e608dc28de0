/** What in the app's own code writes records: read from the code, so that a new write cannot be forgotten. */
import ts from 'typescript';
import { type Module, modulesUnder } from '../boundary/modules.ts';

/** A function at the top of a module, as `file#name`, and what it calls. */
interface Part {
  readonly name: string;
  readonly isExported: boolean;
  readonly calls: readonly string[];
}

/** What hands records to the database. */
const STORE_WRITES = ['put', 'putAll', 'remove', 'restore', 'undoRestore'];
const STORE = 'app/store/index.ts#store';

/** @returns what is exported by the state and writes, by whatever way; and what on a screen writes by itself */
export function whoWrites(): string[] {
  const parts = ['state', 'screens', 'practice', 'shell']
    .flatMap((folder) => modulesUnder(`app/${folder}`))
    .flatMap(partsOf);
  const writers = new Set(parts.filter(({ calls }) => calls.includes(STORE)).map(({ name }) => name));
  for (let before = -1; before < writers.size; ) {
    before = writers.size;
    for (const { name, calls } of parts) if (calls.some((call) => writers.has(call))) writers.add(name);
  }
  const isState = (name: string): boolean => name.startsWith('app/state/');
  // The four by which everything else writes.
  const direct = ['records.ts#keep', 'records.ts#keepDraft', 'records.ts#dropDraft', 'stage.ts#choose'].map(
    (name) => `app/state/${name}`,
  );
  return parts
    .filter(({ name, isExported, calls }) =>
      isState(name) ? isExported && writers.has(name) : calls.some((call) => call === STORE || direct.includes(call)),
    )
    .map(({ name }) => name)
    .sort();
}

function partsOf({ path, source, imports }: Module): Part[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const from = new Map<string, string>();
  const tops: { readonly name: string; readonly isExported: boolean; readonly body: ts.Node }[] = [];
  for (const node of file.statements) {
    if (ts.isImportDeclaration(node)) {
      const { text } = node.moduleSpecifier as ts.StringLiteral;
      const target = imports.find(({ specifier }) => specifier === text)?.file;
      const names = node.importClause?.namedBindings;
      if (!target || !names || !ts.isNamedImports(names)) continue;
      for (const one of names.elements) from.set(one.name.text, `${target}#${(one.propertyName ?? one.name).text}`);
    }
    const isExported = ts.canHaveModifiers(node) && !!ts.getModifiers(node)?.some((one) => one.kind === EXPORT);
    if (ts.isFunctionDeclaration(node) && node.name && node.body) {
      tops.push({ name: node.name.text, isExported, body: node.body });
    }
    if (ts.isVariableStatement(node)) {
      for (const { name, initializer } of node.declarationList.declarations) {
        if (initializer && ts.isIdentifier(name)) tops.push({ name: name.text, isExported, body: initializer });
      }
    }
  }
  for (const { name } of tops) from.set(name, `${path}#${name}`);
  return tops.map(({ name, isExported, body }) => ({
    ...{ name: `${path}#${name}`, isExported },
    calls: callsIn(body).flatMap((call) => from.get(call) ?? (call === 'store' ? STORE : [])),
  }));
}
const EXPORT = ts.SyntaxKind.ExportKeyword;

/** Names that are called; `store` where it is asked to write. */
function callsIn(node: ts.Node): string[] {
  const own: string[] = [];
  if (ts.isCallExpression(node)) {
    const { expression } = node;
    if (ts.isIdentifier(expression)) own.push(expression.text);
    const isStore = ts.isPropertyAccessExpression(expression) && expression.expression.getText() === 'store';
    if (isStore && STORE_WRITES.includes(expression.name.text)) own.push('store');
  }
  ts.forEachChild(node, (child) => void own.push(...callsIn(child)));
  return own;
}
