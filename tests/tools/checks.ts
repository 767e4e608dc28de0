/**
 * Checks in turn, then one closing line that adds up the test runners. A step that fails counts, so does a runner that
 * ran no test or skipped one: silence is not a pass.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { costs, isTooSlow, type Report, tell } from './slowest.ts';

interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

type Env = Readonly<Record<string, string>>;

export class Checks {
  readonly #results = mkdtempSync(join(tmpdir(), 'cornerwright-check-'));
  #passed = 0;
  #failed = 0;

  /** A step without a count of its own: one failure if it fails. */
  check(name: string, args: readonly string[]): boolean {
    const ok = this.#step(name, args);
    if (!ok) this.#failed += 1;
    return ok;
  }

  vitest(name: string, env: Env = {}): void {
    const file = join(this.#results, 'unit.json');
    const args = ['vitest', 'run', '--config', 'tests/vitest.config.ts'];
    const ok = this.#step(name, [...args, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`], env);
    this.#runner('vitest', ok, file, (json: VitestResult) => {
      const all = costs(json);
      for (const line of tell(all)) console.log(line);
      return {
        passed: json.numPassedTests,
        // One that is too slow has passed, and is a failure beside that.
        failed: json.numFailedTests + all.filter(isTooSlow).length,
        skipped: json.numPendingTests + json.numTodoTests,
      };
    });
  }

  /** @param only files to run; absent: all */
  playwright(name: string, env: Env, only: readonly string[] = []): void {
    const file = join(this.#results, 'browser.json');
    const args = ['playwright', 'test', '--config', 'tests/playwright.config.ts', '--reporter=list,json', ...only];
    const ok = this.#step(name, args, { ...env, PLAYWRIGHT_JSON_OUTPUT_NAME: file });
    this.#runner('playwright', ok, file, ({ stats }: PlaywrightResult) => ({
      passed: stats.expected,
      failed: stats.unexpected + stats.flaky,
      skipped: stats.skipped,
    }));
  }

  /** Says the sum and ends the process with what it comes to. */
  close(): never {
    rmSync(this.#results, { recursive: true, force: true });
    console.log(`\n${this.#passed} passed, ${this.#failed} failed`);
    process.exit(this.#failed === 0 ? 0 : 1);
  }

  #step(name: string, args: readonly string[], env: Env = {}): boolean {
    const started = performance.now();
    console.log(`\n── ${name}`);
    const [command = '', ...rest] = args;
    const { status } = spawnSync(command, rest, { stdio: 'inherit', env: { ...process.env, ...env } });
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`── ${name}: ${status === 0 ? 'ok' : 'FAILED'} (${seconds} s)`);
    return status === 0;
  }

  /** Adds a runner's own count; what it failed to say counts as one failure. */
  #runner(name: string, ok: boolean, file: string, read: (json: never) => Count): void {
    let count: Count = { passed: 0, failed: 0, skipped: 0 };
    try {
      count = read(JSON.parse(readFileSync(file, 'utf8')) as never);
    } catch (error) {
      console.log(`${name}: no result to read (${(error as Error).message})`);
    }
    this.#passed += count.passed;
    this.#failed += count.failed;
    if (count.skipped > 0) console.log(`${name}: ${count.skipped} skipped; a skipped test is a failed one`);
    this.#failed += count.skipped;
    if (count.passed + count.failed === 0) console.log(`${name}: ran no test`);
    if (count.failed + count.skipped === 0 && (!ok || count.passed === 0)) this.#failed += 1;
  }
}

interface VitestResult extends Report {
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
