/** `.ci/run` ends in one line that adds up what its scripts end in; what ends otherwise has failed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { root } from '../terminal/call.ts';

/** A folder whose npm scripts say what they are told to and end as they are told to. */
const folder = mkdtempSync(join(tmpdir(), 'cornerwright-ci-'));
afterAll(() => rmSync(folder, { recursive: true }));
const scripts = {
  good: 'echo some words && echo "12 passed, 0 failed"',
  more: 'echo "30 passed, 0 failed"',
  bad: 'echo "5 passed, 2 failed" && exit 1',
  liar: 'echo "5 passed, 0 failed" && exit 1',
  silent: 'exit 0',
  broken: 'echo "12 passed, 0 failed" && echo "then it fell over" && exit 1',
  empty: 'echo "0 passed, 0 failed"',
};
writeFileSync(join(folder, 'package.json'), JSON.stringify({ scripts }));

function ci(...names: (keyof typeof scripts)[]) {
  const { stdout, status } = spawnSync(process.execPath, [join(root, '.ci/run.mjs'), ...names], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { lines: stdout.trimEnd().split('\n'), status };
}

describe('.ci/run', () => {
  it('adds up, shows what was said, and says one closing line', () => {
    const { lines, status } = ci('good', 'more');
    expect(lines).toContain('some words');
    expect(lines.filter((line) => /^\d+ passed, \d+ failed$/.test(line))).toEqual(['42 passed, 0 failed']);
    expect(lines.at(-1)).toBe('42 passed, 0 failed');
    expect(status).toBe(0);
  });

  it.each([
    ['bad', '17 passed, 2 failed'],
    ['liar', '17 passed, 1 failed'],
    ['silent', '12 passed, 1 failed'],
    ['broken', '12 passed, 1 failed'],
  ] as const)('fails with what is %s, and still runs what comes after', (name, sum) => {
    expect(ci(name, 'good')).toMatchObject({ status: 1, lines: expect.arrayContaining(['some words', sum]) });
  });

  it('fails where nothing was tested', () => {
    expect(ci('empty').status).toBe(1);
  });
});
