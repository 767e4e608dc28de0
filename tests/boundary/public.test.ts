/** Everything that core shows to the outside says what it is: shapes, units, errors, for a reader who has only that. */
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { ROOT } from './modules.ts';

const program = ts.createProgram([`${ROOT}core/index.ts`], {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  allowImportingTsExtensions: true,
  noEmit: true,
  strict: true,
  skipLibCheck: true,
  lib: ['lib.es2023.d.ts'],
});
const checker = program.getTypeChecker();
const index = checker.getSymbolAtLocation(program.getSourceFile(`${ROOT}core/index.ts`)!)!;
const exported = checker.getExportsOfModule(index).map((symbol) => {
  const own = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const type = own.valueDeclaration && checker.getTypeOfSymbol(own);
  return {
    name: symbol.name,
    doc: ts.displayPartsToString(own.getDocumentationComment(checker)),
    tags: own.getJsDocTags(checker).map(({ name }) => name),
    asks:
      own.valueDeclaration?.getSourceFile().fileName.includes('/core/ask/') === true &&
      Boolean(type?.getCallSignatures().length),
  };
});

describe('what core exports', () => {
  it('was listed', () => {
    expect(exported.length).toBeGreaterThan(80);
    expect(exported.filter(({ asks }) => asks).length).toBeGreaterThan(15);
  });

  it('says what it is, each in a sentence at least', () => {
    expect(exported.filter(({ doc }) => doc.length < 12).map(({ name }) => name)).toEqual([]);
  });

  it('says what it refuses, wherever it takes input', () => {
    expect(exported.filter(({ asks, tags }) => asks && !tags.includes('throws')).map(({ name }) => name)).toEqual([]);
  });
});
