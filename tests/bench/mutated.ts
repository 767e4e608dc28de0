/**
 * `npm run bench:mutated -- --files 100000 --seed 1`: car files and backups, changed at random, are refused in words or open
 * on every screen. Counts what became of them. `--keep FOLDER` says and writes those that fail as it goes, `--minutes 20` ends it
 * then.
 *
 * A file hangs on its seed and its number alone, so a large run can be done in parts: `--from 20000 --files 20000` does those
 * of the numbers 20000 to 39999, and the counts of such parts add up. Only how many are the same as one that was opened
 * differs, as each page knows but its own.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { findOrInstallShell } from '../tools/chromium.ts';
import { runMutants, type Sum } from './mutated/run.ts';

const { values } = parseArgs({
  options: {
    files: { type: 'string', default: '100000' },
    from: { type: 'string', default: '0' },
    seed: { type: 'string', default: '1' },
    pages: { type: 'string', default: '2' },
    minutes: { type: 'string', default: 'Infinity' },
    keep: { type: 'string' },
  },
});
const files = Number(values.files);
const from = Number(values.from);
const start = Date.now();
let last = 0;

let kept = 0;

/** Writes what has failed since it was last called: a large run may be broken off. */
function keepFailures({ failures }: Sum): void {
  if (!values.keep) return;
  mkdirSync(values.keep, { recursive: true });
  for (const { n, says, wrong, text } of failures.slice(kept)) {
    console.log(`#${n} ${says.slice(0, 200)}\n  ${wrong.join('\n  ').slice(0, 1000)}`);
    writeFileSync(join(values.keep, `${values.seed}-${n}.json`), text);
  }
  kept = failures.length;
}

function progress(sum: Sum): void {
  keepFailures(sum);
  if (Date.now() - last < 30_000) return;
  last = Date.now();
  const minutes = (last - start) / 60_000;
  console.log(
    `${sum.files} of ${files} after ${minutes.toFixed(1)} min: ${sum.accepted} accepted, ${sum.failures.length} failed`,
  );
}

const sum = await runMutants({
  files,
  seed: values.seed,
  from,
  pages: Number(values.pages),
  minutes: Number(values.minutes),
  executable: findOrInstallShell(),
  told: progress,
});
const refused = Object.values(sum.refused).reduce((all, count) => all + count, 0);
console.log(
  `\n${sum.files} files of seed ${values.seed}, from number ${from} on, in ${((Date.now() - start) / 60_000).toFixed(1)} min`,
);
console.log(`refused ${refused}, by reason:`);
for (const [rule, count] of Object.entries(sum.refused).sort((a, b) => b[1] - a[1])) console.log(`  ${rule} ${count}`);
console.log(`records set aside in backups that came in otherwise: ${sum.aside}`);
console.log(
  `accepted ${sum.accepted}, of these ${sum.same} the same as one that was opened; screens opened ${sum.screens}`,
);
console.log(
  `engine: asked ${sum.engine.all}, worked out ${sum.engine.worked}, longest ${Math.round(sum.engine.longest)} ms, stopped ${sum.engine.tooLong}`,
);
console.log(
  `to read and check: slowest ${Math.round(sum.slowest)} ms, most memory ${Math.round(sum.memory / 1e6)} MB; all screens of one ${Math.round(sum.opening)} ms`,
);
console.log(`failed ${sum.failures.length}`);
for (const { n, says, wrong } of sum.failures.slice(0, 200)) console.log(`\n#${n} ${says}\n  ${wrong.join('\n  ')}`);
process.exit(sum.failures.length === 0 ? 0 : 1);
