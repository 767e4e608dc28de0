import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a script of `app/terminal` as npm does, but for npx, which takes longer than the script. Ends it after `timeout` ms. */
export const call = (script: string, args: readonly string[], timeout?: number): SpawnSyncReturns<string> =>
  spawnSync(process.execPath, ['--import', 'tsx', `app/terminal/${script}.ts`, ...args], {
    cwd: root,
    encoding: 'utf8',
    ...(timeout && { timeout }),
  });
