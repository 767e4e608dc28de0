// Runs npm scripts that end in a line "N passed, M failed", one after the other, and ends in one such line of the sum.
// Node's own modules only: the first script installs the packages.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

let passed = 0;
let failed = 0;
for (const script of process.argv.slice(2)) {
  const { last, status } = await run(script);
  const [, yes, no] = /^(\d+) passed, (\d+) failed$/.exec(last) ?? [];
  console.log(`── npm run ${script}: ${last || 'nothing said'}`);
  passed += Number(yes ?? 0);
  // What ends badly without a count of what failed is one failure, and so is silence.
  failed += Number(no ?? 0) || (status === 0 && yes ? 0 : 1);
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);

/** Shows what a script says as it says it, but for its last line. */
function run(script) {
  return new Promise((done) => {
    const child = spawn('npm', ['run', '--silent', script], {
      stdio: ['inherit', 'pipe', 'inherit'],
      shell: process.platform === 'win32',
    });
    let last;
    const lines = createInterface({ input: child.stdout });
    lines.on('line', (line) => {
      if (last !== undefined) console.log(last);
      last = line;
    });
    // The status comes with `exit`, the last lines with the end of what it says.
    const status = new Promise((ended) => child.on('exit', ended).on('error', () => ended(1)));
    lines.on('close', async () => done({ last: last ?? '', status: await status }));
  });
}
