/**
 * `npm run mutants [-- ROOM… --sample 60 --seed 1 --force]`: changes the code of core or the store, one small thing at a time, and runs
 * the quick tests of its room: a change that no test notices is printed. By room, on places that the seed draws until
 * they hold so many changes; `--sample all` tries every one, which takes hours. What was tried before, and has not
 * changed since, is tried again only with `--force`.
 *
 * Changes of words do not count: a string with a space in it is for people to read, and tests do not repeat it.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { ROOMS, type Room } from './rooms.ts';
import { draw, type Mutant, rangeOf } from './sample.ts';
import { install, mutantsOf, run, type Tried } from './stryker.ts';

/** Of 100 changes, so many must be noticed. */
const ENOUGH = 85;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    force: { type: 'boolean', default: false },
  },
});
const least = values.sample === 'all' ? Number.POSITIVE_INFINITY : Number(values.sample);
const seed = Number(values.seed);
const unknown = positionals.filter((name) => !ROOMS[name]);
if (unknown.length > 0 || Number.isNaN(least) || Number.isNaN(seed)) {
  console.error(`Rooms: ${Object.keys(ROOMS).join(', ')}; --sample N or all; --seed N; --force.`);
  process.exit(2);
}

const filesOf = ({ sources }: Room): string[] =>
  sources
    .flatMap((path) =>
      statSync(path).isDirectory()
        ? readdirSync(path, { recursive: true, encoding: 'utf8' }).map(
            (name) => `${path}/${name.replaceAll('\\', '/')}`,
          )
        : [path],
    )
    .filter((path) => path.endsWith('.ts'))
    .sort();

/** The text that a mutant stands in place of. */
function original({ fileName, location: { start, end } }: Mutant): string {
  const lines = readFileSync(fileName, 'utf8')
    .split('\n')
    .slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1)?.slice(0, end.column - 1) ?? '';
  lines[0] = lines[0]?.slice(start.column - 1) ?? '';
  return lines.join('\n');
}

const isOfWords = (mutant: Mutant): boolean => mutant.mutatorName === 'StringLiteral' && original(mutant).includes(' ');

function show(tried: Tried): void {
  const short = (text: string): string => {
    const line = text.replace(/\s+/g, ' ');
    return line.length > 90 ? `${line.slice(0, 60)} … ${line.slice(-25)}` : line;
  };
  const { fileName, location, status, mutatorName, replacement } = tried;
  console.log(`  ${fileName}:${location.start.line}:${location.start.column} ${status} ${mutatorName}`);
  console.log(`    − ${short(original(tried))}\n    + ${short(replacement)}`);
}

/** Tries one room. @returns the line of the table, and whether enough was noticed */
async function tryRoom(name: string, room: Room): Promise<{ readonly line: string; readonly enough: boolean }> {
  const all = (await mutantsOf(filesOf(room))).filter((mutant) => !isOfWords(mutant));
  const drawn = new Set(draw(all, seed, least));
  const tried = (await run(name, [...drawn], values.force)).filter(
    (one) => drawn.has(rangeOf(one)) && one.status !== 'Ignored' && !isOfWords(one),
  );
  const count = (status: Tried['status']): number => tried.filter((one) => one.status === status).length;
  const missed = tried.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  const odd = count('RuntimeError') + count('CompileError');
  const score = (100 * (count('Killed') + count('Timeout'))) / (tried.length - odd);
  console.log(`\n${name}: not noticed`);
  for (const one of missed) show(one);
  // A change that never ends is noticed; on a machine that does other work besides, others time out too: read them.
  console.log(`\n${name}: timed out`);
  for (const one of tried.filter(({ status }) => status === 'Timeout')) show(one);
  const line = [
    `${name.padEnd(10)}${score.toFixed(1).padStart(6)} %  of ${tried.length - odd} (all: ${all.length}, seed ${seed}):`,
    `${count('Killed')} killed, ${count('Timeout')} timed out, ${count('Survived')} survived, ${count('NoCoverage')} not run`,
    ...(odd > 0 ? [`; ${odd} could not be run`] : []),
  ].join(' ');
  console.log(`\n${line}`);
  return { line, enough: score >= ENOUGH };
}

install();
const results = [];
for (const [name, room] of Object.entries(ROOMS)) {
  if (positionals.length === 0 || positionals.includes(name)) results.push(await tryRoom(name, room));
}
console.log(`\n${results.map(({ line }) => line).join('\n')}`);
process.exit(results.every(({ enough }) => enough) ? 0 : 1);
