/** The architecture's arrows and the core's purity hold for every module there is. */
import { describe, expect, it } from 'vitest';
import { fileExists, modulesUnder, parseModule } from './modules.ts';
import { arrowsBroken, impurities, ROOMS, roomOf, sentences } from './rules.ts';

const core = modulesUnder('core');
const all = [...core, ...modulesUnder('app'), ...modulesUnder('service-worker')];

describe('the modules', () => {
  it('are there to be judged', () => {
    expect(core.length, 'modules under core').toBeGreaterThan(10);
    expect(all.length, 'modules in all').toBeGreaterThan(core.length + 10);
    expect(all.flatMap(({ imports }) => imports).length, 'imports in all').toBeGreaterThan(all.length);
  });

  it('import only what their folder may know', () => {
    expect(all.flatMap(arrowsBroken)).toEqual([]);
  });

  it('import files that exist', () => {
    const missing = all.flatMap(({ path, imports }) =>
      imports.filter(({ file }) => file && !fileExists(file)).map(({ file }) => `${path} imports ${file}`),
    );
    expect(missing).toEqual([]);
  });

  it('never import in a circle', () => {
    expect(circles(new Map(all.map(({ path, imports }) => [path, imports.flatMap(({ file }) => file ?? [])])))).toEqual(
      [],
    );
  });
});

describe('the page', () => {
  /** Where what solves comes in: the worker, and the chunk that stands in for it. */
  const doors = ['app/engine/worker.ts', 'app/engine/answer.ts'];
  const solver = /^core\/(pose|plan|ask)\//;
  const reached = reachedFrom('app/main.tsx', doors);

  it('reaches every screen', () => {
    const screens = all.filter(({ path }) => path.startsWith('app/screens/') && path.endsWith('.tsx'));
    expect(screens.filter(({ path }) => !reached.has(path)).map(({ path }) => path)).toEqual([]);
  });

  it('never brings in what solves, on whatever screen', () => {
    expect([...reached].filter((path) => solver.test(path))).toEqual([]);
    for (const door of doors)
      expect([...reachedFrom(door, [])].filter((path) => solver.test(path)).length).toBeGreaterThan(40);
  });
});

describe('the core', () => {
  it('knows neither clock nor chance', () => {
    expect(core.flatMap(impurities)).toEqual([]);
  });
});

describe('a sentence', () => {
  it('stands in the words, and in no other room of core', () => {
    const rooms = core.filter(({ path }) => !path.startsWith('core/words/'));
    expect(rooms.flatMap(sentences)).toEqual([]);
  });

  it('is found wherever there is one', () => {
    const seen = (source: string) => sentences(parseModule('core/plan/x.ts', source));
    expect(seen('const a = "Turn the bolt head so far.";')).toEqual([
      'core/plan/x.ts:1 says "Turn the bolt head so far."',
    ]);
    expect(seen('const a = `the wheel is off by ' + '$' + '{1}°`;')).toHaveLength(1);
    expect(seen('const a = "car spec reading settings"; throw new Error("no such thing can ever come here");')).toEqual(
      [],
    );
  });
});

describe('the rules', () => {
  it('refuse what they must', () => {
    const refused = (path: string, source: string) => arrowsBroken(parseModule(path, source));
    expect(refused('core/pose/x.ts', `import { render } from 'preact';`)).toHaveLength(1);
    expect(refused('core/pose/x.ts', `import type { A } from '../../app/store/index.ts';`)).toHaveLength(1);
    expect(refused('core/pose/x.ts', `import type { A } from '../plan/problem.ts';`)).toHaveLength(1);
    expect(refused('core/plan/x.ts', `import { en } from '../words/en/index.ts';`)).toHaveLength(1);
    expect(refused('core/plan/x.ts', `import { check } from '../ask/plan-moves.ts';`)).toHaveLength(1);
    expect(refused('core/plan/x.ts', `import * as v from 'valibot';`)).toHaveLength(1);
    expect(refused('core/records/x.ts', `import { solve } from '../pose/solver.ts';`)).toHaveLength(1);
    expect(refused('core/contract.ts', `import type { A } from './plan/problem.ts';`)).toHaveLength(1);
    expect(refused('core/pose/x.ts', `export * from '../../tests/tools/y.ts';`)).toHaveLength(1);
    expect(refused('core/pose/x.ts', `const a = await import('node:fs');`)).toHaveLength(1);
    expect(refused('app/store/x.ts', `import { A } from '../screens/cars.tsx';`)).toHaveLength(1);
    expect(refused('app/parts/x.tsx', `import { store } from '../store/index.ts';`)).toHaveLength(1);
    expect(refused('app/engine/x.ts', `new Worker(new URL('../screens/w.ts', import.meta.url));`)).toHaveLength(1);
    for (const code of [
      `import { planMoves } from '../../core/index.ts';`,
      `import { type Plan, planMoves } from '../../core/index.ts';`,
      `import type { Plan } from '../../core/index.ts';\nimport { planMoves } from '../../core/index.ts';`,
      `export * from '../../core/index.ts';`,
      `import type { Plan } from '../../core/index.ts';\nconst core = await import('../../core/index.ts');`,
      `import { Mechanism } from '../../core/pose/mechanism.ts';`,
      `import '../../core/ask/plan-moves.ts';`,
    ]) {
      expect(refused('app/state/x.ts', code), code).toHaveLength(1);
    }
    expect(refused('app/screens/a.tsx', `import { B } from './b.tsx';`)).toHaveLength(1);
    expect(refused('app/screens/a/x.tsx', `import { B } from '../b/y.tsx';`)).toHaveLength(1);
    expect(refused('service-worker/sw.ts', `import { open } from '../app/store/index.ts';`)).toHaveLength(1);
    expect(refused('elsewhere/x.ts', '')).toHaveLength(1);
  });

  it('let through what they may', () => {
    const refused = (path: string, source: string) => arrowsBroken(parseModule(path, source));
    expect(refused('core/check/x.ts', `import { A } from '../contract.ts';\nimport * as v from 'valibot';`)).toEqual(
      [],
    );
    expect(refused('core/plan/x.ts', `import { A } from '../pose/mechanism.ts';`)).toEqual([]);
    expect(refused('app/state/x.ts', `import type { Plan } from '../../core/index.ts';`)).toEqual([]);
    expect(refused('app/state/x.ts', `export { type Plan } from '../../core/index.ts';`)).toEqual([]);
    expect(refused('app/engine/x.ts', `import { planMoves } from '../../core/index.ts';`)).toEqual([]);
    expect(refused('app/screens/a/x.tsx', `import { B } from './y.tsx';\nimport 'preact/hooks';`)).toEqual([]);
    expect(refused('app/terminal/x.ts', `import { join } from 'node:path';`)).toEqual([]);
  });

  it('see the clock and chance in every guise', () => {
    const seen = (source: string) => impurities(parseModule('core/x.ts', source));
    expect(seen('const t = Date.now();')).toEqual(['core/x.ts:1 uses Date']);
    expect(seen('const t = new Date();')).toHaveLength(1);
    expect(seen('const r = Math.random();')).toEqual(['core/x.ts:1 uses Math.random']);
    expect(seen("const r = Math['random']();")).toHaveLength(1);
    expect(seen('const { random } = Math;')).toHaveLength(1);
    expect(seen('// Date\nconst a = Math.sin(1); const b = { Date: 1 }; b.Date;')).toEqual([]);
  });

  it('name only rooms that exist', () => {
    const paths = all.map(({ path }) => path);
    for (const { folder } of ROOMS.filter(({ folder }) => folder !== 'app/style')) {
      expect(
        paths.some((path) => roomOf(path)?.folder === folder),
        folder,
      ).toBe(true);
    }
  });
});

/** Every module whose code comes along with one, but for what comes through some doors alone. */
function reachedFrom(path: string, doors: readonly string[]): ReadonlySet<string> {
  const reached = new Set([path]);
  for (const one of reached) {
    const module = all.find((other) => other.path === one);
    for (const { file, typesOnly } of module?.imports ?? []) {
      if (file && !typesOnly && !doors.includes(file)) reached.add(file);
    }
  }
  return reached;
}

/** Each import circle once, as the path around it. Type-only circles count: they tangle a reader all the same. */
function circles(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const walk = (path: string, trail: readonly string[]): void => {
    const start = trail.indexOf(path);
    if (start >= 0) {
      found.push([...trail.slice(start), path].join(' → '));
      return;
    }
    if (done.has(path)) return;
    for (const next of graph.get(path) ?? []) walk(next, [...trail, path]);
    done.add(path);
  };
  for (const path of graph.keys()) walk(path, []);
  return found;
}
