/**
 * `npm run bench:rounds [-- CARS [learning [ROWS]]]`: how many re-measures a car takes, by the rule of thumb, by the kit's chart and by
 * Cornerwright, on simulated cars; and whether the chance that a plan states comes true. With `learning` the last rows
 * alone, with ROWS those of them whose name holds it.
 */
import { type Batch, playAll } from './crew.ts';
import { FAMILIES } from './families.ts';
import { learningRows } from './learning.ts';
import { ALL_KNOWN, type Outcome, POINTS_EXACT, TOE } from './play.ts';

const CARS = Number(process.argv[2] ?? 500);
const ONLY_LEARNING = process.argv[3] === 'learning';
const ROWS = process.argv[4] ?? '';
/** Cars that a core takes at a time: few, so that none waits long for another at the end. */
const AT_A_TIME = 4;

/** Camber and caster; all. */
const COLUMNS = ['lean', 'all'] as const;

const calibration: { chance: number; came: boolean }[] = [];
const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
const percent = (xs: readonly boolean[]): string => `${((100 * xs.filter(Boolean).length) / xs.length).toFixed(1)} %`;

console.log(
  `${CARS} cars a family; toe window ±${TOE}°; a car that is in the window as found is not counted; lean: camber and caster`,
);
const groups = (ONLY_LEARNING ? [] : [0.5, 0.25]).flatMap((half) =>
  FAMILIES.map((family, number) => ({ half, family, number })),
);
const batches = groups.map(({ half, number }) =>
  Array.from({ length: Math.ceil(CARS / AT_A_TIME) }, (_, i): Batch => {
    const from = i * AT_A_TIME;
    return { half, family: number, from, to: Math.min(CARS, from + AT_A_TIME) };
  }),
);
const played = playAll(batches.flat());
type Row = Outcome & { readonly room: boolean };
const together = new Map<number, Map<string, Row[]>>();

/** Appends to a row, or begins it. */
const add = (rows: Map<string, Row[]>, name: string, outcomes: readonly Row[]): void => {
  rows.set(name, [...(rows.get(name) ?? []), ...outcomes]);
};

function print(title: string, under: string, rows: ReadonlyMap<string, readonly Row[]>): void {
  console.log(`\n${title}\n  ${under}`);
  console.log('                   first pass            to spare              re-measures');
  console.log('                   lean       all        lean       all        lean       all');
  for (const [name, outcomes] of rows) {
    const room = outcomes.filter((one) => one.room);
    const cells = [
      ...[outcomes, room].flatMap((some) => COLUMNS.map((what) => percent(some.map((one) => one[what] <= 1)))),
      ...COLUMNS.map((what) => mean(outcomes.map((one) => one[what])).toFixed(2)),
    ];
    const known = cells.map((cell, i) => (name === ALL_KNOWN && COLUMNS[i % 2] === 'all' ? '' : cell));
    console.log(`  ${name.padEnd(17)}${known.map((cell) => cell.padEnd(11)).join('')}`.trimEnd());
  }
}

for (const [g, { half, family }] of groups.entries()) {
  const own = played.splice(0, batches[g]?.length);
  const rows = new Map<string, Row[]>();
  let reached = 0;
  let roomy = 0;
  for (const car of (await Promise.all(own)).flat()) {
    if (!car) continue;
    reached++;
    if (car.room) roomy++;
    for (const [name, outcome] of Object.entries(car.outcomes)) {
      if (outcome.all === 0) continue;
      add(rows, name, [{ ...outcome, room: car.room }]);
      if (outcome.chance !== undefined && name !== POINTS_EXACT)
        calibration.push({ chance: outcome.chance, came: outcome.all <= 1 });
    }
  }
  const under = `window reachable on ${reached} of ${CARS}; with a standard deviation of the gauge to spare on ${roomy}`;
  print(`±${half}°  ${family.name}`, under, rows);
  const all = together.get(half) ?? new Map<string, Row[]>();
  together.set(half, all);
  for (const [name, outcomes] of rows) add(all, name, outcomes);
}
for (const [half, rows] of together) print(`±${half}°  all families together`, 'every car that counts above', rows);

if (calibration.length > 0)
  console.log('\nOf all plans that state a chance, how many came true (all in the window at the first re-measure):');
for (let low = 5; low < 100; low += 10) {
  const group = calibration.filter(({ chance }) => chance * 100 >= low && chance * 100 < low + 10);
  if (group.length === 0) continue;
  const label = `${low} to ${low + 10} %`.padEnd(14);
  console.log(
    `  ${label}${String(group.length).padStart(6)} plans   ${percent(group.map(({ came }) => came))} came true`,
  );
}

await learningRows(CARS, ROWS);
