/**
 * `npm run bench:rounds [-- CARS]`: how many re-measures a car takes, by the rule of thumb, by the kit's chart and by
 * Cornerwright, on simulated cars; and whether the chance that a plan states comes true.
 */
import { type Batch, playAll } from './crew.ts';
import { FAMILIES } from './families.ts';
import { type Outcome, TOE } from './play.ts';

const CARS = Number(process.argv[2] ?? 500);
/** Cars that a core takes at a time: few, so that none waits long for another at the end. */
const AT_A_TIME = 4;

const calibration: { chance: number; came: boolean }[] = [];
const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
const percent = (xs: readonly boolean[]): string => `${((100 * xs.filter(Boolean).length) / xs.length).toFixed(1)} %`;

console.log(`${CARS} cars a family; toe window ±${TOE}°; a car that is in the window as found is not counted`);
const groups = [0.5, 0.25].flatMap((half) => FAMILIES.map((family, number) => ({ half, family, number })));
const batches = groups.map(({ half, number }) =>
  Array.from({ length: Math.ceil(CARS / AT_A_TIME) }, (_, i): Batch => {
    const from = i * AT_A_TIME;
    return { half, family: number, from, to: Math.min(CARS, from + AT_A_TIME) };
  }),
);
const played = playAll(batches.flat());
for (const [g, { half, family }] of groups.entries()) {
  const own = played.splice(0, batches[g]?.length);
  const rows = new Map<string, Outcome[]>();
  let reached = 0;
  for (const outcomes of (await Promise.all(own)).flat()) {
    if (!outcomes) continue;
    reached++;
    for (const [name, outcome] of Object.entries(outcomes)) {
      if (outcome.all === 0) continue;
      rows.set(name, [...(rows.get(name) ?? []), outcome]);
      if (outcome.chance !== undefined && name !== '  points exact')
        calibration.push({ chance: outcome.chance, came: outcome.firstAll });
    }
  }
  console.log(`\n±${half}°  ${family.name}  (window reachable on ${reached} of ${CARS})`);
  console.log('                 first pass: camber, caster    all       re-measures: camber, caster    all');
  for (const [name, outcomes] of rows) {
    const lean = percent(outcomes.map(({ lean }) => lean <= 1)).padStart(10);
    const all = percent(outcomes.map(({ firstAll }) => firstAll)).padStart(10);
    const leanRounds = mean(outcomes.map(({ lean }) => lean))
      .toFixed(2)
      .padStart(14);
    const allRounds = mean(outcomes.map(({ all }) => all))
      .toFixed(2)
      .padStart(14);
    console.log(`  ${name.padEnd(16)}${lean.padStart(20)}${all}${leanRounds.padStart(26)}${allRounds}`);
  }
}

console.log('\nOf all plans that state a chance, how many came true (all in the window at the first re-measure):');
for (let low = 5; low < 100; low += 10) {
  const group = calibration.filter(({ chance }) => chance * 100 >= low && chance * 100 < low + 10);
  if (group.length === 0) continue;
  const label = `${low} to ${low + 10} %`.padEnd(14);
  console.log(
    `  ${label}${String(group.length).padStart(6)} plans   ${percent(group.map(({ came }) => came))} came true`,
  );
}
