/** Files that would hang a terminal, steer it, or break the command: they end with a line and exit code 2. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { call, root, SCRIPTS } from './call.ts';

const folder = mkdtempSync(join(tmpdir(), 'cornerwright-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const tarn = JSON.parse(readFileSync(join(root, 'fixtures/cars/tarn-gt.json'), 'utf8'));
const ESC = '\u001b';
const HOSTILE = `${ESC}[2J${ESC}]0;owned\u0007\u009b31m \u202eevil`;
const fileOf = (file: unknown): string => {
  const path = join(folder, 'car.json');
  writeFileSync(path, JSON.stringify(file));
  return path;
};

describe('a path that is no file', () => {
  it.each(SCRIPTS)('%s ends on a device, a pipe and a folder', (script) => {
    const pipe = join(folder, `pipe-${script}`);
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    for (const path of ['/dev/zero', pipe, folder]) {
      const { status, stderr } = call(script, [path], 20_000);
      expect(status, path).toBe(2);
      expect(stderr).toMatch(/^FILE\.json: .*no file.*\nUsage: npm run/);
    }
  });
});

describe('text of a file', () => {
  it('reaches the terminal without what would steer it', () => {
    const car = { ...tarn.car, label: HOSTILE };
    const { stdout, status } = call('plan', [fileOf({ ...tarn, car })]);
    expect(status).toBe(0);
    expect(stdout).toContain('\\u001b[2J\\u001b]0;owned\\u0007\\u009b31m \\u202eevil');
    expect(stdout).not.toMatch(new RegExp(`[${ESC}\u0007\u009b\u202e]`));
  });

  it('is the same text to whoever parses the JSON', () => {
    const path = fileOf({ ...tarn, car: { ...tarn.car, front: named(tarn.car.front), label: HOSTILE } });
    const { stdout } = call('chart', [path, '--json']);
    expect(stdout).not.toMatch(new RegExp(`[${ESC}\u0007\u009b\u202e]`));
    expect(JSON.stringify(JSON.parse(stdout))).toContain(JSON.stringify(HOSTILE).slice(1, -1));
  });

  it('nor in a refusal', () => {
    const { stderr, status } = call('plan', [fileOf({ ...tarn, format: HOSTILE })]);
    expect(status).toBe(2);
    expect(stderr).not.toMatch(new RegExp(`[${ESC}\u0007\u009b\u202e]`));
  });
});

/** The first adjuster with an id that means harm. */
function named(axle: { readonly adjusters: readonly object[] }): object {
  const [first, ...rest] = axle.adjusters;
  return { ...axle, adjusters: [{ ...first, id: HOSTILE }, ...rest] };
}
