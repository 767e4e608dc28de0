import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const SCRIPTS = ['plan', 'chart'] as const;
type Script = (typeof SCRIPTS)[number];

/** Runs a script of `app/terminal` as npm does, but for npx, which takes longer than the script. */
export const callAsNpm = (script: Script, args: readonly string[]): SpawnSyncReturns<string> =>
  spawned(['--import', 'tsx', `app/terminal/${script}.ts`, ...args]);

/** One for each process of tests, made over by the next: none of them gets to tidy up as it ends. */
const folder = join(root, 'node_modules/.cache/terminal', process.env.VITEST_POOL_ID ?? '');
// Each made once for all tests of a process: to compile the script anew took as long as four calls.
const input = Object.fromEntries(SCRIPTS.map((one) => [one, join(root, `app/terminal/${one}.ts`)]));
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
