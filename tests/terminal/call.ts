import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export const root = fileURLToPath(new URL('../..', import.meta.url));
type Script = 'plan' | 'chart';

/** Runs a script of `app/terminal` as npm does, but for npx, which takes longer than the script. */
export const callAsNpm = (script: Script, args: readonly string[]): SpawnSyncReturns<string> =>
  spawned(['--import', 'tsx', `app/terminal/${script}.ts`, ...args]);

const folder = mkdtempSync(join(tmpdir(), 'cornerwright-terminal-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
// Each made once for all tests of a process: to compile the script anew took as long as four calls.
const input = Object.fromEntries(
  (['plan', 'chart'] as const).map((one) => [one, join(root, `app/terminal/${one}.ts`)]),
);
await build({
  configFile: false,
  root,
  logLevel: 'error',
  build: {
    ssr: true,
    outDir: folder,
    emptyOutDir: false,
    rolldownOptions: { input, output: { entryFileNames: '[name].mjs' } },
  },
  ssr: { noExternal: true },
});

/** The same script, compiled beforehand. Ends it after `timeout` ms. */
export const call = (script: Script, args: readonly string[], timeout?: number): SpawnSyncReturns<string> =>
  spawned([join(folder, `${script}.mjs`), ...args], timeout);

const spawned = (args: readonly string[], timeout?: number): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', ...(timeout && { timeout }) });
