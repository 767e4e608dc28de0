/**
 * Finds a Chromium that runs, or installs Debian's. `npx tsx tests/tools/chromium.ts` prints its path.
 * A file alone proves nothing (a half-installed package leaves one), so each candidate must answer `--version`.
 */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';

const SYSTEM = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
/** The same engine without a browser's own windows around its pages: what a test waits for takes it half as long. */
const SHELL = 'chromium-headless-shell';

/** A browser that answers, or nothing. `$CHROMIUM_PATH` comes first. */
export function findChromium(): string | undefined {
  const candidates = [process.env.CHROMIUM_PATH, ...SYSTEM.map(onPath), playwrightsOwn()];
  return candidates.find((path): path is string => path !== undefined && path !== '' && answers(path));
}

/** As `findChromium`, but installs Debian's package where there is none and we may. */
export function findOrInstallChromium(): string {
  const found = findChromium();
  if (found) return found;
  if (mayInstall()) {
    install('chromium');
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new Error(
    'No Chromium or Chrome was found. Install one (Debian: apt-get install chromium), ' +
      'or set CHROMIUM_PATH to the one to use.',
  );
}

/** Debian's headless shell where it is or can be had, else the whole browser: what every page needs, both have. */
export function findOrInstallShell(): string {
  if (!answers(SHELL) && mayInstall()) install(SHELL);
  return (answers(SHELL) && onPath(SHELL)) || findOrInstallChromium();
}

const mayInstall = (): boolean => process.getuid?.() === 0 && onPath('apt-get') !== undefined;

function install(name: string): void {
  console.error(`No ${name} here: installing Debian’s …`);
  run('apt-get', ['update', '-qq']);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name]);
}

function onPath(name: string): string | undefined {
  const { status, stdout } = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
  return status === 0 ? stdout.trim() : undefined;
}

function playwrightsOwn(): string | undefined {
  try {
    return chromium.executablePath();
  } catch {
    return undefined;
  }
}

function answers(path: string): boolean {
  const { status, stdout } = spawnSync(path, ['--version'], { encoding: 'utf8', timeout: 30_000 });
  return status === 0 && /Chrom(e|ium)/.test(stdout);
}

function run(command: string, args: string[]): void {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'], env, timeout: 600_000 });
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  try {
    console.log(findOrInstallChromium());
  } catch (error) {
    console.error((error as Error).message);
    process.exit(1);
  }
}
