/**
 * `npm run bench:kill [-- --cycles 200 --seed 1]`: the built app in a Chromium that is killed, whole, in the middle of what
 * hands do. What a screen had called saved has to be there after the next start; what the browser itself has lost of it has
 * to be said. Exit code 1 where it was not.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { serveFolder } from '../../../app/terminal/serve.ts';
import { isFault, runCycles } from './cycles.ts';
import { tableOf, wordsOf } from './table.ts';

const { values } = parseArgs({
  options: { cycles: { type: 'string', default: '200' }, seed: { type: 'string', default: '1' } },
});
const [cycles, seed] = [Number(values.cycles), Number(values.seed)];
const port = Number(process.env.CORNERWRIGHT_PORT ?? 4397);
// A copy: the app may be built anew meanwhile.
const folder = mkdtempSync(join(tmpdir(), 'cornerwright-kill-site-'));
cpSync(fileURLToPath(new URL('../../../dist', import.meta.url)), folder, { recursive: true });
const server = await serveFolder({ folder, port, base: '/shop/' });
try {
  const done = await runCycles({
    ...{ cycles, seed, url: `http://localhost:${port}/shop/` },
    told(cycle) {
      if (isFault(cycle) || cycle.said) console.log(`\n${wordsOf(cycle)}`);
      else process.stdout.write('.');
    },
  });
  console.log(`\n${cycles} cycles, seed ${seed}\n${tableOf(done)}`);
  process.exitCode = done.some(isFault) ? 1 : 0;
} finally {
  server.closeAllConnections();
  server.close();
  rmSync(folder, { recursive: true, force: true });
}
