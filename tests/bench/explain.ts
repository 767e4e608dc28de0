/**
 * `npm run bench:explain [-- CASES]`: what `explain` makes of simulated mishaps of every kind, as a matrix: the true cause
 * down, the one that is told first across. What can be told at all is decided as tests/tools/mishaps.ts has it.
 */
import type { Cause } from '../../core/said.ts';
import { CAUSES, mishap, TOLD } from '../tools/mishaps.ts';
import { FAMILIES } from './rounds/families.ts';

const CASES = Number(process.argv[2] ?? 60);

const percent = (part: number, all: number): string => (all === 0 ? '–' : `${((100 * part) / all).toFixed(1)} %`);
const short = (cause: Cause): string => cause.slice(0, 7).padStart(8);

console.log(`${CASES} cases a family and cause; can be told: a reading without noise gives the truth ${TOLD * 100} %`);
console.log(`${''.padEnd(16)}${CAUSES.map(short).join('')}   cases  can be told  of them right  of all right`);
let [told, right] = [0, 0];
for (const cause of CAUSES) {
  const row = new Map<Cause, number>();
  let [all, can, hit, any] = [0, 0, 0, 0];
  for (const family of FAMILIES.keys()) {
    for (let seed = 0; seed < CASES; seed++) {
      const outcome = mishap(cause, family, seed);
      if (!outcome) continue;
      all++;
      row.set(outcome.first.cause, (row.get(outcome.first.cause) ?? 0) + 1);
      if (outcome.right) any++;
      if (!outcome.canBeTold) continue;
      can++;
      if (outcome.right) hit++;
    }
  }
  if (cause !== 'noise') [told, right] = [told + can, right + hit];
  const cells = CAUSES.map((one) => String(row.get(one) ?? '·').padStart(8)).join('');
  const ends = [
    String(all).padStart(8),
    percent(can, all).padStart(13),
    percent(hit, can).padStart(15),
    percent(any, all).padStart(14),
  ];
  console.log(`${cause.padEnd(16)}${cells}${ends.join('')}`);
}
console.log(`\nOf all mishaps that can be told the true one first: ${percent(right, told)}`);
