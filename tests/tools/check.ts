/**
 * `npm test`: every check in turn, then one closing line that adds up both test runners. A step that fails
 * counts, so does a runner that ran no test or skipped one: silence is not a pass.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findOrInstallChromium } from './chromium.ts';

interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

const results = mkdtempSync(join(tmpdir(), 'cornerwright-check-'));
const unitJson = join(results, 'unit.json');
const browserJson = join(results, 'browser.json');
let passed = 0;
let failed = 0;

function step(name: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): boolean {
  const started = performance.now();
  console.log(`\n── ${name}`);
  const [command = '', ...rest] = args;
  const { status } = spawnSync(command, rest, { stdio: 'inherit', env: { ...process.env, ...env } });
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`── ${name}: ${status === 0 ? 'ok' : 'FAILED'} (${seconds} s)`);
  return status === 0;
}

function check(name: string, args: readonly string[]): boolean {
  const ok = step(name, args);
  if (!ok) failed += 1;
  return ok;
}

/** Adds a runner's own count; what it failed to say counts as one failure. */
function runner(name: string, ok: boolean, file: string, read: (json: never) => Count): void {
  let count: Count = { passed: 0, failed: 0, skipped: 0 };
  try {
    count = read(JSON.parse(readFileSync(file, 'utf8')) as never);
  } catch (error) {
    console.log(`${name}: no result to read (${(error as Error).message})`);
  }
  passed += count.passed;
  failed += count.failed;
  if (count.skipped > 0) console.log(`${name}: ${count.skipped} skipped; a skipped test is a failed one`);
  failed += count.skipped;
  if (count.passed + count.failed === 0) console.log(`${name}: ran no test`);
  if (count.failed + count.skipped === 0 && (!ok || count.passed === 0)) failed += 1;
}

const chromium = findOrInstallChromium();
check('types', ['npm', 'run', '--silent', 'types']);
check('lint', ['npm', 'run', '--silent', 'lint']);
const built = check('build', ['npm', 'run', '--silent', 'build']);

const unitOk = step('unit, property, reference, boundary, size', [
  ...['vitest', 'run', '--config', 'tests/vitest.config.ts'],
  ...['--reporter=default', '--reporter=json', `--outputFile.json=${unitJson}`],
]);
runner('vitest', unitOk, unitJson, (json: VitestResult) => ({
  passed: json.numPassedTests,
  failed: json.numFailedTests,
  skipped: json.numPendingTests + json.numTodoTests,
}));

if (built) {
  const browserOk = step(
    'browser',
    ['playwright', 'test', '--config', 'tests/playwright.config.ts', '--reporter=list,json'],
    { CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_NAME: browserJson },
  );
  runner('playwright', browserOk, browserJson, ({ stats }: PlaywrightResult) => ({
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky,
    skipped: stats.skipped,
  }));
} else {
  console.log('browser: not run, as there is no build');
}

rmSync(results, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

interface VitestResult {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
}
interface PlaywrightResult {
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
}
