/**
 * Which folder may know what: the architecture's arrows as data. The longest `folder` that a file lies in
 * is its room. A room may import itself, the rooms named in `may`, and the packages named in `packages`; of the rooms
 * named in `types` it may know the types, but bring none of their code with it.
 */
import ts from 'typescript';
import type { Import, Module } from './modules.ts';

export interface Room {
  readonly folder: string;
  readonly may: readonly string[];
  readonly types?: readonly string[];
  readonly packages: readonly string[];
  /** Its entries (a file, or a folder with all in it) never import each other. */
  readonly apart?: true;
}

const VIEW = ['preact', '@preact/signals'];

/** What every room of core is said in. */
const BASE = ['core/contract.ts', 'core/corners.ts', 'core/said.ts', 'core/rule.ts', 'core/input-error.ts'];

/** The rooms of core in the order in which they build on one another: each may know those before it, none after it. */
const FLOORS: readonly (readonly [name: string, ...packages: string[]])[] = [
  ['geometry'],
  ['units', 'decimal.js'],
  ['words'],
  ['suspension'],
  ['starters'],
  ['adjuster', 'valibot'],
  ['check', 'valibot'],
  ['records', 'valibot'],
  ['reading'],
  ['measure'],
  ['pose'],
  ['plan'],
  ['learn'],
  ['ask', 'valibot'],
];
/** Those that know which languages there are. All others return what is to be said as data. */
const SPEAK = ['words', 'check', 'ask'];

const CORE_ROOMS: readonly Room[] = FLOORS.map(([name, ...packages], floor) => ({
  folder: `core/${name}`,
  may: [
    ...BASE,
    ...FLOORS.slice(0, floor).flatMap(([below]) =>
      below === 'words' && !SPEAK.includes(name) ? [] : [`core/${below}`],
    ),
  ],
  packages,
}));

/** What the page takes from core: what is small and answers at once. What solves runs in the worker, asked by name. */
const PAGE = [
  ...BASE,
  ...['units', 'suspension', 'starters', 'adjuster', 'records', 'reading', 'measure', 'words'].map(
    (name) => `core/${name}`,
  ),
];
/** The answers' types. */
const ANSWERS = ['core/index.ts', 'core/pose', 'core/plan', 'core/learn', 'core/ask'];

export const ROOMS: readonly Room[] = [
  ...CORE_ROOMS,
  { folder: 'core/corners.ts', may: [], packages: [] },
  { folder: 'core/said.ts', may: ['core/corners.ts'], packages: [] },
  { folder: 'core/contract.ts', may: ['core/corners.ts', 'core/said.ts'], packages: [] },
  { folder: 'core/rule.ts', may: ['core/corners.ts'], packages: [] },
  // Its message is English in any language.
  { folder: 'core/input-error.ts', may: ['core/rule.ts', 'core/words/en/exact.ts'], packages: [] },
  { folder: 'core/index.ts', may: ['core'], packages: [] },
  { folder: 'service-worker', may: ['app/offline/messages.ts'], packages: ['workbox-precaching', 'workbox-routing'] },
  {
    folder: 'app/store',
    // How an error crosses from a worker.
    may: [...PAGE, 'app/engine/messages.ts', 'app/engine/job.ts'],
    packages: ['idb', '@preact/signals'],
  },
  { folder: 'app/engine', may: ['core'], packages: ['@preact/signals'] },
  { folder: 'app/offline', may: [], packages: ['workbox-window', '@preact/signals'] },
  { folder: 'app/parts', may: PAGE, types: ANSWERS, packages: VIEW },
  // The parts on one page, to look at in development; not in the build.
  { folder: 'app/parts/gallery.tsx', may: ['app/parts', 'app/style', 'core'], packages: VIEW },
  { folder: 'app/style', may: [], packages: [] },
  { folder: 'app/terminal', may: ['core'], packages: ['node:'] },
  { folder: 'app/practice', may: [...PAGE, 'app/state', 'app/store', 'app/engine', 'fixtures'], packages: [] },
  {
    folder: 'app/state',
    may: [...PAGE, 'app/store', 'app/engine', 'app/parts', 'app/routes.ts'],
    types: ANSWERS,
    packages: VIEW,
  },
  {
    folder: 'app/screens',
    may: [
      ...PAGE,
      'app/parts',
      'app/state',
      'app/store',
      'app/engine',
      'app/offline',
      'app/practice',
      'app/shell',
      'app/routes.ts',
    ],
    types: ANSWERS,
    packages: VIEW,
    apart: true,
  },
  { folder: 'app', may: PAGE, types: ANSWERS, packages: VIEW },
  {
    folder: 'app/vite.config.ts',
    may: ['app/terminal/content-policy.ts', 'app/terminal/text-sizes.ts'],
    packages: ['node:', 'vite'],
  },
];

export function roomOf(path: string): Room | undefined {
  return ROOMS.filter(({ folder }) => isIn(path, folder)).sort((a, b) => b.folder.length - a.folder.length)[0];
}

/** What a module imports against the rules, a sentence each. */
export function arrowsBroken(module: Module): string[] {
  const room = roomOf(module.path);
  if (!room) return [`${module.path} lies in no room`];
  return module.imports.flatMap(({ specifier, file, typesOnly }: Import) => {
    if (file === undefined) {
      const known = room.packages.some((name) => isPackage(specifier, name));
      return known ? [] : [`${module.path} may not import the package ${specifier}`];
    }
    const known = [room.folder, ...room.may, ...(typesOnly ? (room.types ?? []) : [])];
    if (!known.some((folder) => isIn(file, folder))) {
      const types = room.types?.some((folder) => isIn(file, folder)) ? ' but its types' : '';
      return [`${module.path} may not import ${file}${types}`];
    }
    const strangers = room.apart && isIn(file, room.folder) && entryOf(file, room) !== entryOf(module.path, room);
    return strangers ? [`${module.path} may not import ${file}: entries of ${room.folder} stay apart`] : [];
  });
}

/** Five words in a row are a sentence or half of one: what a person reads is made in core/words. */
const SENTENCE = /\p{L}+(?:[ ,;:]+\p{L}+){4}/u;

/** Texts that read like a sentence, but for what only a developer can come to see. Labels of a kind are no sentences. */
export function sentences({ path, source }: Module): string[] {
  const found: string[] = [];
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    if (ts.isNewExpression(node) && node.expression.getText() === 'Error') return;
    const text = ts.isStringLiteralLike(node) || ts.isTemplateLiteralToken(node) ? node.text : '';
    if (SENTENCE.test(text) && !isLabel(node)) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${path}:${line + 1} says "${text}"`);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** A kind's own name for something in its file, and a list of fields: `label: '…'`, a form's field, a choice, a shape. */
function isLabel(node: ts.Node): boolean {
  const { parent } = node;
  if (ts.isTemplateSpan(parent) || ts.isTemplateExpression(parent)) return isLabel(parent);
  if (ts.isPropertyAssignment(parent)) return ['label', 'hint', 'why', 'name'].includes(parent.name.getText());
  if (ts.isVariableDeclaration(parent)) return /^[A-Z_]+$/.test(parent.name.getText()) && inKinds(node);
  return ts.isCallExpression(parent)
    ? /(Field|^shape)$/.test(parent.expression.getText())
    : ts.isArrayLiteralExpression(parent);
}

const inKinds = (node: ts.Node): boolean => /core\/(adjuster|suspension)\//.test(node.getSourceFile().fileName);

/** Uses of the clock or of chance, which reach the core as arguments. */
export function impurities({ path, source }: Module): string[] {
  const found: string[] = [];
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    const name = forbiddenName(node);
    if (name) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${path}:${line + 1} uses ${name}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const FORBIDDEN = new Set([
  'Date',
  'performance',
  'crypto',
  'globalThis',
  'setTimeout',
  'setInterval',
  'eval',
  'process',
]);

function forbiddenName(node: ts.Node): string | undefined {
  if (ts.isIdentifier(node) && FORBIDDEN.has(node.text) && !isPropertyName(node)) return node.text;
  if (!ts.isIdentifier(node) || node.text !== 'Math') return undefined;
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name.text === 'random' ? 'Math.random' : undefined;
  // Math[…] or a destructured Math could hide it.
  return 'Math other than as Math.name';
}

/** `x.Date` and `{ Date: 1 }` name a field, not the clock. */
function isPropertyName(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isPropertySignature(parent) && parent.name === node)
  );
}

function isIn(path: string, folder: string): boolean {
  return path === folder || path.startsWith(`${folder}/`);
}

/** `node:` stands for all of Node's own. */
function isPackage(specifier: string, name: string): boolean {
  return specifier === name || specifier.startsWith(name.endsWith(':') ? name : `${name}/`);
}

function entryOf(path: string, room: Room): string {
  return path.slice(room.folder.length + 1).split('/')[0] ?? '';
}
